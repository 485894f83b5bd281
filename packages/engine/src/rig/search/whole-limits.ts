import type { Part } from '../../catalogue/index.ts';
import { expectedResidual, pumpDemand, rinsePlan } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { leastDeckLength } from '../placement/index.ts';
import { STARTS } from '../start-values.data.ts';
import { strapsOver } from './held.ts';
import { lineNeeds } from './line-needs.ts';
import type { Limit } from './limit.ts';
import { drivePower, TANK_HEAD } from './main-pressure.ts';
import { hoseLength } from './part-rig.ts';
import { curveLimits } from './pump-limits.ts';
import { pumpFlow } from './pump-flow.ts';
import { rateLimits } from './rate-limits.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { trimGroups } from './trim-groups.ts';
import { borneSpare } from './weight-check.ts';

const FREE = Infinity;
/** A hair for what the laws of the network have besides. */
const HAIR = 1e-4;

/** Conditions on several parts at once: what a pump takes from its drive, the room on a deck, the water for rinsing. */
export function wholeLimits(space: SearchSpace): Limit[] {
  return [
    ...powerLimits(space),
    ...reserveLimits(space),
    ...deckLimits(space),
    ...strapLimits(space),
    ...rinseLimits(space),
    ...curveLimits(space),
    ...rateLimits(space),
    ...weightLimits(space),
  ];
}

/** Most spare of a pump's rating and of its drive's power behind outlets that are set to a pressure at least [Pa]. */
export function pressedSpare(space: SearchSpace, partAt: PartAt, set: number, driven: boolean): number {
  if (!isRegulated(space)) return FREE;
  const rating = ratingSpare(partAt('pump'), set);
  return driven ? Math.min(rating, powerSpare(space, partAt, set)) : rating;
}

function isRegulated({ layout }: SearchSpace): boolean {
  return ['regulator', 'pump'].every((id) => layout.slots.some((s) => s.id === id));
}

function ratingSpare(pump: Part | undefined, set: number): number {
  return pump?.kind !== 'pump' ? FREE : shareLeft(pump.maxPressure, set * 0.999);
}

/**
 * With the outlets shut all that a displacement pump gives goes through the regulator, at no less than what that is set
 * to; engine, gear or PTO must carry it.
 */
function powerSpare(space: SearchSpace, partAt: PartAt, set: number): number {
  const pump = partAt('pump');
  if (pump?.kind !== 'pump' || pump.law.action !== 'displacement') return FREE;
  const flow = Math.min(...pumpFlow(space, partAt).least);
  const needed = (Math.max(0, flow) * Math.max(0, set * 0.999 - TANK_HEAD)) / pump.law.efficiency;
  return shareLeft(drivePower(space, partAt), needed);
}

function shareLeft(has: number, needed: number): number {
  return (has - needed) / has + HAIR;
}

function powerLimits(space: SearchSpace): Limit[] {
  if (!isRegulated(space)) return [];
  const outlets = usedOutlets(space.layout, space.brief).flatMap((l) => l.run);
  const reads = (partAt: PartAt) => String(lineNeeds(space, partAt)?.set);
  const set = (partAt: PartAt) => lineNeeds(space, partAt)?.set;
  return [
    {
      slots: [...outlets, 'pump'],
      reads,
      margin: (partAt) => {
        const asked = set(partAt);
        return asked === undefined ? FREE : ratingSpare(partAt('pump'), asked);
      },
      why: 'rating: the pump does not stand the pressure that the outlets ask',
    },
    ...[['reduction', 'engine'], ['pto']].map((drive): Limit => ({
      slots: [...outlets, 'pump', ...drive],
      reads,
      margin: (partAt) => {
        const asked = set(partAt);
        return asked === undefined ? FREE : powerSpare(space, partAt, asked);
      },
      why: 'power: the drive does not carry what the pump takes',
    })),
  ];
}

/** What the outlets must get and what stirs the tank, with a fifth more, is no more than the pump gives. */
function reserveLimits(space: SearchSpace): Limit[] {
  const { brief, contexts, layout } = space;
  const asked = brief.duties.flatMap((duty) => {
    const liquid = contexts[0]!.liquids.get(duty.liquid)!;
    const flow = askedFlow(duty, liquid);
    return flow === undefined
      ? []
      : [{ flow: flow * duty.open.length, share: duty.agitate ? liquid.agitationShare : 0 }];
  });
  const drive = layout.slots.some((s) => s.id === 'pto') ? ['pto'] : ['reduction', 'engine'];
  if (asked.length === 0 || !layout.slots.some((s) => drive.includes(s.id))) return [];
  return [
    {
      slots: ['tank', 'pump', ...drive],
      reads: (partAt) => String(pumpFlow(space, partAt).most),
      margin: (partAt) => {
        const tank = partAt('tank');
        const { most } = pumpFlow(space, partAt);
        if (tank?.kind !== 'tank' || !Number.isFinite(most)) return FREE;
        return Math.min(
          ...asked.map(({ flow, share }) => {
            const demand = pumpDemand(Math.min(1, flow), Math.min(1, share * tank.volume));
            return demand > 0 ? (most - demand) / demand + HAIR : FREE;
          }),
        );
      },
      why: 'flow: the pump has nothing to spare for wear',
    },
  ];
}

