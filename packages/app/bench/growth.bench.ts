// How the search grows with the catalogue: it is doubled three times, each part with a twin of another price and mass.
// An argument names the brief; a second one how many rigs are proven at most.
import { catalogueOf, type Catalogue } from '@spraywright/engine/catalogue';
import { searchRigs, settledText } from '@spraywright/engine/rig';
import { sequence } from '../test/cut-down.ts';
import { demoBriefs, demoCatalogue, demoShop } from '../test/demo.ts';

const NAME = process.argv[2] ?? 'roof-skid';
const MOST_PROOFS = Number(process.argv[3] ?? 20_000);
const DOUBLINGS = 3;
/** Twins differ by so much in price and mass at most. */
const APART = 0.06;
/** What is joined and small things are no choice of the search. */
const ALONE = new Set(['fitting', 'hardware']);
const WIDTH = 50;

const shop = demoShop();
const raw = demoBriefs().find((b) => b.name === NAME)?.raw;
if (raw === undefined) throw new Error(`there is no demo brief '${NAME}'`);

function doubled({ name, version, parts }: Catalogue, turn: number): Catalogue {
  const even = sequence(turn);
  const near = (value: number) => value * (1 + APART * (2 * even() - 1));
  const twins = [...parts.values()].flatMap((part) =>
    ALONE.has(part.kind)
      ? []
      : [
          {
            ...part,
            id: `${part.id}-${turn}`,
            priceCents: Math.round(near(part.priceCents)),
            mass: near(part.mass),
          },
        ],
  );
  return catalogueOf(name, version, [...parts.values(), ...twins]);
}

interface Row {
  readonly parts: number;
  readonly nodes: number;
  readonly seconds: number;
}

const rows: Row[] = [];
console.log(`${NAME}\nparts   sets of parts     left     nodes   proofs  rigs    settled       s   most MB`);
let catalogue = demoCatalogue();
for (let turn = 0; turn <= DOUBLINGS; turn++) {
  if (turn > 0) catalogue = doubled(catalogue, turn);
  const parts = [...catalogue.parts.values()].filter((p) => !ALONE.has(p.kind)).length;
  const began = performance.now();
  const found = searchRigs(raw, catalogue, shop, { mostProofs: MOST_PROOFS });
  const seconds = (performance.now() - began) / 1000;
  if (!found.ok) throw new Error(`${NAME}: the brief is not read`);
  const { size, narrowed, nodes, proofs, settled } = found.progress;
  rows.push({ parts, nodes, seconds });
  console.log(
    [
      String(parts).padStart(5),
      size.toExponential(1).padStart(16),
      narrowed.toExponential(1).padStart(9),
      String(nodes).padStart(10),
      String(proofs).padStart(9),
      String(found.choices.length).padStart(6),
      (found.complete ? 'all' : settledText(settled)).padStart(11),
      seconds.toFixed(1).padStart(8),
      (process.resourceUsage().maxRSS / 1024).toFixed(0).padStart(10),
    ].join(''),
  );
}
plot('nodes', (r) => r.nodes);
plot('seconds', (r) => r.seconds);

/** Bars by the logarithm: as many parts more, as much longer, is a straight line. */
function plot(what: string, value: (row: Row) => number): void {
  const logs = rows.map((r) => Math.log10(Math.max(value(r), 1e-3)));
  const [least, most] = [Math.floor(Math.min(...logs)), Math.ceil(Math.max(...logs))];
  console.log(`\n${what}, a bar from 10^${least} to 10^${most}`);
  rows.forEach((r, i) => {
    const bar = '#'.repeat(Math.max(1, Math.round((WIDTH * (logs[i]! - least)) / Math.max(1, most - least))));
    console.log(`${String(r.parts).padStart(5)} parts ${bar.padEnd(WIDTH)} ${value(r).toPrecision(3)}`);
  });
}
