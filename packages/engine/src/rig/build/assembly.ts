import type { Kind, Part } from '../../catalogue/index.ts';
import { LEGAL_SIZE } from '../../physics/index.ts';
import { display, type Dimension, type UnitSystem } from '../../quantity/index.ts';
import { underWords } from '../placement/index.ts';
import type { RigJoint } from '../plumbing/index.ts';
import type { Proof } from '../proof/prove.ts';
import { first, type Rig, type RigLine } from '../rig-document.ts';

/** A figure that whoever does a step writes down. */
export interface StepAsks {
  readonly what: string;
  readonly dimension: Dimension;
  /** What else is written down with the figure. */
  readonly also?: string;
}

/** One step of building a rig. */
export interface AssemblyStep {
  /** Stays the same while the step is asked, whatever its words become: `mount-tank`, `line-pressure`. */
  readonly id: string;
  readonly text: string;
  /** Items that the step is about. */
  readonly items: readonly string[];
  /** What is looked at before the next step, and by whom. */
  readonly check: string;
  readonly by: 'builder' | 'second person' | 'qualified person';
  /** Torque or reading; what only a maker knows is said to be unknown. */
  readonly figure: string;
  /** Absent where nothing is measured. */
  readonly asks?: StepAsks;
}

const TORQUE: StepAsks = { what: "torque used, by the maker's sheet", dimension: 'torque' };
const MAKER = "torque unknown: maker's sheet";
/** Joints are watched this long under pressure: common practice, no source. */
const WATCHED = '10 min';

/** Kinds that are bolted to the frame before any hose, in the order of the work. */
const MOUNTED: readonly { readonly kinds: readonly Kind[]; readonly text: string; readonly check: string }[] =
  [
    {
      kinds: ['tank'],
      text: 'Set the tank on the frame and strap it',
      check: 'tank does not move by hand; lid and outlet can be reached',
    },
    {
      kinds: ['pump', 'motor-pump'],
      text: 'Bolt the pump to the frame',
      check: 'feet flat, no soft foot; shaft turns by hand',
    },
    {
      kinds: ['engine'],
      text: 'Bolt the engine to the frame',
      check: 'exhaust away from tank, hoses and hands',
    },
    {
      kinds: ['reduction', 'pto-drive'],
      text: 'Fit the drive between engine or tractor and pump, with its guard',
      check: 'shafts in line, key or spline home, guard closed',
    },
    {
      kinds: ['battery'],
      text: 'Fasten the battery in its box; leave it unconnected',
      check: 'box vented, terminals covered',
    },
    { kinds: ['reel'], text: 'Bolt the reel to the frame', check: 'drum turns free, its brake or pin holds' },
    { kinds: ['boom'], text: 'Hang the boom', check: 'level, folds and locks' },
    {
      kinds: ['strainer', 'regulator', 'gauge', 'eductor'],
      text: 'Fasten strainer, regulator and gauge where they can be read and cleaned',
      check: 'bowl can come off; gauge faces the operator',
    },
  ];

/** The steps of building a rig, in order: frame, parts, every line of its plumbing, wiring, labels, test. */
export function assemblySteps(rig: Rig, proof: Proof, units: UnitSystem): AssemblyStep[] {
  return [
    ...frameStep(rig, proof),
    ...mountSteps(rig, proof, units),
    ...rig.lines.flatMap((line) => lineSteps(proof, line, units)),
    ...closingSteps(proof),
    ...wiringSteps(proof, units),
    ...weighStep(rig, units),
    ...lastSteps(rig, proof, units),
  ];
}

function frameStep(rig: Rig, proof: Proof): AssemblyStep[] {
  const carrier = itemsOf(rig, ['carrier']);
  if (carrier.length === 0) return [];
  const { placement } = proof;
  return [
    {
      id: 'frame',
      text: 'Mark the middle of every part on the deck by the frame drawing; drill',
      items: carrier,
      check:
        placement === undefined
          ? 'places unknown: ask who designed it'
          : `two places measured again from the front and the middle line; welds and frame approved`,
      by: 'qualified person',
      figure: 'drill sizes: the parts to be mounted',
    },
  ];
}

function mountSteps(rig: Rig, proof: Proof, units: UnitSystem): AssemblyStep[] {
  return MOUNTED.flatMap(({ kinds, text, check }): AssemblyStep[] => {
    const items = itemsOf(rig, kinds);
    const words = [text, ...items.flatMap((item) => onStand(proof, item, units))].join('. ');
    return items.length === 0
      ? []
      : [{ id: `mount-${kinds[0]!}`, text: words, items, check, by: 'builder', figure: MAKER, asks: TORQUE }];
  });
}

/** A part over others needs a stand, which is in no list. */
function onStand({ placement }: Proof, item: string, units: UnitSystem): string[] {
  const parts = placement?.parts ?? [];
  const part = parts.find((p) => p.item === item);
  const under = part === undefined ? undefined : underWords(part, parts);
  if (part === undefined || under === undefined) return [];
  const height = display(part.z - placement!.carrier.deckHeight, 'length', units);
  return [
    `The ${part.kind} goes on a stand over ${under}, ${height} above the deck; the stand is in no list`,
  ];
}

