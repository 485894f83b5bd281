import type { Part, LayoutLine } from '../../catalogue/index.ts';
import type { Duty } from '../brief.ts';
import { elbowK, teeBranchK, teeRunK } from '../fitting-loss.ts';
import { meanCoilDiameter } from '../reel-drum.ts';
import { hoseLength } from './part-rig.ts';
import { bendTerms, factorTerms, hoseLaw, OFF, sumOfTerms, valveTerms, type Terms } from './part-terms.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

const FOOT = 0.3048;
/** A section of a boom is fed at its middle: as the network has it. */
const ALONG_SECTION = 0.37;
const BOOM_ROUGHNESS = 1.5e-6;

/**
 * What a whole line takes of the pressure by the flow, its tip or nozzles included, its strainer as dirty as may be [Pa]:
 * the laws of the network, within a hair (`OFF`). Without end where that is not known.
 */
export function lineLaw(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
): (flow: number) => number {
  try {
    return lawOf(space, line, duty, partAt);
  } catch (error) {
    if (error instanceof RangeError) return unknown;
    throw error;
  }
}

const unknown = (flow: number): number => (flow <= 0 ? 0 : Infinity);

function lawOf(space: SearchSpace, line: LayoutLine, duty: Duty, partAt: PartAt): (flow: number) => number {
  const { density, viscosity, powerLaw } = space.contexts[0]!.liquids.get(duty.liquid)!;
  const parts = line.run.flatMap((slot) => {
    const part = partAt(slot);
    return part === undefined ? [] : [{ slot, part }];
  });
  const bore = boreOf(parts.map((p) => p.part));
  if (powerLaw !== undefined || bore === undefined) return unknown;
  const liquid = { density, viscosity };
  const { elbows = 0, teesRun = 0, teesBranch = 0 } = line;
  const k = elbows * elbowK(bore) + teesRun * teeRunK(bore) + teesBranch * teeBranchK(bore);
  const terms: Terms[] = [bendTerms(k, bore, liquid)];
  const rubs: ((flow: number) => number)[] = [];
  const [reel, boom] = [partAt('reel'), partAt('boom')];
  for (const { slot, part } of parts)
    switch (part.kind) {
      case 'gun':
      case 'reel':
      case 'tip':
        terms.push(factorTerms(part.flowAtOneBar, liquid));
        break;
      case 'strainer':
        terms.push(factorTerms(part.flowAtOneBar, liquid, part.dirtyFactor));
        break;
      case 'nozzle':
        if (boom?.kind !== 'boom') return unknown;
        terms.push(factorTerms(boom.nozzles * part.flowAtOneBar, liquid));
        break;
      case 'valve':
        terms.push(valveTerms(part, liquid));
        break;
      case 'boom': {
        const { sections, width } = part;
        const length = (ALONG_SECTION * width) / (2 * sections);
        const section = hoseLaw(part.bore, length, BOOM_ROUGHNESS, liquid);
        rubs.push((flow) => section(flow / (2 * sections)));
        break;
      }
      case 'hose': {
        const length = Math.ceil(hoseLength(space, slot) / FOOT - 1e-6) * FOOT;
        const onReel = reel?.kind === 'reel' && line.run.includes('reel') ? reel : undefined;
        const wound =
          onReel === undefined ? 0 : Math.max(0, length - Math.min(duty.hoseOut ?? Infinity, length));
        const coil = wound > 0 ? meanCoilDiameter(onReel!, part, wound) : undefined;
        rubs.push(hoseLaw(part.bore, length, part.roughness, liquid, wound, coil));
        break;
      }
      default:
        return unknown;
    }
  const { linear, square } = sumOfTerms(terms);
  return (flow) => {
    if (flow <= 0) return 0;
    let takes = (square * flow + linear) * flow;
    try {
      for (const rub of rubs) takes += rub(flow);
    } catch (error) {
      if (error instanceof RangeError) return Infinity;
      throw error;
    }
    return takes;
  };
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
  let takes: ((flow: number) => number) | undefined;
  return (pressure) => {
    if (pressure <= 1) return 0;
    const step = Math.floor(Math.log(pressure) / Math.log(STEP));
    const key = `${which} ${step}`;
    const before = flows.get(key);
    if (before !== undefined) return before;
    takes ??= lineLaw(space, line, duty, partAt);
    let [low, high] = [0, MOST_FLOW];
    for (let i = 0; i < HALVINGS; i++) {
      const flow = (low + high) / 2;
      if ((1 + OFF) * takes(flow) <= STEP ** step) low = flow;
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
