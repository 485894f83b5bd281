import { randomBytes } from 'node:crypto';
import { readdirSync } from 'node:fs';
import type { Server } from 'node:http';
import { createServer } from 'node:https';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { designRig } from '@spraywright/engine/rig';
import { readJsonFile } from '../documents/catalogue-folder.ts';
import { proofText } from '../documents/proof-text.ts';
import { CATALOGUE_OPTION, EXIT, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { isSecure } from '../server/reached-by.ts';
import { DEMO, printProblems, readInputs } from './inputs.ts';
import { namesAt, readReached, REACHED_OPTIONS, type Reached } from './reached-options.ts';
import { shelfOf } from './shelf-at-start.ts';
import { outboxFor, placeShown, recordsAt, recordsPlace, RECORDS_OPTION } from './records-place.ts';

const WEB = fileURLToPath(new URL('../../dist/web/', import.meta.url));
const DEMO_JOB = 'tall-trees';
const LOOPBACK = '127.0.0.1';
const NO_OWNER =
  'Others can reach this address, so it serves nothing until there is an owner. The first owner makes the account at the address ' +
  'below, which opens once, for a day, or in the terminal:\n' +
  "spraywright people add 'NAME' --email ADDRESS --role owner";
const IN_CLEAR =
  'Passwords and records cross this network in clear. Use it only where you trust the network, or through a tunnel.';

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
      help: 'port on the loopback interface or --host (default 4173; 0 takes a free one)',
    },
    host: {
      type: 'string',
      value: 'address',
      help: 'address of this machine to serve at (default 127.0.0.1); any other needs an owner, see people',
    },
    ...REACHED_OPTIONS,
    records: RECORDS_OPTION,
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
    let outside: Reached;
    try {
      outside = readReached(args);
    } catch (error) {
      terminal.err(error instanceof Error ? error.message : String(error));
      return EXIT.input;
    }
    const { reached, tls } = outside;
    const inputs = readInputs(args, terminal);
    if (inputs === undefined) return EXIT.input;
    const demo = join(DEMO, 'briefs');
    const briefs = readdirSync(demo)
      .filter((f) => f.endsWith('.json'))
      .sort();
    const sources = briefs.map((name) => readJsonFile(join(demo, name)));
    for (const s of sources) if (!s.ok) printProblems(s.problems, terminal);
    const raws = sources.flatMap((s) => (s.ok ? [s.source.raw] : []));
    const place = recordsPlace(args);
    const records = await recordsAt(place, terminal);
    if (records === undefined) return EXIT.input;
    const host = args.text('host') ?? LOOPBACK;
    const mailServer = process.env.SPRAYWRIGHT_SMTP;
    const mailFrom = process.env.SPRAYWRIGHT_MAIL_FROM;
    const { People } = await import('../server/people.ts');
    const people = new People(records, Date.now, isSecure(reached));
    // What is reached from outside is no one person's alone, at whatever address of this machine it is served.
    const alone = host === LOOPBACK && reached.origin === undefined;
    const setUp = alone ? undefined : await people.setUpLink();
    if (setUp !== undefined) terminal.err(NO_OWNER);
    if (host !== LOOPBACK && !isSecure(reached)) terminal.err(IN_CLEAR);
    // Loaded only now: the other commands need neither server nor records.
    const [{ serverApp }, { endAfterAnswers }, { mailBy }, { serve }] = await Promise.all([
      import('../server/app.ts'),
      import('../server/last-answers.ts'),
      import('../server/mail/mail.ts'),
      import('@hono/node-server'),
    ]);
    const shelf = await shelfOf(args, records, terminal);
    if (shelf === undefined) {
      await records.close();
      return EXIT.input;
    }
    const first = raws.find((raw) => (raw as { work?: unknown }).work === DEMO_JOB) ?? raws[0];
    const { catalogue, shop } = await shelf.current();
    const design = designRig(first, catalogue, shop, { units: inputs.units });
    if (design.ok) terminal.out(proofText(design.proof, { units: inputs.units }));
    const sender = async () => {
      const { name, mailFrom: address = mailFrom } = (await shelf.current()).shop;
      return { name, address };
    };
    if (mailServer !== undefined && (await sender()).address === undefined)
      terminal.err(
        "No letter goes out yet: the shop's settings in the office, or SPRAYWRIGHT_MAIL_FROM, must say from which address.",
      );
    const { Reproofs } = await import('../server/reproof/reproofs.ts');
    const report = (error: unknown) =>
      terminal.err(error instanceof Error ? (error.stack ?? error.message) : String(error));
    const reproofs = new Reproofs({ records, shelf, now: () => new Date().toISOString(), report });
    reproofs.resume();
    const app = serverApp({
      webFolder: WEB,
      shelf,
      reproofs,
      briefs: raws,
      ...(design.ok ? { designed: { rig: design.rig, with: catalogue } } : {}),
      records,
      people,
      alone,
      reached,
      names: namesAt(host),
      mail: mailBy({
        from: sender,
        server: mailServer,
        outbox: outboxFor(place),
        now: () => new Date().toISOString(),
      }),
      now: () => new Date().toISOString(),
      newId: () => `job-${randomBytes(5).toString('hex')}`,
      report,
    });
    const code = await new Promise<number>((resolve) => {
      const asked = { fetch: app.fetch, hostname: host, port };
      const byTls = tls === undefined ? asked : { ...asked, createServer, serverOptions: tls };
      const server = serve(byTls, (info) => {
        const at = (name: string) => `http${tls === undefined ? '' : 's'}://${name}:${info.port}`;
        const own = at(host === '0.0.0.0' ? LOOPBACK : host);
        const page = `${reached.origin ?? own}/`;
        const first = setUp === undefined ? '' : `\nFirst owner: ${page}set-up/${setUp.token}`;
        const mail = mailServer === undefined ? `\nLetters: kept in ${outboxFor(place)}; none is sent` : '';
        // Who serves every address of this machine is told those that a tablet in the shop can type.
        const others =
          host === '0.0.0.0' && reached.origin === undefined
            ? namesAt(host).filter((name) => name !== LOOPBACK)
            : [];
        const elsewhere =
          others.length === 0
            ? ''
            : `\nOn other machines: ${others.map((name) => `${at(name)}/`).join(' or ')}`;
        terminal.out(
          `Records: ${placeShown(place)}${mail}${first}${elsewhere}\nOpen ${page}   (Ctrl-C ends)`,
        );
      });
      server.on('error', (error: NodeJS.ErrnoException) => {
        terminal.err(
          error.code === 'EADDRINUSE'
            ? `Port ${port} is taken. Another Spraywright may be running; or choose one: npm start -- --port 4174`
            : `The page cannot be served: ${error.message}`,
        );
        resolve(EXIT.input);
      });
      const end = () => void endAfterAnswers(server as Server).then(() => resolve(EXIT.ok));
      process.once('SIGINT', end);
      process.once('SIGTERM', end);
    });
    await reproofs.close();
    await records.close();
    return code;
  },
};
