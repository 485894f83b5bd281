import { randomBytes } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join, resolve as absolute } from 'node:path';
import { fileURLToPath } from 'node:url';
import { designRig } from '@spraywright/engine/rig';
import { readJsonFile } from '../documents/catalogue-folder.ts';
import { proofText } from '../documents/proof-text.ts';
import type { Records } from '../store/index.ts';
import { CATALOGUE_OPTION, EXIT, SHOP_OPTION, UNITS_OPTION, type Command, type Terminal } from './command.ts';
import { DEMO, printProblems, readInputs } from './inputs.ts';
import { startDocument } from '../server/start-document.ts';

const WEB = fileURLToPath(new URL('../../dist/web/', import.meta.url));
const DEMO_JOB = 'tall-trees';
const RECORDS = 'spraywright-records';

/** Prints the proof of the demo job, serves the page on the loopback interface, ends on Ctrl-C. */
export const startCommand: Command = {
  name: 'start',
  usage: '',
  summary: 'Print the proof of the demo job and serve the page on this machine.',
  options: {
    port: {
      type: 'string',
      short: 'p',
      value: 'number',
      help: 'port on the loopback interface (default 4173; 0 takes a free one)',
    },
    records: {
      type: 'string',
      short: 'r',
      value: 'folder',
      help: `folder of the shop's records, made when it is not there (default: ${RECORDS})`,
    },
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
  },
  least: 0,
  most: 0,
  examples: ['spraywright start --port 8080', 'spraywright start --records /srv/shop/records'],
  async run(args, terminal) {
    const port = Number(args.text('port') ?? 4173);
    if (!Number.isInteger(port) || port < 0 || port > 65535) {
      terminal.err(`--port is '${args.text('port')}'; a number from 0 to 65535 was expected`);
      return EXIT.input;
    }
    const inputs = readInputs(args, terminal);
    if (inputs === undefined) return EXIT.input;
    const demo = join(DEMO, 'briefs');
    const briefs = readdirSync(demo)
      .filter((f) => f.endsWith('.json'))
      .sort();
    const sources = briefs.map((name) => readJsonFile(join(demo, name)));
    for (const s of sources) if (!s.ok) printProblems(s.problems, terminal);
    const raws = sources.flatMap((s) => (s.ok ? [s.source.raw] : []));
    const first = raws.find((raw) => (raw as { work?: unknown }).work === DEMO_JOB) ?? raws[0];
    if (first !== undefined) {
      const design = designRig(first, inputs.catalogue, inputs.shop, { units: inputs.units });
      if (design.ok) terminal.out(proofText(design.proof, { units: inputs.units }));
    }
    const folder = absolute(args.text('records') ?? RECORDS);
    const records = await recordsIn(folder, terminal);
    if (records === undefined) return EXIT.input;
    // Loaded only now: the other commands need neither server nor records.
    const [{ serverApp }, { serve }] = await Promise.all([
      import('../server/app.ts'),
      import('@hono/node-server'),
    ]);
    const app = serverApp({
      webFolder: WEB,
      start: startDocument(
        args.text('catalogue') ?? join(DEMO, 'catalogue'),
        args.text('shop') ?? join(DEMO, 'shop.json'),
        raws,
      ),
      catalogue: inputs.catalogue,
      shop: inputs.shop,
      records,
      now: () => new Date().toISOString(),
      newId: () => `job-${randomBytes(5).toString('hex')}`,
      report: (error) =>
        terminal.err(error instanceof Error ? (error.stack ?? error.message) : String(error)),
    });
    const code = await new Promise<number>((resolve) => {
      const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port }, (info) => {
        terminal.out(`Records: ${folder}\nOpen http://127.0.0.1:${info.port}/   (Ctrl-C ends)`);
      });
      server.on('error', (error: NodeJS.ErrnoException) => {
        terminal.err(
          error.code === 'EADDRINUSE'
            ? `Port ${port} is taken. Another Spraywright may be running; or choose one: npm start -- --port 4174`
            : `The page cannot be served: ${error.message}`,
        );
        resolve(EXIT.input);
      });
      const end = () => {
        server.close(() => resolve(EXIT.ok));
        if ('closeAllConnections' in server) server.closeAllConnections();
      };
      process.once('SIGINT', end);
      process.once('SIGTERM', end);
    });
    await records.close();
    return code;
  },
};

/** The records, or why they cannot be had. */
async function recordsIn(folder: string, terminal: Terminal): Promise<Records | undefined> {
  try {
    const { openRecords } = await import('../store/index.ts');
    return await openRecords(folder);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const unbuilt = /bindings file|NODE_MODULE_VERSION|Cannot find module 'better-sqlite3'/.test(message);
    terminal.err(
      unbuilt
        ? 'The records need better-sqlite3, which is not built for this Node.\n' +
            'On Debian: apt-get install python3 make g++, then npm rebuild better-sqlite3'
        : `The records in ${folder} cannot be opened: ${message}`,
    );
    return undefined;
  }
}
