import {
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  read,
  text,
  withDefault,
  type Infer,
  type Problem,
} from '../../quantity/index.ts';
import { uncertainInputs, type Correction, type Rig } from '../../rig/index.ts';
import { massInputs, massWeights, WHOLE_MASS } from '../mass-inputs.ts';
import { dividedVariance, factorKey } from './evidence.ts';
import type { Learned, LearnedFactor } from './learn.ts';
import { PART_SHARES } from './part-share.data.ts';

const learnedShape = object({
  format: oneOf('spraywright-learned'),
  /** Built machines and sound readings behind it. */
  machines: integer({ min: 0, max: 1_000_000 }),
  readings: integer({ min: 0, max: 100_000_000 }),
  factors: list(
    object({
      key: text({ min: 3, max: 200 }),
      name: text({ min: 1, max: 200 }),
      mean: number({ min: -5, max: 5 }),
      deviation: number({ min: 0, max: 5 }),
      copyDeviation: number({ min: 0, max: 5 }),
      rigs: integer({ min: 1, max: 1_000_000 }),
    }),
    { max: 100_000 },
  ),
  /** Masses that readings know together better than each, two by two. */
  together: withDefault(
    list(
      object({
        a: text({ min: 3, max: 200 }),
        b: text({ min: 3, max: 200 }),
        covariance: number({ min: -25, max: 25 }),
      }),
      { max: 1_000_000 },
    ),
    [],
  ),
  /** Built machines with a serial number, and what their own tests say of their inputs. */
  built: withDefault(
    list(
      object({
        rig: identifier(),
        serial: text({ min: 1, max: 40 }),
        inputs: list(
          object({
            id: text({ min: 3, max: 200 }),
            mean: number({ min: -5, max: 5 }),
            deviation: number({ min: 0, max: 5 }),
          }),
          { max: 2000 },
        ),
      }),
      { max: 100_000 },
    ),
    [],
  ),
});

/** What a shop has learned of its parts, as it is stored: logarithms of factors on what the catalogue says. */
export type LearnedDocument = Infer<typeof learnedShape>;

/** Reads a file of learned factors. */
export function readLearned(
  raw: unknown,
): { ok: true; document: LearnedDocument } | { ok: false; problems: Problem[] } {
  const result = read(learnedShape, raw);
  return result.ok ? { ok: true, document: result.value } : result;
}

/** What is learned as a document; parts of which no reading says anything are left out. */
export function learnedDocument({ factors, together, copies }: Learned): LearnedDocument {
  const told = new Set(factors.flatMap((f) => (f.rigs > 0 ? [f.key] : [])));
  return {
    format: 'spraywright-learned',
    machines: copies.length,
    readings: copies.reduce((n, c) => n + c.readings.filter((r) => r.sound >= 0.5).length, 0),
    built: copies.flatMap(({ rig, serial, inputs }) =>
      serial === undefined
        ? []
        : [{ rig, serial, inputs: inputs.map(({ id, mean, deviation }) => ({ id, mean, deviation })) }],
    ),
    together: together.filter(({ a, b }) => told.has(a) && told.has(b)),
    factors: factors
      .filter((f: LearnedFactor) => f.rigs > 0)
      .map(({ key, name, mean, deviation, copyDeviation, rigs }) => ({
        key,
        name,
        mean,
        deviation,
        copyDeviation,
        rigs,
      })),
  };
}

/**
 * Corrections of a rig: of one that is not built yet what is learned of its parts and what one copy differs by, of a machine
 * that was tested what its own test says of it.
 *
 * @param serial of the machine; undefined where it is not built yet
 * @returns undefined when no test of a machine with that number is behind the document
 */
export function correctionsOf(
  rig: Rig,
  document: LearnedDocument,
  serial?: string,
): Correction[] | undefined {
  const { factors, built } = document;
  if (serial !== undefined) {
    const machine = built.find((b) => b.rig === rig.document.id && b.serial === serial);
    if (machine === undefined) return undefined;
    const own = machine.inputs.map((i) => ({ ...i, source: `tests of machine ${serial} and of others` }));
    // One that was never weighed is known by its parts.
    return own.some((i) => i.id === WHOLE_MASS) ? own : [...own, ...massCorrection(rig, document)];
  }
  const known = new Map(factors.map((f) => [f.key, f]));
  return uncertainInputs(rig).flatMap((input): Correction[] => {
    if (input.id === WHOLE_MASS) return massCorrection(rig, document);
    const factor = PART_SHARES[input.kind] === undefined ? undefined : known.get(factorKey(rig, input));
    if (factor === undefined) return [];
    return [
      {
        id: input.id,
        mean: factor.mean,
        deviation: Math.hypot(factor.deviation, factor.copyDeviation),
        source: readingsOf(factor.rigs),
      },
    ];
  });
}

function readingsOf(rigs: number): string {
  return `readings of ${rigs} built ${rigs === 1 ? 'rig' : 'rigs'}`;
}

/** The mass of an empty rig that is not built yet, from what scales have said of its parts; none where they said nothing of any. */
function massCorrection(rig: Rig, { factors, together }: LearnedDocument): Correction[] {
  const known = new Map(factors.map((f) => [f.key, f]));
  const weights = massWeights(rig);
  // Two items of one part are off alike.
  const shared = new Map<string, number>();
  let [mean, variance, rigs] = [0, 0, 0];
  for (const input of massInputs(rig)) {
    const key = factorKey(rig, input);
    const weight = weights.get(input.id)!;
    const { part, copy } = dividedVariance(input);
    const factor = known.get(key);
    if (factor !== undefined) rigs = Math.max(rigs, factor.rigs);
    mean += weight * (factor?.mean ?? input.mean);
    variance += weight ** 2 * (factor === undefined ? part + copy : factor.copyDeviation ** 2);
    if (factor !== undefined) shared.set(key, (shared.get(key) ?? 0) + weight);
  }
  if (rigs === 0) return [];
  for (const [key, weight] of shared) variance += (weight * known.get(key)!.deviation) ** 2;
  for (const { a, b, covariance } of together)
    variance += 2 * (shared.get(a) ?? 0) * (shared.get(b) ?? 0) * covariance;
  const deviation = Math.sqrt(Math.max(0, variance));
  return [{ id: WHOLE_MASS, mean, deviation, source: readingsOf(rigs) }];
}
