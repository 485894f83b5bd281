import type { Part, PartOf } from '../../catalogue/index.ts';
import { tiedownNumber, tiedownsForWorkingLoad, webbingWorkingLoad } from '../../physics/index.ts';
import { wholeFeet } from '../bill/index.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { rinseWaterAboard, standingOf } from '../placement/index.ts';
import { cautionsOf } from '../proof/cautions.ts';
import { cableAndFuse, DETOUR, DROP, SYSTEM_VOLTAGE, TO_VEHICLE } from '../proof/electrics-cable.ts';
import { pumpCurrentAt } from '../pump-current.ts';
import { outletNeed } from './outlet-need.ts';
import { partRig } from './part-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Small things of one sort that a rig needs at least. */
export interface Held {
  readonly count: number;
  readonly fits: (part: PartOf<'hardware'>) => boolean;
}

/** Bolts that hold a skid on its vehicle, and the thinnest of them. */
const SKID_BOLTS = 4;

/** Least way of a wire from the rig's own battery: around a corner [m]. */
export const LEAST_WAY = DETOUR;

/** Room that one strap takes along a tank, as the promise on straps has it [m]. */
const STRAP_ROOM = 0.3;

/** Straps that a tank full of the heaviest liquid asks, and how many there is room for: the tank alone decides both. */
export function strapsOver(
  { brief, contexts }: SearchSpace,
  tank: PartOf<'tank'>,
): { straps: number; room: number } {
  const density = Math.max(...brief.duties.map((d) => contexts[0]!.liquids.get(d.liquid)!.density));
  const mass = tank.volume * density + tank.mass + rinseWaterAboard(brief);
  const straps = Math.max(
    tiedownsForWorkingLoad(mass, webbingWorkingLoad('2'), 'over').number,
    tiedownNumber(tank.size.length, mass, false),
  );
  return { straps, room: Math.floor(tank.size.length / STRAP_ROOM) };
}

/** Wire, terminals and fuse of an electric start or rewind over a way [m], from a battery or, without, from the vehicle. */
export function wiredBy(part: Part | undefined, way: number, battery?: Part): readonly Held[] {
  const voltage = battery?.kind === 'battery' ? battery.voltage : SYSTEM_VOLTAGE;
  if (part?.kind === 'reel' && part.rewind === 'electric')
    return wire('reel', part.rewindCurrent, voltage, way);
  if (part?.kind === 'engine' && part.start === 'electric')
    return wire('starter', part.startingCurrent, voltage, way);
  return [];
}

/** The same of a 12 V pump behind given outlets. */
export function pumpWiredBy(
  space: SearchSpace,
  partAt: PartAt,
  way: number,
  battery?: Part,
): readonly Held[] {
  const pump = partAt('pump');
  if (pump?.kind !== 'motor-pump') return [];
  const line = usedOutlets(space.layout, space.brief)[0];
  const pressures = space.brief.duties.map((d) =>
    line === undefined ? 0 : outletNeed(space, line, d, partAt, 1).pressure,
  );
  const current = pumpCurrentAt(pump.curve, Math.max(0, ...pressures));
  return wire('pump', current, battery?.kind === 'battery' ? battery.voltage : pump.voltage, way);
}

/** The same behind any outlets: of some thickness, and with some fuse. */
export function pumpWiredByAny(space: SearchSpace, pump: Part | undefined): readonly Held[] {
  if (pump?.kind !== 'motor-pump') return [];
  const count = wholeFeet(2 * leastPumpWay(space, pump));
  return [
    { count, fits: ({ purpose }) => purpose.form === 'wire' },
    { count: 4, fits: ({ purpose }) => purpose.form === 'terminal' },
    { count: 1, fits: ({ purpose }) => purpose.form === 'fuse' },
  ];
}

/** Least way of the wire of a 12 V pump wherever the parts stand: to the rig's battery where it may have one, else to the vehicle [m]. */
export function leastPumpWay(space: SearchSpace, pump: Part | undefined): number {
  const battery = space.slots.some((s) => s.id === 'battery' && s.options.some((p) => p !== undefined));
  return battery ? LEAST_WAY : TO_VEHICLE + (pump?.size.length ?? 0) / 2;
}

function wire(use: keyof typeof DROP, current: number, voltage: number, way: number): Held[] {
  const steady = use === 'starter' ? 0 : current;
  const chosen = current > 0 ? cableAndFuse(current, steady, way, DROP[use] * voltage) : undefined;
  if (chosen === undefined) return [];
  const { cable, fuse } = chosen;
  const held: Held[] = [
    { count: wholeFeet(2 * way), fits: ({ purpose: p }) => p.form === 'wire' && p.gauge === cable.gauge },
    { count: 4, fits: ({ purpose: p }) => p.form === 'terminal' && p.gauge === cable.gauge },
  ];
  if (fuse !== null)
    held.push({ count: 1, fits: ({ purpose: p }) => p.form === 'fuse' && p.rating === fuse });
  return held;
}

/** Labels for the cautions that some parts bring up with a tank: more parts, mass or pressure only bring up more. */
export function labelsOf(
  space: SearchSpace,
  partAt: PartAt,
  tank: PartOf<'tank'>,
  pressure: number,
  slots: readonly string[],
): Held {
  const { brief, contexts } = space;
  const liquids = brief.duties.map((d) => contexts[0]!.liquids.get(d.liquid)!);
  const state = { status: 'converged' as const, highestPressure: Math.max(0, pressure) };
  const labels = cautionsOf({
    rig: partRig(space, partAt, slots, []),
    tank,
    bill: { dryMass: tank.mass },
    duties: liquids.map((liquid) => ({ liquid, open: state, dirty: state, shut: state })),
  }).length;
  return { count: labels, fits: ({ purpose }) => purpose.form === 'label' };
}

/** Straps over a tank: their number follows from it and its heaviest liquid alone. */
export function strappedBy(space: SearchSpace, tank: PartOf<'tank'>): Held {
  const one = webbingWorkingLoad('2');
  return {
    count: strapsOver(space, tank).straps,
    fits: ({ purpose: p }) => p.form === 'strap' && p.workingLoad >= one * (1 - 1e-6),
  };
}

/** Bolts of a skid, at least the thinnest. */
export function boltedBy({ brief }: SearchSpace, carrier: PartOf<'carrier'>): readonly Held[] {
  return standingOf(carrier) === 'bed' && (brief.carrier.heldBy ?? 'bolts') === 'bolts'
    ? [{ count: SKID_BOLTS, fits: ({ purpose: p }) => p.form === 'bolt' && p.grade === '5' }]
    : [];
}
