import type { Part, LayoutLine } from '../../catalogue/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import type { Duty } from '../brief.ts';
import { elbowK, teeBranchK, teeRunK, valveK } from '../fitting-loss.ts';
import { meanCoilDiameter } from '../reel-drum.ts';
import { hoseLength } from './part-rig.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

const BAR = 1e5;
const FOOT = 0.3048;
/** For what the laws of the network have besides. */
const MORE = 1.005;
/** Laminar coefficients of bends and of valves, as the network has them. */
const LAMINAR = { bends: 800, valve: 500 } as const;
/** A section of a boom is fed at its middle: as the network has it. */
const ALONG_SECTION = 0.37;
const BOOM_ROUGHNESS = 1.5e-6;

/**
 * Most that a whole line takes of the pressure at a flow, its tip or nozzles included, its strainer as dirty as may be [Pa];
 * without end where that is not known. The other side of `lineLoss`, by the same laws as the network.
 */
export function lineTakes(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
  flow: number,
): number {
  const liquid = space.contexts[0]!.liquids.get(duty.liquid)!;
  const { density, viscosity } = liquid;
  if (flow <= 0) return 0;
  if (liquid.powerLaw !== undefined) return Infinity;
  const parts = line.run.flatMap((slot) => {
    const part = partAt(slot);
    return part === undefined ? [] : [{ slot, part }];
  });
  const byFactor = (factor: number) => (flow / factor) ** 2 * BAR * (density / 1000);
  const byK = (k: number, bore: number, laminar: number) => {
    const speed = flow / ((Math.PI / 4) * bore ** 2);
    return (k * density * speed ** 2) / 2 + (laminar * viscosity * speed) / (2 * bore);
  };
  const bore = boreOf(parts.map((p) => p.part));
  if (bore === undefined) return Infinity;
  const { elbows = 0, teesRun = 0, teesBranch = 0 } = line;
  const k = elbows * elbowK(bore) + teesRun * teeRunK(bore) + teesBranch * teeBranchK(bore);
  const reel = partAt('reel');
  const boom = partAt('boom');
  const loss = ({ slot, part }: (typeof parts)[number]): number => {
    switch (part.kind) {
      case 'gun':
      case 'reel':
      case 'tip':
        return byFactor(part.flowAtOneBar);
      case 'strainer':
        return byFactor(part.flowAtOneBar) * part.dirtyFactor;
      case 'nozzle':
        return boom?.kind === 'boom' ? byFactor(boom.nozzles * part.flowAtOneBar) : Infinity;
      case 'valve':
        return part.flowAtOneBar !== undefined
          ? byFactor(part.flowAtOneBar)
          : byK(valveK(part.form, part.bore), part.bore, LAMINAR.valve);
      case 'boom': {
        const { sections, width } = part;
        return hoseLoss({
          flow: flow / (2 * sections),
          bore: part.bore,
          length: (ALONG_SECTION * width) / (2 * sections),
          roughness: BOOM_ROUGHNESS,
          density,
          viscosity,
        }).pressureLoss;
      }
      case 'hose': {
        const length = Math.ceil(hoseLength(space, slot) / FOOT - 1e-6) * FOOT;
        const wound =
          reel?.kind === 'reel' && line.run.includes('reel')
            ? Math.max(0, length - Math.min(duty.hoseOut ?? Infinity, length))
            : 0;
        return hoseLoss({
          flow,
          bore: part.bore,
          length,
          roughness: part.roughness,
          density,
          viscosity,
          ...(wound > 0 && reel?.kind === 'reel'
            ? { woundLength: wound, coilDiameter: meanCoilDiameter(reel, part, wound) }
            : {}),
        }).pressureLoss;
      }
      default:
        return Infinity;
    }
  };
  try {
    const all = byK(k, bore, k > 0 ? LAMINAR.bends : 0);
    return MORE * parts.reduce((sum, p) => sum + loss(p), all);
  } catch (error) {
    if (error instanceof RangeError) return Infinity;
    throw error;
  }
}

/** The flow of a line is found to a part in so many, of no more than so much [m3/s]. */
const HALVINGS = 24;
const MOST_FLOW = 0.05;

/** Pressures are told apart by this much of them: the same lines are asked for many pumps and regulators. */
const STEP = 1.002;

const known = new WeakMap<SearchSpace['contexts'], Map<string, number>>();

/**
 * Least that a line lets out in a duty by the pressure in front of it, over that of the height of its outlet [m3/s]. What
 * was asked before is remembered, pressures rounded down.
 */
export function leastOut(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
): (pressure: number) => number {
  let flows = known.get(space.contexts);
  if (flows === undefined) known.set(space.contexts, (flows = new Map<string, number>()));
  const which = `${space.layout.id} ${duty.id} ${line.run.map((slot) => partAt(slot)?.id).join(' ')}`;
  return (pressure) => {
    if (pressure <= 1) return 0;
    const step = Math.floor(Math.log(pressure) / Math.log(STEP));
    const key = `${which} ${step}`;
    const before = flows.get(key);
    if (before !== undefined) return before;
    let [low, high] = [0, MOST_FLOW];
    for (let i = 0; i < HALVINGS; i++) {
      const flow = (low + high) / 2;
      if (lineTakes(space, line, duty, partAt, flow) <= STEP ** step) low = flow;
      else high = flow;
    }
    return remember(flows, key, low);
  };
}

/** Bore at which bends and branches are reckoned: that of the hose, else of the valve. */
function boreOf(parts: readonly Part[]): number | undefined {
  const hose = parts.find((p) => p.kind === 'hose');
  if (hose?.kind === 'hose') return hose.bore;
  const valve = parts.find((p) => p.kind === 'valve');
  return valve?.kind === 'valve' ? valve.bore : undefined;
}
