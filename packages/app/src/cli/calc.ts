import { readFileSync } from 'node:fs';
import { formatPath, type UnitSystem } from '@spraywright/engine/quantity';
import { closestMethod, METHODS, methodNamed, methodsAbout, runCalculation } from '../calc/registry.ts';
import type { Method } from '../calc/method.ts';
import { methodListText, methodText, workingText } from '../documents/calculation-text.ts';
import { parseJsonSource, problemText } from '../documents/json-source.ts';
import { EXIT, UNITS_OPTION, type Arguments, type Command, type Terminal } from './command.ts';

/** Runs one of the engine's calculations by name, or lists them. */
export const calcCommand: Command = {
  name: 'calc',
  usage: '[name] [input=value ...]',
  summary: 'Work out one handbook sum by name, or list them all; inputs as you type them, "10 gpm".',
  options: {
    list: { type: 'boolean', short: 'l', help: 'list the calculations; words after it narrow the list' },
    json: {
      type: 'string',
      value: '\'{"flow": "10 gpm"}\'',
      help: 'the inputs as a JSON object; - reads it from standard input',
    },
    as: { type: 'string', value: 'text|json', help: 'how the answer is printed (default: text)' },
    units: UNITS_OPTION,
  },
  least: 0,
  most: 60,
  examples: [
    'spraywright calc --list hose friction',
    'spraywright calc fluidPower',
    `spraywright calc fluidPower --json '{"flow": "12 gpm", "pressureRise": "500 psi"}'`,
    'spraywright calc fluidPower flow="12 gpm" pressureRise="500 psi" --as json',
  ],
  run(args, terminal) {
    const units = args.text('units') ?? 'us';
    if (units !== 'us' && units !== 'metric')
      return refuse(terminal, `--units is '${units}'; it must be us or metric`);
    const as = args.text('as') ?? 'text';
    if (as !== 'text' && as !== 'json') return refuse(terminal, `--as is '${as}'; it must be text or json`);
    const [name, ...rest] = args.positionals;
    if (args.flag('list')) return list(args.positionals, as, terminal);
    if (name === undefined)
      return refuse(terminal, 'calc needs the name of a calculation; spraywright calc --list names them all');
    const method = methodNamed(name);
    if (method === undefined) return unknownName(name, terminal);
    if (rest.length === 0 && args.text('json') === undefined) {
      // Without inputs it is a question what they are, unless there are none to give.
      if (method.params.length > 0) {
        terminal.out(
          as === 'json' ? JSON.stringify(method, null, 2) : `${methodText(method)}\n\n${example(method)}`,
        );
        return EXIT.ok;
      }
    }
    const inputs = readInputs(args, rest, terminal);
    return inputs === undefined ? EXIT.input : carryOut(method, inputs, as, units, terminal);
  },
};

function list(words: readonly string[], as: 'text' | 'json', terminal: Terminal): number {
  // All of them by folder; those that speak of some words with the likeliest first.
  const found = words.length === 0 ? METHODS : methodsAbout(words);
  if (as === 'json') terminal.out(JSON.stringify(found, null, 2));
  else if (found.length > 0)
    terminal.out(
      `${methodListText(found, words.length === 0)}\n\n${found.length} of ${METHODS.length} calculations. spraywright calc NAME tells the inputs of one.`,
    );
  if (found.length > 0) return EXIT.ok;
  terminal.err(`None of the ${METHODS.length} calculations speaks of ${words.join(' and ')}.`);
  return EXIT.no;
}

function carryOut(
  method: Method,
  inputs: Readonly<Record<string, unknown>>,
  as: 'text' | 'json',
  units: UnitSystem,
  terminal: Terminal,
): number {
  const done = runCalculation(method.name, inputs);
  if (as === 'json') terminal.out(JSON.stringify(done, null, 2));
  else if (done.ok) terminal.out(workingText(method.name, done, units));
  if (done.ok) return EXIT.ok;
  if (as === 'text') {
    for (const p of done.problems) {
      const field = formatPath(p.path);
      terminal.err(field === '' || p.message.startsWith(field) ? p.message : `${field}: ${p.message}`);
    }
    terminal.err(`spraywright calc ${method.name} tells its inputs.`);
  }
  return EXIT.input;
}

/** Inputs of `--json` and of `name=value`; undefined when a problem was printed. */
function readInputs(
  args: Arguments,
  pairs: readonly string[],
  terminal: Terminal,
): Record<string, unknown> | undefined {
  // Without a prototype, so that an input called __proto__ is refused like any other stranger.
  const inputs: Record<string, unknown> = Object.create(null) as Record<string, unknown>;
  const json = args.text('json');
  if (json !== undefined) {
    const parsed = parseJsonSource('--json', json === '-' ? readFileSync(0, 'utf8') : json);
    if (!parsed.ok) {
      parsed.problems.forEach((p) => terminal.err(problemText(p)));
      return undefined;
    }
    const { raw } = parsed.source;
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
      refuse(
        terminal,
        `--json holds ${Array.isArray(raw) ? 'a list' : String(raw)}; an object was expected, {"flow": "10 gpm"}`,
      );
      return undefined;
    }
    Object.assign(inputs, raw);
  }
  for (const pair of pairs) {
    const at = pair.indexOf('=');
    const field = pair.slice(0, at).trim();
    if (at < 1) {
      refuse(terminal, `'${pair}' is no input; write it as name=value, such as flow="10 gpm"`);
      return undefined;
    }
    if (Object.hasOwn(inputs, field)) {
      refuse(terminal, `${field} is given twice`);
      return undefined;
    }
    inputs[field] = pair.slice(at + 1);
  }
  return inputs;
}

function example(method: Method): string {
  const needed = method.params.filter((p) => p.optional !== true).map((p) => `"${p.name}": ...`);
  return `Run it with\n  spraywright calc ${method.name} --json '{${needed.join(', ')}}'`;
}

function unknownName(name: string, terminal: Terminal): number {
  const near = closestMethod(name);
  const listed = METHODS.filter((m) => m.name.toLowerCase().includes(name.toLowerCase())).slice(0, 8);
  return refuse(
    terminal,
    [
      `There is no calculation '${name}'${near === undefined ? '' : `; did you mean '${near}'?`}`,
      ...(listed.length === 0
        ? []
        : [`These have it in their name: ${listed.map((m) => m.name).join(', ')}`]),
      'spraywright calc --list names them all.',
    ].join('\n'),
  );
}

function refuse(terminal: Terminal, message: string): number {
  terminal.err(message);
  return EXIT.input;
}
