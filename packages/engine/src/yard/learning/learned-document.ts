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
import { factorKey } from './evidence.ts';
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
export function learnedDocument({ factors, copies }: Learned): LearnedDocument {
  return {
    format: 'spraywright-learned',
    machines: copies.length,
    readings: copies.reduce((n, c) => n + c.readings.filter((r) => r.sound >= 0.5).length, 0),
    built: copies.flatMap(({ rig, serial, inputs }) =>
      serial === undefined
        ? []
        : [{ rig, serial, inputs: inputs.map(({ id, mean, deviation }) => ({ id, mean, deviation })) }],
    ),
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
  { factors, built }: LearnedDocument,
  serial?: string,
): Correction[] | undefined {
  if (serial !== undefined) {
    const machine = built.find((b) => b.rig === rig.document.id && b.serial === serial);
    return machine?.inputs.map((i) => ({ ...i, source: `tests of machine ${serial} and of others` }));
  }
  const known = new Map(factors.map((f) => [f.key, f]));
  return uncertainInputs(rig).flatMap((input): Correction[] => {
    const factor = PART_SHARES[input.kind] === undefined ? undefined : known.get(factorKey(rig, input));
    if (factor === undefined) return [];
    return [
      {
        id: input.id,
        mean: factor.mean,
        deviation: Math.hypot(factor.deviation, factor.copyDeviation),
        source: `readings of ${factor.rigs} built ${factor.rigs === 1 ? 'rig' : 'rigs'}`,
      },
    ];
  });
}