/** One line of the plumbing, its joints in the order of the flow. */
function lineSteps(proof: Proof, line: RigLine, units: UnitSystem): AssemblyStep[] {
  const joints = proof.bill.plumbing.joints.filter((j) => j.line === line.id);
  if (joints.length === 0) return [];
  const cuts = proof.bill.cuts
    .filter((c) => line.run.includes(c.item))
    .map((c) => `${c.count > 1 ? `${c.count} × ` : ''}${display(c.length, 'length', units)} of ${c.name}`);
  const highest = joints.reduce((most, j) => Math.max(most, j.pressure), 0);
  const gaps = joints.flatMap((j) => j.gap ?? []);
  return [
    {
      id: `line-${line.id}`,
      text: `${line.name}: ${cuts.length === 0 ? '' : `cut ${cuts.join(' and ')}; `}make up its ${countOf(joints)} joints by the list`,
      items: line.run,
      check:
        gaps.length > 0
          ? `not buildable as it stands: ${gaps.join('; ')}`
          : 'each joint marked when tight; arrows of valves and strainer with the flow; no hose kinked or rubbing',
      by: gaps.length > 0 ? 'qualified person' : 'builder',
      figure: `must stand ${display(highest, 'pressure', units)}; ${threadsIn(joints) ? `taper threads with sealant, ${MAKER}` : MAKER}`,
    },
  ];
}

function countOf(joints: readonly RigJoint[]): number {
  return joints.reduce((n, j) => n + (j.pieces.length + 1) * j.times, 0);
}

function threadsIn(joints: readonly RigJoint[]): boolean {
  return joints.some((j) => j.pieces.some((p: Part) => p.ports.some((port) => port.joint === 'npt')));
}

/** Drain, plugs and caps that no line has. */
function closingSteps(proof: Proof): AssemblyStep[] {
  const { added } = proof.bill.plumbing;
  if (added.length === 0) return [];
  return [
    {
      id: 'close',
      text: `Fit what closes and branches: ${[...new Set(added.map((a) => a.part.name))].join('; ')}`,
      items: [],
      check: 'no port is open that the list does not call open',
      by: 'second person',
      figure: MAKER,
    },
  ];
}

function wiringSteps({ wiring }: Proof, units: UnitSystem): AssemblyStep[] {
  if (wiring === undefined) return [];
  return [
    ...wiring.circuits.map((c, i): AssemblyStep => {
      const cable = c.cable === undefined ? 'cable unknown: ask an electrician' : `AWG ${c.cable.label}`;
      return {
        id: `wire-${i + 1}-${c.item}`,
        text: `Wire ${c.name}: two of ${cable}, ${display(c.oneWay, 'length', units)} each${c.fuse === null ? '' : `, fuse of ${c.fuse} A at the supply`}`,
        items: [c.item],
        check: 'fuse out; no strand loose, cable clipped, grommet at every hole',
        by: 'builder',
        figure:
          c.drop === undefined
            ? 'unknown'
            : `loses ${display(c.drop, 'voltage', units)} at ${display(c.current, 'current', units)}, at most ${display(c.allowed, 'voltage', units)}`,
        asks: { what: 'voltage lost, measured under load', dimension: 'voltage' },
      };
    }),
    {
      id: 'supply',
      text: 'Connect the supply last, minus after plus; put in the fuses',
      items: wiring.battery === undefined ? [] : [wiring.battery],
      check: 'polarity by meter before the first start',
      by: 'second person',
      figure: `${display(wiring.voltage, 'voltage', units)} nominal`,
      asks: { what: 'voltage at the supply', dimension: 'voltage' },
    },
  ];
}

const WHEELED: readonly string[] = ['cart', 'wagon', 'tandem-trailer'];
const POUND = 0.45359237;

/** A road trailer to 10,000 lb shows what it may carry: rating less its weighed empty weight. */
function weighStep(rig: Rig, units: UnitSystem): AssemblyStep[] {
  for (const { item, part } of rig.items.values()) {
    if (part.kind !== 'carrier' || !WHEELED.includes(part.form)) continue;
    const { value, origin } = LEGAL_SIZE.placardMaxGvwrLb;
    if (part.grossRating > value * POUND * (1 + 1e-9)) continue;
    return [
      {
        id: 'weigh',
        text: `Weigh it empty and dry${first(rig, 'engine') === undefined ? '' : ', its fuel tank full,'} on a certified scale; keep the ticket`,
        items: [item.id],
        check: `as a road trailer its placard shows the load it may carry, its rating less the weighed empty weight (${origin.source}, ${origin.place}); elsewhere, or off the road, ask what is shown`,
        by: 'second person',
        figure: `rating ${display(part.grossRating, 'mass', units)}; number of the ticket`,
        asks: { what: 'empty weight by the ticket', dimension: 'mass', also: 'number of the ticket' },
      },
    ];
  }
  return [];
}

function lastSteps(rig: Rig, proof: Proof, units: UnitSystem): AssemblyStep[] {
  const highest = proof.duties
    .flatMap((d) => [...d.open.pressureAt.values(), ...d.shut.pressureAt.values()])
    .reduce((a, b) => Math.max(a, b), 0);
  return [
    {
      id: 'labels',
      text: `Put on the ${proof.cautions.length} caution labels and the plate`,
      items: [],
      check: 'each where its work is, readable from where one stands',
      by: 'second person',
      figure: '',
    },
    {
      id: 'water',
      text: 'Fill with clean water; run it with every outlet shut, then open',
      items: itemsOf(rig, ['regulator', 'gauge']),
      check: `no drip in ${WATCHED} (common practice, no source); pressure off before any joint is touched`,
      by: 'second person',
      figure: highest > 0 ? `highest pressure ${display(highest, 'pressure', units)}` : 'pressure unknown',
      asks: { what: 'highest pressure seen with outlets shut', dimension: 'pressure' },
    },
    {
      id: 'yard',
      text: 'Take every reading of the yard test sheet',
      items: [],
      check: 'no reading fails; drained and dry before it leaves',
      by: 'second person',
      figure: 'windows: yard test sheet',
    },
  ];
}

function itemsOf(rig: Rig, kinds: readonly Kind[]): string[] {
  return [...rig.items.values()].filter(({ part }) => kinds.includes(part.kind)).map(({ item }) => item.id);
}
