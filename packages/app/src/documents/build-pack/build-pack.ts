import type { Part } from '@spraywright/engine/catalogue';
import { deckPlan, deckPlanOf, PALETTES, partNumbers, wiringDiagram } from '@spraywright/engine/drawings';
import { display, moneyText, type UnitSystem } from '@spraywright/engine/quantity';
import {
  assemblySteps,
  type AssemblyStep,
  fetchList,
  ordersToFetch,
  pickList,
  type BillLine,
  type BuildRecord,
  type Fetch,
  type Proof,
  type Rig,
  type StepDone,
} from '@spraywright/engine/rig';
import { figureText } from '../build-record-chapter.ts';
import { note, warning, type Block, type Chapter } from '../chapters/chapter.ts';
import { rigPlate, PLATE } from '../handbook/rig-plate.ts';
import type { QuoteOptions } from '../quote-options.ts';
import { freightChapter } from './freight-chapter.ts';
import { jointsBlocks } from './joints-blocks.ts';

/** What a shop needs to build one machine. */
export interface BuildPackOptions extends QuoteOptions {
  readonly serial: string;
  /** Day on which building begins. */
  readonly buildDate: string;
  /** Whether the list to buy tells what parts cost; it does when nothing is said. */
  readonly costs?: boolean;
  readonly partOf: (id: string) => Part | undefined;
  /** Pieces or feet of a part that the store gave this machine already; none when nothing is said. */
  readonly givenOf?: (part: string) => number;
  /** What was written down while it was built. */
  readonly built?: BuildRecord;
  /** The plumbing diagram as SVG; its places come from a layout that papers do not make. */
  readonly plumbing: string;
}

/** Width of a drawing over the whole sheet, px and points. */
const DRAWN = { px: 712, points: 534 } as const;

/** Everything that is fetched, bought, cut, joined, wired, checked and labelled to build one machine. */
export function buildPackOf(rig: Rig, proof: Proof, options: BuildPackOptions): Chapter[] {
  return [
    identity(rig, proof, options),
    picks(proof, options),
    orders(proof, options),
    cuts(proof, options),
    frame(proof, options),
    {
      id: 'plumbing',
      title: 'Plumbing',
      blocks: [
        {
          kind: 'drawing',
          svg: options.plumbing,
          words: 'Plumbing diagram with part numbers',
          width: DRAWN.points,
        },
        note('Symbols after ISO 1219-1 and ISO 14617. Circles are part numbers.'),
        ...jointsBlocks(rig, proof, options.units),
      ],
    },
    wiring(proof, options),
    steps(rig, proof, options),
    labels(proof),
    freightChapter(proof, options),
  ];
}

function identity(rig: Rig, proof: Proof, options: BuildPackOptions): Chapter {
  const { broken, unknown } = proof.counts;
  const open = [...proof.bill.plumbing.gaps, ...proof.bill.missing];
  return {
    id: 'machine',
    title: `Serial ${options.serial}`,
    blocks: [
      ...(broken > 0
        ? [
            warning(
              `${broken === 1 ? 'One promise of this rig is' : `${broken} promises of this rig are`} broken. Ask who designed it before anything is cut.`,
            ),
          ]
        : []),
      ...(unknown > 0
        ? [
            note(
              `${unknown === 1 ? 'One promise is' : `${unknown} promises are`} unknown; the design record says what is missing.`,
            ),
          ]
        : []),
      ...open.map((text) => warning(`Not in the catalogue: ${text}.`)),
      {
        kind: 'drawing',
        svg: rigPlate(rig, proof, options),
        words: `Plate of serial ${options.serial}`,
        width: PLATE.width * 0.6,
      },
      note(
        `Building begins on ${options.buildDate}. Circles with numbers are parts, the same in every list and drawing. A qualified person must approve frame and lifting points.`,
      ),
    ],
  };
}

const unitOf = (count: number, unit: BillLine['unit']) => (unit === 'ft' ? `${count} ft` : String(count));

/** What is fetched for the machine, with the store as the parts say. */
export function fetched(proof: Proof, { partOf, givenOf = () => 0 }: BuildPackOptions): Fetch[] {
  return fetchList(pickList(proof.bill, partOf), (id) => partOf(id)?.stock ?? 0, givenOf);
}

