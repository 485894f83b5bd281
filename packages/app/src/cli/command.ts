import { parseArgs } from 'node:util';

/** Where a command writes; the tests give their own. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Exit codes: what a script can rely on. */
export const EXIT = {
  ok: 0,
  /** The work was done and the answer is no: a promise is broken, a network has no solution, no rig was found. */
  no: 1,
  /** The input could not be used: a file, field or option is wrong. */
  input: 2,
} as const;

export interface Option {
  readonly type: 'string' | 'boolean';
  readonly short?: string;
  /** Placeholder of the value in the help. */
  readonly value?: string;
  readonly help: string;
}

export interface Arguments {
  readonly positionals: readonly string[];
  readonly text: (name: string) => string | undefined;
  readonly flag: (name: string) => boolean;
}

export interface Command {
  readonly name: string;
  /** The arguments as the help shows them: `brief.json`. */
  readonly usage: string;
  readonly summary: string;
  readonly options: Readonly<Record<string, Option>>;
  readonly least: number;
  readonly most: number;
  readonly examples: readonly string[];
  readonly run: (args: Arguments, terminal: Terminal) => number | Promise<number>;
}

/** Options that more than one command has. */
export const JSON_OPTION: Option = { type: 'boolean', help: 'print the result as JSON' };
export const CATALOGUE_OPTION: Option = {
  type: 'string',
  short: 'c',
  value: 'folder',
  help: 'catalogue folder (default: the demo catalogue)',
};
export const SHOP_OPTION: Option = {
  type: 'string',
  value: 'file',
  help: 'shop file with rates and terms (default: the demo shop)',
};
export const UNITS_OPTION: Option = {
  type: 'string',
  value: 'us|metric',
  help: 'units of what is printed (default: us)',
};

/** Parses one command's arguments; a wrong option or count is a message, not an exception. */
export function parseCommand(
  command: Command,
  argv: readonly string[],
): { ok: true; args: Arguments } | { ok: false; message: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: Object.fromEntries(
        Object.entries(command.options).map(([name, o]) => [
          name,
          { type: o.type, ...(o.short === undefined ? {} : { short: o.short }) },
        ]),
      ),
    });
    if (positionals.length < command.least)
      return { ok: false, message: `${command.name} needs ${command.usage}` };
    if (positionals.length > command.most)
      return {
        ok: false,
        message: `${command.name} takes ${command.usage || 'no file'}; '${positionals[command.most]}' is one too many`,
      };
    return {
      ok: true,
      args: {
        positionals,
        text: (name) => (typeof values[name] === 'string' ? values[name] : undefined),
        flag: (name) => values[name] === true,
      },
    };
  } catch (error) {
    return { ok: false, message: (error as Error).message };
  }
}

export function commandHelp(command: Command): string {
  const rows = Object.entries({ ...command.options, help: HELP_OPTION }).map(([name, o]) => [
    `  ${o.short === undefined ? '   ' : `-${o.short},`} --${name}${o.value === undefined ? '' : ` ${o.value}`}`,
    o.help,
  ]);
  const width = Math.max(...rows.map(([left]) => left!.length)) + 2;
  return [
    `spraywright ${command.name} ${command.usage}`.trimEnd(),
    `  ${command.summary}`,
    '',
    'Options',
    ...rows.map(([left, right]) => left!.padEnd(width) + right),
    ...(command.examples.length === 0 ? [] : ['', 'Examples', ...command.examples.map((e) => `  ${e}`)]),
    '',
    'Exit codes: 0 done and well; 1 done, and the answer is no; 2 the input cannot be used.',
    '',
  ].join('\n');
}

const HELP_OPTION: Option = { type: 'boolean', short: 'h', help: 'show this' };
