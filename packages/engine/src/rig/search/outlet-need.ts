import type { Part, LayoutLine } from '../../catalogue/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import type { Duty } from '../brief.ts';
import { tipPressureFor } from '../design/tip-demand.ts';
import { valveK } from '../fitting-loss.ts';
import { liquidDepth } from '../tank-level.ts';
import { hoseLength } from './part-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

const BAR = 1e5;
const G = 9.80665;
/** Pressures at tips are found by halving to this share. */
const HALVED = 1.021;
/** Share of a loss that is counted on. */
const COUNTED = 0.96;

/** Flow of an outlet line and pressure in front of it, seen from the tank's surface. */
export interface OutletNeed {
  readonly flow: number;
  readonly pressure: number;
}

/**
 * Least flow and pressure with which a line does what a duty asks; `times` is by how much its flow must exceed what is
 * asked. Pressures count from the surface of the tank: what the pump must add at least.
 */
export function outletNeed(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
  times: number,
): OutletNeed {
  const context = space.contexts[space.contexts.length - 1]!;
  const liquid = context.liquids.get(duty.liquid)!;
  const asked = (askedFlow(duty, liquid) ?? 0) * times;
  const [gun, tip, boom, nozzle] = ['gun', 'tip', 'boom', 'nozzle'].map(partAt);
  const sg = liquid.density / 1000;
  const lift = liquid.density * G * ((duty.outletHeight ?? 0) - highestSurface(space, duty));
  if (line.run.includes('tip') && gun?.kind === 'gun' && tip?.kind === 'tip') {
    const least = tipPressureFor(context, duty, gun, tip);
    const forFlow = (asked / tip.flowAtOneBar) ** 2 * BAR * sg;
    const pressure = Math.max(least === undefined ? 0 : least / HALVED, forFlow);
    const flow = tip.flowAtOneBar * Math.sqrt(pressure / BAR / sg);
    return { flow, pressure: pressure + lift + lineLoss(space, line, duty, partAt, flow) };
  }
  if (boom?.kind === 'boom' && nozzle?.kind === 'nozzle' && line.run.includes('nozzle')) {
    const forFlow = (asked / boom.nozzles / nozzle.flowAtOneBar) ** 2 * BAR * sg;
    const pressure = Math.max(nozzle.minPressure, duty.pressure ?? 0, forFlow);
    const flow = boom.nozzles * nozzle.flowAtOneBar * Math.sqrt(pressure / BAR / sg);
    return { flow, pressure: pressure + lift + lineLoss(space, line, duty, partAt, flow) };
  }
  return { flow: asked, pressure: lift + lineLoss(space, line, duty, partAt, asked) };
}

/** Least that the parts of a line before its last take of the pressure at a flow [Pa]. */
export function lineLoss(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
  flow: number,
): number {
  const { density, viscosity } = space.contexts[0]!.liquids.get(duty.liquid)!;
  const loss = (part: Part | undefined, slot: string): number => {
    switch (part?.kind) {
      case 'gun':
      case 'reel':
        return (flow / part.flowAtOneBar) ** 2 * BAR * (density / 1000);
      case 'valve': {
        if (part.flowAtOneBar !== undefined) return (flow / part.flowAtOneBar) ** 2 * BAR * (density / 1000);
        if (!part.form.startsWith('ball')) return 0;
        return (valveK(part.form, part.bore) * density * (flow / ((Math.PI / 4) * part.bore ** 2)) ** 2) / 2;
      }
      case 'hose': {
        if (flow <= 0) return 0;
        const { bore, roughness } = part;
        try {
          return hoseLoss({ flow, bore, length: hoseLength(space, slot), roughness, density, viscosity })
            .pressureLoss;
        } catch (error) {
          if (error instanceof RangeError) return 0;
          throw error;
        }
      }
      default:
        return 0;
    }
  };
  return COUNTED * line.run.reduce((sum, slot) => sum + loss(partAt(slot), slot), 0);
}

const surfaces = new WeakMap<SearchSpace['slots'], Map<string, number>>();

/** Highest that the tank's surface stands above the ground in a duty, with any tank on any carrier [m]. */
export function highestSurface({ slots }: SearchSpace, duty: Duty): number {
  let known = surfaces.get(slots);
  if (known === undefined) surfaces.set(slots, (known = new Map<string, number>()));
  let height = known.get(duty.id);
  if (height === undefined) {
    const options = (id: string) => slots.find((s) => s.id === id)?.options ?? [];
    const deck = Math.max(0, ...options('carrier').map((c) => (c?.kind === 'carrier' ? c.deckHeight : 0)));
    height =
      deck +
      Math.max(0, ...options('tank').map((t) => (t?.kind === 'tank' ? liquidDepth(t, duty.tankLevel) : 0)));
    known.set(duty.id, height);
  }
  return height;
}