function picks(proof: Proof, options: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  const list = fetched(proof, options);
  const groups = [...new Set(list.map((p) => p.group))];
  const short = list.filter((p) => p.short > 0).length;
  const given = list.some((p) => p.taken > 0);
  return {
    id: 'pick-list',
    title: 'Fetch from the store',
    blocks: groups
      .flatMap((group): Block[] => [
        { kind: 'head', text: group },
        {
          kind: 'table',
          captions: [
            'no.',
            'part',
            'catalogue number',
            'need',
            ...(given ? ['has'] : []),
            'in store',
            'fetch',
            'short',
            'done',
          ],
          rows: list
            .filter((p) => p.group === group)
            .map((p) => [
              p.items.map((i) => numbers.get(i)).join(', '),
              p.name,
              p.part,
              unitOf(p.need, p.unit),
              ...(given ? [p.taken > 0 ? unitOf(p.taken, p.unit) : ''] : []),
              unitOf(p.onHand, p.unit),
              unitOf(p.take, p.unit),
              p.short > 0 ? unitOf(p.short, p.unit) : '',
              '',
            ]),
          widths: [30, '*', 138, 36, ...(given ? [36] : []), 38, 36, 34, 26],
          words: 3,
          strong: given ? 7 : 6,
        },
      ])
      .concat(
        note(
          `${short} of ${list.length} lines are short by what was written down as taken and brought; count before relying on it.`,
        ),
      ),
  };
}

/** A day that has gone is told as gone: what is not ordered yet then comes too late for the day on which building begins. */
function orderBy(day: string | undefined, today: string): string {
  if (day === undefined) return 'unknown';
  return day < today ? `${day} (past)` : day;
}

function orders(proof: Proof, options: BuildPackOptions): Chapter {
  const { partOf, buildDate, costs = true } = options;
  const list = ordersToFetch(fetched(proof, options), partOf, buildDate);
  const suppliers = [...new Set(list.map((o) => o.supplier))];
  return {
    id: 'orders',
    title: 'Buy',
    blocks:
      list.length === 0
        ? [note('Nothing is short.')]
        : [
            ...suppliers.flatMap((supplier): Block[] => [
              { kind: 'head', text: supplier ?? 'Supplier not told in the catalogue' },
              {
                kind: 'table',
                captions: [
                  'part',
                  'catalogue number',
                  'order',
                  ...(costs ? ['cost'] : []),
                  'takes',
                  'order by',
                ],
                rows: list
                  .filter((o) => o.supplier === supplier)
                  .map((o) => [
                    o.name,
                    o.part,
                    unitOf(o.order, o.unit),
                    ...(costs ? [moneyText(o.costCents)] : []),
                    `${o.leadTimeDays} days`,
                    orderBy(o.orderBy, options.date),
                  ]),
                widths: ['*', 150, 44, ...(costs ? [56] : []), 46, 62],
                words: 2,
                strong: costs ? 5 : 4,
              },
            ]),
            note(
              'Order by: the last working day, Monday to Friday, on which it can be ordered to be there when building begins. Holidays are not known.',
            ),
          ],
  };
}

function cuts(proof: Proof, { units }: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  return {
    id: 'hoses',
    title: 'Cut hose',
    blocks:
      proof.bill.cuts.length === 0
        ? [note('No hose is cut.')]
        : [
            {
              kind: 'table',
              captions: ['no.', 'hose', 'one end', 'other end', 'pieces', 'length', 'done'],
              rows: proof.bill.cuts.map((c) => [
                String(numbers.get(c.item) ?? ''),
                c.name,
                c.ends[0],
                c.ends[1],
                String(c.count),
                display(c.length, 'length', units),
                '',
              ]),
              widths: [20, 120, '*', '*', 34, 46, 26],
              words: 4,
              strong: 5,
            },
          ],
  };
}

function frame(proof: Proof, { units }: BuildPackOptions): Chapter {
  const plan = deckPlanOf(proof);
  if (plan === undefined)
    return { id: 'frame', title: 'Frame', blocks: [note('The rig has no carrier: there is no frame.')] };
  const length = (v: number) => display(v, 'length', units);
  return {
    id: 'frame',
    title: 'Frame: the deck from above, front at the left',
    blocks: [
      {
        kind: 'drawing',
        svg: deckPlan(proof, { width: DRAWN.px, units, palette: PALETTES.print })!,
        words: 'Deck from above with part numbers',
        width: DRAWN.points,
      },
      {
        kind: 'table',
        captions: ['no.', 'part: its middle', 'behind front', 'to the left', 'mass as it works'],
        rows: plan.standing.map(({ number, part }) => [
          String(number),
          `${part.name}${part.given ? '' : ' (placed by rule)'}`,
          length(part.x),
          length(part.y),
          display(part.mass, 'mass', units),
        ]),
        widths: [22, '*', 70, 70, 84],
        words: 2,
      },
      ...loads(proof, units),
    ],
  };
}

