import { createReadStream, createWriteStream, existsSync, renameSync, rmSync } from 'node:fs';
import { resolve as absolute } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import { EXIT, type Command, type Terminal } from './command.ts';
import { recordsAt, recordsPlace, RECORDS_OPTION } from './records-place.ts';

/** Copies the shop's records into one file, lays such a copy into empty records, or moves them to another place. */
export const recordsCommand: Command = {
  name: 'records',
  usage: 'backup|restore|move FILE|PLACE',
  summary: "Copy the shop's records into a file, lay a copy into empty records, or move them to PostgreSQL.",
  options: { records: RECORDS_OPTION },
  least: 2,
  most: 2,
  examples: [
    'spraywright records backup monday.jsonl.gz',
    'spraywright records restore monday.jsonl.gz --records empty-folder',
    'spraywright records move postgres://shop@localhost/shop',
  ],
  async run(args, terminal) {
    const [work, target] = args.positionals as [string, string];
    const place = recordsPlace(args);
    switch (work) {
      case 'backup':
        return backup(place, absolute(target), terminal);
      case 'restore':
        return restore(place, absolute(target), terminal);
      case 'move':
        return move(place, target, terminal);
      default:
        terminal.err(`records can backup, restore or move, not '${work}'`);
        return EXIT.input;
    }
  },
};

async function backup(place: string, file: string, terminal: Terminal): Promise<number> {
  if (existsSync(file)) {
    terminal.err(`${file} is there already; choose a name that is free`);
    return EXIT.input;
  }
  const { copyLines } = await import('../store/index.ts');
  return withRecords(place, terminal, async (records) => {
    // Written beside it first: a copy that was cut short never carries the name.
    const half = `${file}.part`;
    try {
      await pipeline(Readable.from(copyLines(records)), createGzip(), createWriteStream(half));
      renameSync(half, file);
    } finally {
      rmSync(half, { force: true });
    }
    return `Written: ${file}`;
  });
}

async function restore(place: string, file: string, terminal: Terminal): Promise<number> {
  const { layCopy } = await import('../store/index.ts');
  return withRecords(place, terminal, async (records) => told(await layCopy(records, linesOf(file))));
}

async function move(place: string, to: string, terminal: Terminal): Promise<number> {
  const { copyLines, layCopy } = await import('../store/index.ts');
  return withRecords(place, terminal, async (from) => {
    const target = await recordsAt(to, terminal);
    if (target === undefined) return undefined;
    try {
      return `${told(await layCopy(target, copyLines(from)))}\nThe old records are still where they were.`;
    } finally {
      await target.close();
    }
  });
}

/** The lines of a packed file. */
async function* linesOf(file: string): AsyncGenerator<string> {
  const packed = createReadStream(file);
  const text = packed.pipe(createGunzip()).setEncoding('utf8');
  packed.on('error', (error) => text.destroy(error));
  let rest = '';
  for await (const piece of text) {
    const lines = (rest + String(piece)).split('\n');
    rest = lines.pop()!;
    yield* lines;
  }
  if (rest !== '') yield rest;
}

/** Does something with the records of a place; what it says is printed, what it throws is told plainly. */
async function withRecords(
  place: string,
  terminal: Terminal,
  work: (records: NonNullable<Awaited<ReturnType<typeof recordsAt>>>) => Promise<string | undefined>,
): Promise<number> {
  const records = await recordsAt(place, terminal);
  if (records === undefined) return EXIT.input;
  try {
    const said = await work(records);
    if (said !== undefined) terminal.out(said);
    return said === undefined ? EXIT.input : EXIT.ok;
  } catch (error) {
    terminal.err(`Nothing was written: ${error instanceof Error ? error.message : String(error)}`);
    return EXIT.input;
  } finally {
    await records.close();
  }
}

function told(counts: Readonly<Record<string, number>>): string {
  const rows = Object.entries(counts).map(([table, count]) => `${count} of ${table.replaceAll('_', ' ')}`);
  return `Laid in and counted again: ${rows.join(', ')}`;
}
