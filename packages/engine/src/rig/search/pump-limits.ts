import type { PartOf, LayoutLine } from '../../catalogue/index.ts';
import { askedFlow } from '../asked-flow.ts';
import type { Duty } from '../brief.ts';
import { pumpCurrentAt } from '../pump-current.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { fallsToZero } from './falls-to-zero.ts';
import type { Limit } from './limit.ts';
import { highestSurface, lineLoss, outletNeed } from './outlet-need.ts';
import { pumpSpeed } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';

const G = 9.80665;
const FREE = Infinity;
/** Spare that a pump keeps for wear, as its promise asks. */
const WEAR = 1.2;
/** A pump whose inlet stands lower than this under the air starves [Pa]. */
const STARVES = 0.9e5;
/** For what the laws of the network have besides. */
const ROOM = 0.03;
/** Share of a flow to which it is found. */
const CLOSE = 1e-4;

/**
 * Pumps whose pressure falls as they give more: the flow that a duty asks, with a fifth for wear, must be within what
 * they give at the pressure that the outlet lines need.
 */
export function curveLimits(space: SearchSpace): Limit[] {
  const { brief, contexts, layout } = space;
  const pumps = space.slots.find((s) => s.id === 'pump')?.options ?? [];
  const falling = pumps.some(
    (p) => p?.kind === 'motor-pump' || (p?.kind === 'pump' && p.law.action === 'centrifugal'),
  );
  if (!falling) return [];
  const lines = usedOutlets(layout, brief);
  const outlets = lines.flatMap((l) => l.run);
  const drive = layout.slots.flatMap((s) => (['pto', 'reduction', 'engine'].includes(s.id) ? [s.id] : []));
  const gives = (partAt: PartAt): number => {
    const pump = partAt('pump');
    let margin = FREE;
    for (const duty of brief.duties) {
      const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
      if (open.length === 0) continue;
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const asked = askedFlow(duty, liquid);
      // What goes out of a 12 V rig is all that its pump gives.
      const times = pump?.kind === 'motor-pump' && asked !== undefined ? WEAR : 1;
      const needs = open.map((l) => outletNeed(space, l, duty, partAt, times));
      const pressure = Math.max(...needs.map((n) => n.pressure));
      const out = needs.reduce((sum, n) => sum + n.flow, 0);
      const flow = asked === undefined ? out : Math.max(out, asked * duty.open.length * WEAR);
      const most = pressureLaw(space, pump, partAt, liquid.density)?.(flow);
      if (most !== undefined && most * (1 + ROOM) + 500 < pressure) return -1;
      if (most !== undefined && pump?.kind === 'pump' && asked !== undefined && flow > 0) {
        const at = most * (1 + ROOM) + 500;
        const lets = open.reduce((sum, l) => sum + letsOut(space, l, duty, partAt, at), 0);
        const surface = liquid.density * G * highestSurface(space, duty);
        const jets = duty.agitate ? jetsAt(space, at + surface, liquid.density) : 0;
        if (lets + jets < flow) return -1;
      }
      if (pump?.kind === 'motor-pump' && open.length === 1) {
        const least = leastOutlet(space, open[0]!, duty, partAt, pump, liquid.density, STARVES);
        margin = Math.min(margin, 1 + ROOM - least / pump.maxPressure);
      }
    }
    return margin;
  };
  const limits: Limit[] = [
    {
      slots: [...outlets, 'pump', ...drive],
      margin: gives,
      why: 'flow: the pump does not give what the outlets ask, or more than it stands',
    },
    ...currentLimits(space, lines),
  ];
  // What is not known of a line takes nothing of the pressure: behind a gun and its tip alone a pump gives more.
  const inOrder = space.slots.map((s) => s.id).filter((id) => outlets.includes(id));
  return inOrder.slice(1).flatMap((_, i) =>
    limits.map((l): Limit => {
      const later = inOrder.slice(i + 2);
      return { ...l, slots: l.slots.filter((s) => !later.includes(s)) };
    }),
  );
}

/**
 * A 12 V pump works where its curve meets what its line takes. Whatever its suction takes besides lets it give less, at
 * a higher rise; so it draws at least the least current of its curve from the meeting with a suction that takes nothing on.
 * The promise reads the rise between the nodes on either side of the pump, of which the upper one stands higher.
 */