/** What rests where, and what the frame must be looked at for. */
function loads({ placement }: Proof, units: UnitSystem): Block[] {
  const mass = (v: number) => display(v, 'mass', units);
  if (placement === undefined || placement.supports.length === 0)
    return [note('What carries the rig is not told: ask for the vehicle and its axles.')];
  return [
    { kind: 'head', text: `What rests where, with ${placement.liquid.name} in the tank` },
    {
      kind: 'table',
      captions: ['support', 'full', 'half', 'empty', 'rating'],
      rows: placement.supports.map((s) => [
        s.name,
        mass(s.full),
        mass(s.half),
        mass(s.empty),
        s.rating === undefined ? 'not told' : mass(s.rating),
      ]),
      widths: ['*', 68, 68, 68, 68],
      words: 1,
    },
    note('All of this is an estimate: a qualified person must approve the frame and its lifting points.'),
  ];
}

function wiring(proof: Proof, { units }: BuildPackOptions): Chapter {
  const title = 'Wiring';
  if (proof.wiring === undefined)
    return { id: 'wiring', title, blocks: [note('This rig has no electrics that the proof knows of.')] };
  const { circuits } = proof.wiring;
  return {
    id: 'wiring',
    title,
    blocks: [
      {
        kind: 'drawing',
        svg: wiringDiagram(proof.wiring, {
          width: DRAWN.px,
          units,
          palette: PALETTES.print,
          numbers: partNumbers(proof),
        }),
        words: 'Wiring diagram with cable sizes and fuses',
        width: DRAWN.points,
      },
      {
        kind: 'table',
        captions: ['circuit', 'cable', 'one way', 'wire in all', 'current', 'fuse', 'drop'],
        rows: circuits.map((c) => [
          c.name,
          c.cable === undefined ? 'unknown' : `AWG ${c.cable.label}`,
          display(c.oneWay, 'length', units),
          display(2 * c.oneWay, 'length', units),
          display(c.current, 'current', units),
          c.fuse === null ? 'none' : `${c.fuse} A`,
          c.drop === undefined ? 'unknown' : display(c.drop, 'voltage', units),
        ]),
        widths: ['*', 52, 52, 60, 48, 40, 44],
        words: 2,
      },
      note(
        'Sized by voltage drop, ampacity and fuse (ABYC E-11 table of AWG cable as reprinted; 3 and 10 % drop and 125 % fuse are common practice, from memory). The switch is drawn open; its rating must be that of the fuse. Symbols after IEC 60617.',
      ),
    ],
  };
}

function steps(rig: Rig, proof: Proof, { units, built }: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  return {
    id: 'assembly',
    title: 'Put it together',
    blocks: [
      {
        kind: 'table',
        captions: [
          'step',
          'what',
          'parts',
          'check before going on',
          'torque or reading',
          'who',
          'name, date',
        ],
        rows: assemblySteps(rig, proof, units).map((s, i) => [
          String(i + 1),
          s.text,
          s.items
            .flatMap((item) => numbers.get(item) ?? [])
            .sort((a, b) => a - b)
            .join(', '),
          s.check,
          figureOf(s, built, units),
          s.by,
          signedBy(built?.steps.get(s.id)),
        ]),
        widths: [20, '*', 44, 112, 92, 46, 54],
        words: 7,
      },
      note(
        "Order and checks: common practice, no source. Torques are the makers' to say; none is guessed here.",
      ),
    ],
  };
}

/** The figure that was read, else the one that is asked. */
function figureOf(
  { id, asks, figure }: AssemblyStep,
  built: BuildRecord | undefined,
  units: UnitSystem,
): string {
  const step = built?.steps.get(id);
  const read = step?.done === true ? figureText(step, asks?.dimension, units) : '';
  return read === '' ? figure : read;
}

/** Who did a step and when; blank to sign by hand where nobody wrote it down. */
function signedBy(step: StepDone | undefined): string {
  return step?.done === true ? [step.by, step.at.slice(0, 10)].filter((t) => t !== '').join(', ') : '';
}

function labels(proof: Proof): Chapter {
  return {
    id: 'labels',
    title: 'Labels',
    blocks: [
      {
        kind: 'table',
        captions: ['where', 'danger', 'what to do', 'done'],
        rows: proof.cautions.map(({ caution }) => [caution.place, caution.danger, caution.act, '']),
        widths: [48, '*', '*', 26],
        words: 4,
      },
      note(
        'Wording and colours of safety labels follow the rules of the place where the rig is sold; ask there.',
      ),
    ],
  };
}
