import type { YardOptions } from '../yard-model.ts';
import { dividedVariance, evidenceOf, modelMaker, type BuiltRig, type Near } from './evidence.ts';
import { cellOf, type Cell } from './cell.ts';
import type { CopyState } from './explained.ts';
import { settle } from './settle.ts';

/** What readings say of one input of all copies of one part, as logarithms of the factor on its nominal value [-]. */
export interface LearnedFactor {
  /** `kind:part`. */
  readonly key: string;
  /** "Plunger pump: flow". */
  readonly name: string;
  readonly mean: number;
  readonly deviation: number;
  /** Of one copy around the part's mean: a tolerance, not learned. */
  readonly copyDeviation: number;
  /** What the tolerance says before any reading. */
  readonly before: { readonly mean: number; readonly deviation: number };
  /** Built machines whose readings depend on it. */
  readonly rigs: number;
}

/** What readings say of one input of one built machine. */
interface LearnedInput {
  readonly id: string;
  readonly mean: number;
  readonly deviation: number;
  /** Key of the factor that it shares with other copies; absent where none of its readings depends on it. */
  readonly factor?: string;
}

/** What readings say of one built machine. */
export interface LearnedCopy {
  readonly rig: string;
  readonly serial?: string;
  /** When it was tested, as written down, the first first. */
  readonly taken: readonly string[];
  readonly inputs: readonly LearnedInput[];
  /** Probability that a reading was taken as its instrument takes it; the rest, that something went wrong [-]. */
  readonly readings: readonly { readonly id: string; readonly sound: number }[];
  readonly unused: readonly { readonly id: string; readonly why: string }[];
}

/** How two factors are off together. */
interface SharedDoubt {
  readonly a: string;
  readonly b: string;
  readonly covariance: number;
}

export interface Learned {
  readonly factors: readonly LearnedFactor[];
  /** Of the masses: a scale knows their sum far better than each. */
  readonly together: readonly SharedDoubt[];
  readonly copies: readonly LearnedCopy[];
}

/**
 * Learns from the tests of built machines how far each part is off its leaflet, and each copy off its part.
 *
 * All readings at once, from the tolerances as they stand, so the order in which they came changes nothing. A reading
 * is its value by the real solver, straight near what is learned, and the instrument's scatter. A few readings are taken
 * to be wrong altogether and a few copies to be unlike their part: what fits a machine best is judged by all other machines,
 * every explanation counts by its probability.
 *
 * @source Bayesian linear regression with random effects and the contaminated normal of Tukey (1960), both textbook
 */
export function learnFrom(machines: readonly BuiltRig[], options: YardOptions = {}): Learned {
  const modelsOf = modelMaker(options);
  const evidence = [...machines]
    .sort(byName)
    .flatMap((built) => evidenceOf(built, modelsOf))
    .filter((e) => e.inputs.length > 0);
  const places = new Map<string, number>();
  const before: { name: string; mean: number; part: number; copy: number }[] = [];
  for (const { keys, inputs } of evidence)
    keys.forEach((key, k) => {
      if (places.has(key)) return;
      places.set(key, places.size);
      before.push({ name: inputs[k]!.name, mean: inputs[k]!.mean, ...dividedVariance(inputs[k]!) });
    });
  const tolerances = evidence.map(({ inputs }): Near => ({
    mean: Float64Array.from(inputs, (input) => input.mean),
    deviation: Float64Array.from(inputs, (input) => input.deviation),
  }));
  const cellsNear = (near: readonly Near[]) => evidence.map((e, i) => cellOf(e, places, near[i]!));
  // Straight near the tolerances first, then near what that has taught.
  const first = settle(cellsNear(tolerances), before);
  const cells = cellsNear(
    first.states.map(({ mean, deviation }, i) => ({
      mean: tolerances[i]!.mean.map((middle, k) => middle + mean[k]!),
      deviation,
    })),
  );
  const found = settle(cells, before, first);
  const { states, mean, covariance } = found;
  const masses = [...places].filter(([key]) => key.startsWith('dry-mass:'));
  return {
    together: masses.flatMap(([a, p], i) =>
      masses.slice(0, i).map(([b, q]) => ({ a, b, covariance: covariance[p]![q]! })),
    ),
    factors: [...places].map(([key, p]): LearnedFactor => {
      const prior = before[p]!;
      return {
        key,
        name: prior.name,
        mean: prior.mean + mean[p]!,
        deviation: Math.sqrt(covariance[p]![p]!),
        copyDeviation: Math.sqrt(prior.copy),
        before: { mean: prior.mean, deviation: Math.sqrt(prior.part) },
        rigs: cells.filter((c) => c.teaches.has(p)).length,
      };
    }),
    copies: joined(cells.map((cell, i) => [cell.evidence.built, copyOf(cell, states[i]!)])),
  };
}

function byName(a: BuiltRig, b: BuiltRig): number {
  const name = ({ rig, serial, tests }: BuiltRig) =>
    JSON.stringify([rig.document.id, serial ?? '', tests.map((t) => t.document)]);
  const [left, right] = [name(a), name(b)];
  return left < right ? -1 : left > right ? 1 : 0;
}

/** What water and scales say of one machine is one. */
function joined(copies: readonly (readonly [BuiltRig, LearnedCopy])[]): LearnedCopy[] {
  const machines = new Map<BuiltRig, LearnedCopy>();
  for (const [built, copy] of copies) {
    const before = machines.get(built);
    machines.set(
      built,
      before === undefined
        ? copy
        : {
            ...before,
            inputs: [...before.inputs, ...copy.inputs],
            readings: [...before.readings, ...copy.readings],
            unused: [...before.unused, ...copy.unused],
          },
    );
  }
  return [...machines.values()];
}

function copyOf({ evidence, places, at, teaches }: Cell, { mean, deviation, sound }: CopyState): LearnedCopy {
  const { built, inputs, keys, readings, sums, unused } = evidence;
  return {
    rig: built.rig.document.id,
    ...(built.serial === undefined ? {} : { serial: built.serial }),
    taken: built.tests.flatMap(({ document }) => document.taken ?? []).sort(),
    inputs: [
      ...inputs.map((input, k) => ({
        id: input.id,
        mean: input.mean + mean[k]!,
        deviation: deviation[k]!,
        ...(teaches.has(places[at[k]!]!) ? { factor: keys[k]! } : {}),
      })),
      ...sums.map(({ id }, s) => ({
        id,
        mean: mean[inputs.length + s]!,
        deviation: deviation[inputs.length + s]!,
      })),
    ],
    readings: readings.map(({ id }, r) => ({ id, sound: sound[r]! })),
    unused,
  };
}
