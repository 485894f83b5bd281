import { billCommand } from './bill.ts';
import { buildPackCommand } from './build-pack.ts';
import { calcCommand } from './calc.ts';
import { catalogueCommand } from './catalogue.ts';
import { checkCommand } from './check.ts';
import { commandHelp, EXIT, parseCommand, type Command, type Terminal } from './command.ts';
import { designCommand } from './design.ts';
import { faultCommand } from './fault.ts';
import { layoutsCommand } from './layouts.ts';
import { learnCommand } from './learn.ts';
import { partsInCommand, partsOutCommand } from './parts.ts';
import { proveCommand } from './prove.ts';
import { frameCommand } from './frame.ts';
import { freightCommand } from './freight.ts';
import { handbookCommand } from './handbook.ts';
import { peopleCommand } from './people.ts';
import { plateCommand } from './plate.ts';
import { quoteCommand } from './quote.ts';
import { recordsCommand } from './records.ts';
import { recordCommand } from './record.ts';
import { rulesCommand } from './rules.ts';
import { solveCommand } from './solve.ts';
import { startCommand } from './start.ts';
import { yardCommand } from './yard.ts';

const COMMANDS: readonly Command[] = [
  designCommand,
  proveCommand,
  billCommand,
  quoteCommand,
  recordCommand,
  frameCommand,
  freightCommand,
  buildPackCommand,
  handbookCommand,
  plateCommand,
  yardCommand,
  learnCommand,
  faultCommand,
  solveCommand,
  calcCommand,
  rulesCommand,
  checkCommand,
  layoutsCommand,
  partsOutCommand,
  partsInCommand,
  catalogueCommand,
  startCommand,
  recordsCommand,
  peopleCommand,
];

const CONSOLE: Terminal = {
  out: (text) => process.stdout.write(text.endsWith('\n') ? text : `${text}\n`),
  err: (text) => process.stderr.write(text.endsWith('\n') ? text : `${text}\n`),
};

/** Runs one command line and returns its exit code. */
export async function main(argv: readonly string[], terminal: Terminal = CONSOLE): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const asked = COMMANDS.find((c) => c.name === rest[0]);
    terminal.out(asked === undefined ? overview() : commandHelp(asked));
    return EXIT.ok;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (command === undefined) {
    terminal.err(
      `There is no command '${name}'. The commands are: ${COMMANDS.map((c) => c.name).join(', ')}.`,
    );
    return EXIT.input;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    terminal.out(commandHelp(command));
    return EXIT.ok;
  }
  const parsed = parseCommand(command, rest);
  if (!parsed.ok) {
    terminal.err(`${parsed.message}\nspraywright ${name} --help tells more.`);
    return EXIT.input;
  }
  return command.run(parsed.args, terminal);
}

function overview(): string {
  const width = Math.max(...COMMANDS.map((c) => c.name.length)) + 2;
  return [
    'Spraywright proves a spray rig before it is sold.',
    '',
    ...COMMANDS.map((c) => `  ${c.name.padEnd(width)}${c.summary}`),
    '',
    'A new brief: spraywright design brief.json -o rig.json, then prove, bill and quote with rig.json.',
    'spraywright COMMAND --help tells what each takes.',
    '',
  ].join('\n');
}
