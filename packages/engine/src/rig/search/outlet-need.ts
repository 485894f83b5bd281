import type { Part, LayoutLine } from '../../catalogue/index.ts';
import { askedFlow } from '../asked-flow.ts';
import type { Duty } from '../brief.ts';
import { tipPressureFor } from '../design/tip-demand.ts';
import { valveK } from '../fitting-loss.ts';
import { liquidDepth } from '../tank-level.ts';
import { hoseLength } from './part-rig.ts';
import { countedHoseLaw } from './part-terms.ts';
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
    const pressure = Math.max(least === undefined ? 0 : least / HALVED, duty.pressure ?? 0, forFlow);
    const flow = tip.flowAtOneBar * Math.sqrt(pressure / BAR / sg);
    return { flow, pressure: pressure + lift + lineLoss(space, line, duty, partAt)(flow) };
  }
  if (boom?.kind === 'boom' && nozzle?.kind === 'nozzle' && line.run.includes('nozzle')) {
    const forFlow = (asked / boom.nozzles / nozzle.flowAtOneBar) ** 2 * BAR * sg;
    const pressure = Math.max(nozzle.minPressure, duty.pressure ?? 0, forFlow);
    const flow = boom.nozzles * nozzle.flowAtOneBar * Math.sqrt(pressure / BAR / sg);
    return { flow, pressure: pressure + lift + lineLoss(space, line, duty, partAt)(flow) };
  }
  return { flow: asked, pressure: lift + lineLoss(space, line, duty, partAt)(asked) };
}

/** A law laid down for the parts that a line last had: a search asks for the same line with many pumps. */
interface Laid {
  parts: readonly (Part | undefined)[];
  law: (flow: number) => number;
}

const laid = new WeakMap<SearchSpace['contexts'], Map<string, Laid>>();

/** Least that the parts of a line before its last take of the pressure by the flow [Pa]. */
export function lineLoss(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
): (flow: number) => number {
  let lines = laid.get(space.contexts);
  if (lines === undefined) laid.set(space.contexts, (lines = new Map<string, Laid>()));
  const key = `${space.layout.id} ${line.id} ${duty.id}`;
  const known = lines.get(key);
  if (known !== undefined && line.run.every((slot, i) => partAt(slot) === known.parts[i])) return known.law;
  const law = lossOf(space, line, duty, partAt);
  lines.set(key, { parts: line.run.map(partAt), law });
  return law;
}

function lossOf(
  space: SearchSpace,
  { run }: LayoutLine,
  duty: Duty,
  partAt: PartAt,
): (flow: number) => number {
  const liquid = space.contexts[0]!.liquids.get(duty.liquid)!;
  const { density } = liquid;
  let square = 0;
  const hoses: ((flow: number) => number)[] = [];
  for (const slot of run) {
    const part = partAt(slot);
    const known = part?.kind === 'gun' || part?.kind === 'reel' || part?.kind === 'valve' ? part : undefined;
    if (known?.flowAtOneBar !== undefined) square += (BAR * (density / 1000)) / known.flowAtOneBar ** 2;
    else if (known?.kind === 'valve' && known.form.startsWith('ball'))
      square += (valveK(known.form, known.bore) * density) / 2 / ((Math.PI / 4) * known.bore ** 2) ** 2;
    if (part?.kind !== 'hose') continue;
    hoses.push(countedHoseLaw(part.bore, hoseLength(space, slot), part.roughness, liquid));
  }
  return (flow) => {
    let loss = square * flow ** 2;
    if (flow > 0) for (const hose of hoses) loss += hose(flow);
    return COUNTED * loss;
  };
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
