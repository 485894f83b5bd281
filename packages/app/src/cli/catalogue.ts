import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve as absolute } from 'node:path';
import { isDay } from '../documents/is-day.ts';
import { EXIT, SHOP_OPTION, type Command, type Terminal } from './command.ts';
import { DEMO, printProblems } from './inputs.ts';
import { recordsAt, recordsPlace, RECORDS_OPTION } from './records-place.ts';

type Open = NonNullable<Awaited<ReturnType<typeof recordsAt>>>;

/** Moves the catalogue between a folder of files and the records that the server works with. */
export const catalogueCommand: Command = {
  name: 'catalogue',
  usage: 'lay-in|out FOLDER',
  summary: "Take a catalogue folder into the shop's records, or write the records' catalogue into a folder.",
  options: {
    records: RECORDS_OPTION,
    shop: { ...SHOP_OPTION, help: 'lay-in: shop file (default: shop.json in the folder, if it is there)' },
    day: { type: 'string', value: 'date', help: 'out: with the prices of this day (default: today)' },
  },
  least: 2,
  most: 2,
  examples: [
    'spraywright catalogue lay-in my-catalogue',
    'spraywright catalogue out my-catalogue --day 2026-04-01',
  ],
  async run(args, terminal) {
    const [work, target] = args.positionals as [string, string];
    if (work !== 'lay-in' && work !== 'out') {
      terminal.err(`catalogue can lay-in or out, not '${work}'`);
      return EXIT.input;
    }
    const today = new Date().toISOString();
    const day = args.text('day') ?? today.slice(0, 10);
    if (!isDay(day)) {
      terminal.err(`--day is '${day}'; a date such as 2026-04-01 was expected`);
      return EXIT.input;
    }
    const records = await recordsAt(recordsPlace(args), terminal);
    if (records === undefined) return EXIT.input;
    try {
      return work === 'out'
        ? await out(records, absolute(target), day, terminal)
        : await layIn(records, absolute(target), args.text('shop'), today, terminal);
    } finally {
      await records.close();
    }
  },
};

async function out(records: Open, folder: string, day: string, terminal: Terminal): Promise<number> {
  const { catalogueOn } = await import('../store/index.ts');
  const { filesOfCatalogue } = await import('../server/catalogue-files.ts');
  const kept = await catalogueOn(records.db, day);
  if (kept === undefined) {
    terminal.err('The records have no catalogue yet. A first start lays one in, or: catalogue lay-in FOLDER');
    return EXIT.input;
  }
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    terminal.err(`${folder} is not empty; choose a folder that is, or a new one`);
    return EXIT.input;
  }
  const { head, files, layouts, shop } = filesOfCatalogue(kept);
  mkdirSync(folder, { recursive: true });
  const write = (name: string, document: unknown) =>
    writeFileSync(join(folder, name), `${JSON.stringify(document, null, 2)}\n`);
  write('catalogue.json', head);
  if (layouts.length > 0) mkdirSync(join(folder, 'layouts'));
  for (const { file, raw } of [...files, ...layouts]) write(file, raw);
  mkdirSync(join(folder, 'shop'));
  write(join('shop', 'shop.json'), shop);
  terminal.out(
    `Written: ${kept.parts.length} parts, edition ${kept.edition}, prices of ${day}, into ${folder}\nThe shop's settings: ${join(folder, 'shop', 'shop.json')}`,
  );
  return EXIT.ok;
}

async function layIn(
  records: Open,
  folder: string,
  shopFile: string | undefined,
  at: string,
  terminal: Terminal,
): Promise<number> {
  const { catalogueEdition, catalogueOn, changeCatalogue, layFirstCatalogue } =
    await import('../store/index.ts');
  const { catalogueFromFolder } = await import('../server/catalogue-files.ts');
  const beside = join(folder, 'shop', 'shop.json');
  const named = shopFile ?? (existsSync(beside) ? beside : undefined);
  const read = catalogueFromFolder(folder, named ?? `${DEMO}shop.json`);
  if (!read.ok) {
    printProblems(read.problems, terminal);
    terminal.err('Nothing was changed.');
    return EXIT.input;
  }
  const { kept } = read;
  const doing = { by: '', at };
  if ((await catalogueEdition(records.db)) === undefined) {
    await records.save((t) => layFirstCatalogue(t, kept, doing));
    terminal.out(`Laid in: ${kept.parts.length} parts, edition ${kept.edition}`);
    return EXIT.ok;
  }
  const before = (await catalogueOn(records.db, at.slice(0, 10)))!;
  const here = new Set(kept.parts.map(({ id }) => id));
  // A part that the folder does not have stays for the rigs that have it, and goes into no new one.
  const gone = before.parts.filter((part) => !here.has(part.id) && !part.retired);
  const changed = await records.save((t) =>
    changeCatalogue(
      t,
      {
        parts: [...kept.parts, ...gone.map(({ id, kind }) => ({ id, kind, retired: true }))],
        about: kept.about,
        layouts: kept.layouts,
        ...(named === undefined ? {} : { shop: kept.shop }),
      },
      doing,
    ),
  );
  terminal.out(
    `Laid in as edition ${changed.edition}: ${changed.added.length} new, ${changed.changed.length - gone.length} changed, ${gone.length} retired that the folder does not have` +
      (named === undefined ? "\nThe shop's settings stay; --shop takes over a file." : ''),
  );
  return EXIT.ok;
}
