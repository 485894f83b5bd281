import { LAYOUT_DOCUMENTS, LAYOUTS } from '@spraywright/engine/catalogue';
import { catalogueFiles, readCatalogueFolder } from '../documents/catalogue-folder.ts';
import { table } from '../documents/text-table.ts';
import { CATALOGUE_OPTION, EXIT, type Command } from './command.ts';
import { DEMO, printProblems } from './inputs.ts';

/** Lists the rig families a catalogue can build, or prints one as the document it is: what a shop's own starts from. */
export const layoutsCommand: Command = {
  name: 'layouts',
  usage: '[id]',
  summary: 'List the plumbing layouts that rigs are built by, or print one as JSON to start your own from.',
  options: { catalogue: CATALOGUE_OPTION },
  least: 0,
  most: 1,
  examples: [
    'spraywright layouts',
    'spraywright layouts heavy-cart > my-catalogue/layouts/two-gun-cart.json',
  ],
  run(args, terminal) {
    const folder = args.text('catalogue') ?? `${DEMO}catalogue`;
    const read = readCatalogueFolder(folder);
    if (!read.ok) {
      printProblems(read.problems, terminal);
      return EXIT.input;
    }
    const { layouts } = read.catalogue;
    const id = args.positionals[0];
    if (id === undefined) {
      const from = (l: (typeof layouts)[number]) => (LAYOUTS.includes(l) ? 'program' : 'catalogue');
      terminal.out(
        table(
          ['layout', 'from', 'for the work', 'is'],
          layouts.map((l) => [l.id, from(l), l.works.join(', '), l.name]),
        ),
      );
      return EXIT.ok;
    }
    const files = catalogueFiles(folder);
    const documents = [...(files.ok ? files.layouts.map((f) => f.raw) : []), ...LAYOUT_DOCUMENTS];
    const found = documents.find((raw) => (raw as { id?: unknown }).id === id);
    if (found !== undefined) {
      terminal.out(JSON.stringify(found, null, 2));
      return EXIT.ok;
    }
    terminal.err(`there is no layout '${id}'; the catalogue has ${layouts.map((l) => l.id).join(', ')}`);
    return EXIT.input;
  },
};
