import type { ElementParameter, NetworkElement } from '../../hydraulics/index.ts';
import type { Duty } from '../brief.ts';
import { dutyNetwork } from '../duty-network.ts';
import type { DutyLiquid } from '../proof/liquid.ts';
import { PARAMETERS } from '../retune.ts';
import type { Rig } from '../rig-document.ts';
import type { Draws } from './draws.ts';
import type { UncertainInput } from './uncertain-inputs.ts';
import { withFactors } from './with-factors.ts';

/** A number of one element that moves with the draws: `nominal` times its factor in each draw. */
export interface DrawnParameter {
  readonly element: string;
  readonly parameter: ElementParameter;
  /** Holds with the strainers clean, dirty, or in either state. */
  readonly strainer: 'clean' | 'dirty' | 'either';
  readonly factors: Float64Array;
}

type Powers = Omit<DrawnParameter, 'factors'> & { readonly of: [input: number, power: number][] };

/** Step of a log factor from which the power of each input is read. */
const STEP = 0.02;

/**
 * Which numbers of a rig's network follow which inputs, and how: every number is a product of powers of inputs, found by
 * making the network anew with one input changed. Powers are the same in all duties of a rig.
 */
export function drawnParameters(rig: Rig, duty: Duty, liquid: DutyLiquid, draws: Draws): DrawnParameter[] {
  const base = dutyNetwork(rig, duty, liquid);
  const strainers = new Set(base.strainers.map((s) => s.element));
  const powers = new Map<string, Powers>();
  draws.inputs.forEach((input, k) => {
    const changed = withFactors(rig, [input], () => STEP);
    if (changed.items.get(input.item) === rig.items.get(input.item)) return;
    const made = dutyNetwork(changed, duty, liquid);
    const add = (place: number, ratio: number, parameter: ElementParameter, strainer: Powers['strainer']) => {
      if (ratio === 1) return;
      const element = made.model.elements[place]!.id;
      const key = `${element} ${parameter} ${strainer}`;
      let entry = powers.get(key);
      if (entry === undefined) powers.set(key, (entry = { element, parameter, strainer, of: [] }));
      entry.of.push([k, Math.log(ratio) / STEP]);
    };
    made.model.elements.forEach((element, e) => {
      for (const [parameter, ratio] of changes(base.model.elements[e]!, element, input))
        add(e, ratio, parameter, strainers.has(e) ? 'clean' : 'either');
    });
    made.strainers.forEach((s, i) => add(s.element, s.dirty / base.strainers[i]!.dirty, 'k', 'dirty'));
  });
  const known = new Map<string, Float64Array>();
  return [...powers.values()].map(({ of, ...rest }) => {
    const key = of.map(([k, power]) => `${k}^${power}`).join(' ');
    let factors = known.get(key);
    if (factors === undefined) known.set(key, (factors = product(of, draws)));
    return { ...rest, factors };
  });
}

function changes(
  before: NetworkElement,
  after: NetworkElement,
  input: UncertainInput,
): [ElementParameter, number][] {
  // A 12 V pump's curve is no number; more flow at equal pressure is what its speed stands for.
  if (after.law.kind === 'demand-pump') return input.kind === 'pump-flow' ? [['speed', Math.exp(STEP)]] : [];
  const out: [ElementParameter, number][] = [];
  const [then, now] = [before.law, after.law] as unknown as Record<string, number>[];
  for (const name of Object.keys(now!))
    if (PARAMETERS.has(name) && now![name] !== then![name])
      out.push([name as ElementParameter, now![name]! / then![name]!]);
  return out;
}

function product(of: readonly [number, number][], draws: Draws): Float64Array {
  const factors = new Float64Array(draws.count);
  for (const [k, power] of of) {
    const column = draws.columns[k]!;
    for (let i = 0; i < factors.length; i++) factors[i]! += power * column[i]!;
  }
  for (let i = 0; i < factors.length; i++) factors[i] = Math.exp(factors[i]!);
  return factors;
}