function currentLimits(space: SearchSpace, lines: readonly LayoutLine[]): Limit[] {
  const { brief, contexts, layout } = space;
  const supply = brief.carrier.supplyCurrent;
  if (supply === undefined) return [];
  const pumped = layout.lines.find((l) => l.run.includes('pump'));
  const nodeAt = (end: 'from' | 'to') => layout.nodes[pumped?.[end] ?? ''] ?? 0;
  const climb = Math.max(0, nodeAt('to') - nodeAt('from'));
  const drawn = (partAt: PartAt): number => {
    const pump = partAt('pump');
    if (pump?.kind !== 'motor-pump') return FREE;
    let most = 0;
    for (const duty of brief.duties) {
      const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
      if (open.length !== 1) continue;
      const { density } = contexts[0]!.liquids.get(duty.liquid)!;
      const least = leastOutlet(space, open[0]!, duty, partAt, pump, density, 0);
      const rise = least * (1 - ROOM) - density * G * climb;
      const beyond = pump.curve.filter((p) => p.pressure >= rise).map((p) => p.current);
      most = Math.max(most, Math.min(pumpCurrentAt(pump.curve, Math.max(0, rise)), ...beyond));
    }
    return (supply - most) / supply;
  };
  return [
    {
      slots: [...lines.flatMap((l) => l.run), 'pump'],
      margin: drawn,
      why: 'power: the pump draws more current than the vehicle gives',
    },
  ];
}

/** Pressure that a pump adds by the flow; undefined for a pump that holds none [Pa]. */
export function pressureLaw(
  space: SearchSpace,
  pump: ReturnType<PartAt>,
  partAt: PartAt,
  density: number,
): ((flow: number) => number) | undefined {
  if (pump?.kind === 'motor-pump') return motorPressure(pump);
  if (pump?.kind !== 'pump' || pump.law.action !== 'centrifugal') return undefined;
  const ratio = pumpSpeed(space, pump, partAt) / pump.law.ratedSpeed;
  if (ratio <= 0) return () => 0;
  const points = pump.law.curve.map((p): Point => [p.flow * ratio, p.head * ratio ** 2 * density * G]);
  return (flow) => along(points, flow);
}

/** Pressure of a 12 V pump by the flow [Pa]. */
function motorPressure(pump: PartOf<'motor-pump'>): (flow: number) => number {
  const points = pump.curve.map((p): Point => [p.flow, p.pressure]).sort((a, b) => a[0] - b[0]);
  return (flow) => along(points, flow);
}

/** A point of a curve: flow [m3/s], pressure [Pa]. */
type Point = readonly [number, number];

/** A curve through points; beyond its last one the network has it go on straight. */
function along(points: readonly Point[], flow: number): number {
  let k = 1;
  while (k < points.length - 1 && points[k]![0] < flow) k++;
  return between(...points[k - 1]!, ...points[k]!, flow);
}

/**
 * Least pressure behind a 12 V pump with the outlet open, above the surface of the tank: that at which the line takes what
 * the pump still gives whose suction takes some pressure. It takes the most where the pump starves.
 */
function leastOutlet(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
  pump: PartOf<'motor-pump'>,
  density: number,
  suction: number,
): number {
  const tip = partAt('tip');
  if (tip?.kind !== 'tip') return 0;
  const lift = density * G * ((duty.outletHeight ?? 1.5) - highestSurface(space, duty));
  const loss = lineLoss(space, line, duty, partAt);
  const atTip = (1e5 * (density / 1000)) / tip.flowAtOneBar ** 2;
  const takes = (flow: number) => atTip * flow ** 2 + loss(flow) + lift;
  const gives = motorPressure(pump);
  const left = (flow: number) => gives(flow) - suction - takes(flow);
  const high = Math.max(...pump.curve.map((p) => p.flow));
  return takes(left(high) > 0 ? high : fallsToZero(left, high, CLOSE * high));
}

/** Most that a line lets out with a pressure in front of it, above the surface of the tank [m3/s]. */
function letsOut(space: SearchSpace, line: LayoutLine, duty: Duty, partAt: PartAt, pressure: number): number {
  const last = partAt(line.run[line.run.length - 1]!);
  if (last?.kind !== 'hose') return Infinity;
  const { density } = space.contexts[0]!.liquids.get(duty.liquid)!;
  const lift = density * G * ((duty.outletHeight ?? 0) - highestSurface(space, duty));
  const loss = lineLoss(space, line, duty, partAt);
  let [low, high] = [0, (Math.PI / 4) * last.bore ** 2 * 30];
  for (let i = 0; i < 25; i++) {
    const flow = (low + high) / 2;
    if (loss(flow) + lift < pressure) low = flow;
    else high = flow;
  }
  return high;
}

/** Most that the jets in the tank take, whichever they are [m3/s]. */
function jetsAt({ slots }: SearchSpace, pressure: number, density: number): number {
  const root = Math.sqrt(Math.max(0, pressure) / 1e5 / (density / 1000));
  return ['agitator', 'eductor'].reduce((sum, id) => {
    const options = slots.find((s) => s.id === id)?.options ?? [];
    return (
      sum +
      root *
        Math.max(
          0,
          ...options.map((p) => (p?.kind === 'agitator' || p?.kind === 'eductor' ? p.flowAtOneBar : 0)),
        )
    );
  }, 0);
}

function between(x0: number, y0: number, x1: number, y1: number, x: number): number {
  return x1 === x0 ? Math.max(y0, y1) : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
