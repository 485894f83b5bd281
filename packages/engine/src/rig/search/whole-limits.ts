import { expectedResidual, pumpDemand, rinsePlan } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { drivenWidth } from '../application.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { leastDeckLength } from '../placement/index.ts';
import { swathOf } from '../proof/sprayer.ts';
import { STARTS } from '../start-values.data.ts';
import { strapsOver } from './held.ts';
import { lineNeeds } from './line-needs.ts';
import type { Limit } from './limit.ts';
import { drivePower, TANK_HEAD } from './main-pressure.ts';
import { hoseLength, timesOf } from './part-rig.ts';
import { curveLimits } from './pump-limits.ts';
import { pumpFlow } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';

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
    ...widthLimits(space),
  ];
}

/**
 * With the outlets shut all that a displacement pump gives goes through the regulator, at no less than what that is set
 * to; engine, gear or PTO must carry it.
 */
function powerLimits(space: SearchSpace): Limit[] {
  const { brief, layout } = space;
  const has = (id: string) => layout.slots.some((s) => s.id === id);
  if (!has('regulator') || !has('pump')) return [];
  const outlets = usedOutlets(layout, brief).flatMap((l) => l.run);
  const shaft = (partAt: PartAt): number | undefined => {
    const pump = partAt('pump');
    const needs = lineNeeds(space, partAt);
    if (pump?.kind !== 'pump' || pump.law.action !== 'displacement' || needs === undefined) return undefined;
    const flow = Math.min(...pumpFlow(space, partAt).least);
    return (Math.max(0, flow) * Math.max(0, needs.set * 0.999 - TANK_HEAD)) / pump.law.efficiency;
  };
  const most = (has: number, needed: number) => (has - needed) / has + HAIR;
  const reads = (partAt: PartAt) => String(lineNeeds(space, partAt)?.set);
  const limits: Limit[] = [
    {
      slots: [...outlets, 'pump'],
      reads,
      margin: (partAt) => {
        const [pump, needs] = [partAt('pump'), lineNeeds(space, partAt)];
        return pump?.kind !== 'pump' || needs === undefined
          ? FREE
          : most(pump.maxPressure, needs.set * 0.999);
      },
      why: 'rating: the pump does not stand the pressure that the outlets ask',
    },
    ...[['reduction', 'engine'], ['pto']].map((drive): Limit => ({
      slots: [...outlets, 'pump', ...drive],
      reads,
      margin: (partAt) => {
        const needed = shaft(partAt);
        return needed === undefined ? FREE : most(drivePower(space, partAt), needed);
      },
      why: 'power: the drive does not carry what the pump takes',
    })),
  ];
  return limits;
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

/** The promise on the width that is driven is this very figure where one line of nozzles is open. */
function widthLimits({ brief, layout }: SearchSpace): Limit[] {
  return brief.duties.flatMap((duty): Limit[] => {
    const width = drivenWidth(duty);
    const open = usedOutlets(layout, brief).filter(
      (l) => (duty.open as readonly string[]).includes(l.opens) && l.run.includes('nozzle'),
    );
    const told = duty.application !== undefined || duty.lane !== undefined;
    if (!told || width === undefined || open.length !== 1) return [];
    return [
      {
        slots: open[0]!.run.filter((id) => id === 'boom' || id === 'nozzle'),
        margin: (partAt) => {
          const [boom, nozzle] = [partAt('boom'), partAt('nozzle')];
          if (nozzle?.kind !== 'nozzle') return FREE;
          const has = swathOf(nozzle, boom?.kind === 'boom' ? boom : undefined, timesOf(nozzle, partAt));
          return has === undefined ? FREE : (has - width) / width + 1e-9;
        },
        why: 'pattern: it does not cover the width that is driven',
      },
    ];
  });
}
