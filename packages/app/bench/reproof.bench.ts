// A thousand open quotes proven again after a part became dearer, in threads beside the server; meanwhile a job is opened
// every 20 ms as a person would, to see that the server still answers. The peer: the same proofs in this one thread.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { freezeQuote } from '../src/documents/quote/frozen-quote.ts';
import { catalogueFromFolder } from '../src/server/catalogue-files.ts';
import { quoteAgain } from '../src/server/reproof/quote-again.ts';
import { Reproofs } from '../src/server/reproof/reproofs.ts';
import { Shelf } from '../src/server/shelf.ts';
import {
  changeCatalogue,
  listReproofs,
  makeJob,
  makeQuote,
  openJob,
  openQuotes,
  openRecords,
} from '../src/store/index.ts';
import { DEMO, demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const MANY = Number(process.env.QUOTES ?? 1000);
const now = () => new Date().toISOString();
const doing = () => ({ by: '', at: now() });
const place = process.env.DATABASE_URL ?? mkdtempSync(join(tmpdir(), 'spraywright-reproof-'));
const records = await openRecords(place);
const first = catalogueFromFolder(`${DEMO}catalogue`, `${DEMO}shop.json`);
if (!first.ok) throw new Error(first.problems[0]!.message);
const shelf = new Shelf(records, first.kept, now);
await shelf.current();

const rigs = demoBriefs().map(({ name }) => demoRig(name, demoCatalogue(), demoShop()).raw);
const frozen = rigs.map((rig) => {
  const contents = {
    date: '2026-03-03',
    units: 'us',
    note: '',
    readyDay: () => '2026-05-05',
    options: [{ name: 'A', rig }],
  };
  const proven = freezeQuote(contents as never, demoCatalogue(), demoShop());
  if (!proven.ok) throw new Error(proven.problems[0]!.message);
  return proven;
});
await records.save((t) => makeJob(t, 'bench', { rig: rigs[0] as never, notes: '' }, doing()));
for (let start = 0; start < MANY; start += 100)
  await records.save(async (t) => {
    for (let n = start; n < Math.min(start + 100, MANY); n++)
      await makeQuote(
        t,
        'bench',
        (name) => {
          const document = frozen[n % frozen.length]!.name(name);
          const { title, customer, totalCents } = document.options[0]!.summary;
          return { document, facts: { title, customer, priceCents: totalCents, optionCount: 1 } };
        },
        doing(),
      );
  });

const used = new Set(rigs.flatMap((r) => (r as { items: { part: string }[] }).items.map((i) => i.part)));
const hoses = first.kept.parts.filter((p) => p.kind === 'hose' && used.has(p.id));
await records.save((t) =>
  changeCatalogue(
    t,
    {
      parts: hoses.map((p) => ({
        id: p.id,
        kind: p.kind,
        document: { ...p.document, priceCents: (p.document.priceCents as number) + 100 },
      })),
    },
    doing(),
  ),
);

const reproofs = new Reproofs({ records, shelf, now, report: (error) => console.error(error) });
const began = performance.now();
await reproofs.ask('');
let over = false;
const waits: number[] = [];
const asking = (async () => {
  while (!over) {
    const asked = performance.now();
    await openJob(records.db, 'bench');
    await wait(20);
    waits.push(performance.now() - asked - 20);
  }
})();
await reproofs.idle();
const seconds = (performance.now() - began) / 1000;
over = true;
await asking;
const [round] = await listReproofs(records.db, 1);
waits.sort((a, b) => a - b);
const at = (share: number) => waits[Math.floor((waits.length - 1) * share)]!.toFixed(1);
console.log(
  `${round!.done} of ${round!.total} open quotes proven again in ${seconds.toFixed(1)} s (${round!.state}); ${round!.changed} say something else`,
);
console.log(
  `meanwhile a job is opened in ${at(0.5)} ms (median), ${at(0.95)} ms (95 %), ${at(1)} ms (longest)`,
);

const { catalogue, shop } = await shelf.current();
const alone = performance.now();
const sample = await openQuotes(records.db, Math.min(100, MANY), '');
for (const quote of sample) quoteAgain(quote, catalogue, shop);
const each = (performance.now() - alone) / sample.length;
console.log(
  `peer, in this thread: ${each.toFixed(1)} ms a quote, ${((each * MANY) / 1000).toFixed(1)} s for all`,
);
await reproofs.close();
await records.close();
if (!place.startsWith('postgres')) rmSync(place, { recursive: true, force: true });
