import type { Records } from '../store/index.ts';
import type { Shelf } from '../server/shelf.ts';
import type { Arguments, Terminal } from './command.ts';
import { DEMO, printProblems } from './inputs.ts';

/**
 * The catalogue that a server works with: the one in the records. Into records without one the folder's is laid; later
 * a folder that is named is not read, and that is said.
 */
export async function shelfOf(
  args: Arguments,
  records: Records,
  terminal: Terminal,
): Promise<Shelf | undefined> {
  const [{ catalogueEdition }, { Shelf }, { catalogueFromFolder }] = await Promise.all([
    import('../store/index.ts'),
    import('../server/shelf.ts'),
    import('../server/catalogue-files.ts'),
  ]);
  const folder = args.text('catalogue') ?? `${DEMO}catalogue`;
  const known = (await catalogueEdition(records.db)) !== undefined;
  const first = known ? undefined : catalogueFromFolder(folder, args.text('shop') ?? `${DEMO}shop.json`);
  if (first?.ok === false) {
    printProblems(first.problems, terminal);
    return undefined;
  }
  const shelf = new Shelf(records, first?.kept, () => new Date().toISOString());
  try {
    const laid = !known && (await shelf.layFirst());
    const { edition, catalogue } = await shelf.current();
    const count = `${catalogue.parts.size} parts, edition ${edition}`;
    if (laid) terminal.out(`Catalogue: laid into the records from ${folder} (${count})`);
    else {
      terminal.out(`Catalogue: from the records (${count})`);
      if (args.text('catalogue') !== undefined || args.text('shop') !== undefined)
        terminal.err(
          'The records have a catalogue already: --catalogue and --shop are not read.\n' +
            'To take over a folder: spraywright catalogue lay-in FOLDER',
        );
    }
    return shelf;
  } catch (error) {
    terminal.err(error instanceof Error ? error.message : String(error));
    return undefined;
  }
}