/** What stands on a deck takes at least so much of its length, in whatever order. */
function deckLimits(space: SearchSpace): Limit[] {
  const standing = space.slots
    .map((s) => s.id)
    .filter((id) => ['tank', 'engine', 'reduction', 'pump', 'reel'].includes(id));
  const inLayout = space.layout.slots.map((s) => s.id).filter((id) => standing.includes(id));
  return [
    {
      slots: ['carrier', ...standing],
      margin: (partAt) => {
        const carrier = partAt('carrier');
        if (carrier?.kind !== 'carrier') return FREE;
        const [engine, reel] = [partAt('engine'), partAt('reel')];
        const battery =
          (engine?.kind === 'engine' && engine.start === 'electric') ||
          (reel?.kind === 'reel' && reel.rewind === 'electric');
        const sizes = (...ids: readonly string[]) =>
          inLayout.flatMap((id) => (ids.includes(id) ? (partAt(id)?.size ?? []) : []));
        const load = {
          tanks: sizes('tank'),
          machinery: sizes('engine', 'reduction', 'pump'),
          reels: sizes('reel'),
        };
        const room = carrier.deckLength * 1.05;
        const length = leastDeckLength(carrier, load, battery);
        return (room - Math.max(carrier.deckLength, length)) / room + 1e-9;
      },
      why: 'structure: what stands on the deck is longer than it',
    },
  ];
}

/**
 * Axles, wheels and tongue with all that stands on a deck, whatever fills the groups; before that with any outlet lines at
 * all, and with any gun and tip, which weigh little: thousands of lines are refused with the body that does not carry one.
 */
function weightLimits(space: SearchSpace): Limit[] {
  const { brief, contexts, layout } = space;
  const density = Math.max(...brief.duties.map((d) => contexts[0]!.liquids.get(d.liquid)!.density));
  const all = space.slots.map((s) => s.id);
  const grouped = trimGroups(space).flatMap((g) => g.slots);
  const lines = layout.lines.filter((l) => l.to === 'air').flatMap((l) => l.run);
  const little = lines.filter((id) => ['gun', 'tip'].includes(id));
  return [lines, little, []].map((open): Limit => {
    const left = [...grouped, ...open];
    const slots = all.filter((id) => !left.includes(id));
    const known = new Map<string, number>();
    return {
      slots,
      margin: (partAt) => {
        if (open.length === 0) return borneSpare(space, partAt, density, grouped);
        const key = slots.map((id) => partAt(id)?.id ?? '-').join(' ');
        return known.get(key) ?? remember(known, key, borneSpare(space, partAt, density, left));
      },
      why: 'weight: axles, wheels or tongue are not loaded as they may be',
      slow: true,
    };
  });
}

/** Straps over the tank: more than there is room for, or just as many. */
function strapLimits(space: SearchSpace): Limit[] {
  return [
    {
      slots: ['tank'],
      margin: (partAt) => {
        const tank = partAt('tank');
        if (tank?.kind !== 'tank') return FREE;
        const { straps, room } = strapsOver(space, tank);
        return (room - straps) / straps + 1e-9;
      },
      why: 'structure: no room over the tank for the straps that it asks',
    },
  ];
}

/** The water that rides along thins at least what stays in the tank and in the hoses to the outlets. */
function rinseLimits({ brief, layout, ...space }: SearchSpace): Limit[] {
  const { rinse } = brief;
  const carried = rinse?.water;
  if (rinse === undefined || rinse.where === 'yard' || carried === undefined) return [];
  const hoses = layout.lines
    .filter((l) => l.to === 'air')
    .flatMap((l) => l.run.filter((id) => layout.slots.some((s) => s.id === id && s.kinds.includes('hose'))));
  return [
    {
      slots: ['tank', ...hoses],
      margin: (partAt) => {
        const tank = partAt('tank');
        if (tank?.kind !== 'tank') return FREE;
        const stays = hoses.reduce((sum, id) => {
          const part = partAt(id);
          const length = Math.ceil(hoseLength({ brief, layout, ...space }, id) / 0.3048 - 1e-6) * 0.3048;
          return part?.kind === 'hose' ? sum + (Math.PI / 4) * part.bore ** 2 * length : sum;
        }, 0);
        try {
          const { water } = rinsePlan({
            residual: expectedResidual(tank.volume).most + stays,
            hose: stays,
            hoseChanges: STARTS.hoseChanges.value,
            dilution: rinse.dilution ?? STARTS.dilution.value,
            rinses: rinse.rinses ?? 3,
            carried,
            flow: 1e-4,
          });
          return (carried - water) / water + HAIR;
        } catch (error) {
          if (error instanceof RangeError) return FREE;
          throw error;
        }
      },
      why: 'rinse: the water that rides along does not thin what stays in the rig',
    },
  ];
}
