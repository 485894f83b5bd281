import type { Proof, Rig, UncertainInput } from '../../rig/index.ts';
import { instrumentOf } from '../instruments.data.ts';
import type { TakenReadings } from '../readings-document.ts';
import { massWeights, WHOLE_MASS } from '../mass-inputs.ts';
import { tapeSays } from '../tape-wind.ts';
import { atOdds, countedOf, scatterOf, soundValues } from '../repeats.ts';
import { scaleModel } from '../scale-model.ts';
import { around, scaled, yardModel, type YardModel, type YardOptions } from '../yard-model.ts';
import { PART_SHARES } from './part-share.data.ts';
import { zeros, type Matrix } from './symmetric.ts';

/**
 * How far a slip of pen, a wrong bucket or a wrong valve puts a reading off, whatever it was read with: its logarithm, or
 * pascal where the gauge reads through nought. Judgement.
 */
const SLIPPED = { log: 0.35, plain: 20_000 } as const;

/** One built machine and every test of it. */
export interface BuiltRig {
  readonly rig: Rig;
  /** Its proof, which says where its parts stand: without it a scale teaches nothing. */
  readonly proof?: Proof;
  /** Tests of one serial number are of one copy; without it every test is of a copy of its own. */
  readonly serial?: string;
  readonly tests: readonly TakenReadings[];
  /** Parts whose data were otherwise when it was built than they are today, each with the name of that version. */
  readonly versions?: ReadonlyMap<string, string>;
  /** Parts whose mass was told otherwise, likewise. */
  readonly massVersions?: ReadonlyMap<string, string>;
}

/** One reading as learning sees it, on the scale on which its scatter is even. */
interface Reading {
  readonly id: string;
  readonly test: number;
  readonly row: number;
  readonly value: number;
  /** Of the instrument alone, by as many readings as count. */
  readonly deviation: number;
  /** Of one that went wrong altogether. */
  readonly slipped: number;
}

/** What one built machine can teach. */
export interface Evidence {
  readonly built: BuiltRig;
  readonly models: readonly YardModel[];
  readonly inputs: readonly UncertainInput[];
  /** Factor of each input, by its key. */
  readonly keys: readonly string[];
  readonly readings: readonly Reading[];
  /** Inputs of the rig as a whole that are made of some of these, each with its weight. */
  readonly sums: readonly { readonly id: string; readonly weights: ReadonlyMap<string, number> }[];
  /** Readings that teach nothing, and why. */
  readonly unused: readonly { readonly id: string; readonly why: string }[];
}

/** Readings near one set of log factors: value = base + slope · (x − mean of the tolerances). */
export interface Linear {
  readonly rest: Float64Array;
  readonly slope: Matrix;
  /** Variance of what the straight law misses. */
  readonly bent: Float64Array;
}

/** Key of the factor that all copies of a catalogue part share; a part of the rig's own is shared by copies of that rig only. */
export function factorKey(rig: Rig, input: UncertainInput): string {
  const part = rig.items.get(input.item)?.part.id;
  // What belongs to no part is shared by all copies of a rig.
  if (part === undefined) return `${input.kind}:${rig.document.id}/${input.item}`;
  return rig.ownParts.has(part) ? `${input.kind}:${rig.document.id}/${part}` : `${input.kind}:${part}`;
}

/** Factor of an input of a built machine: what was learned against other data than today's is kept apart. */
function builtKey({ rig, versions, massVersions }: BuiltRig, input: UncertainInput): string {
  const of = input.kind === 'dry-mass' ? massVersions : versions;
  const version = of?.get(rig.items.get(input.item)?.part.id ?? '');
  const key = factorKey(rig, input);
  return version === undefined ? key : `${key}#${version}`;
}

/** What the models of a rig are made for: by its waters, and one by its proof for scales. */
export interface ModelsOf {
  readonly water: (built: BuiltRig, temperature: number | undefined) => YardModel;
  /** Undefined where nobody knows where its parts stand. */
  readonly scale: (built: BuiltRig) => YardModel | undefined;
}

/** Models made for a rig and water, so that copies of one rig share them. */
export function modelMaker(options: YardOptions): ModelsOf {
  const made = new Map<Rig, Map<number | undefined, YardModel>>();
  const weighed = new Map<Rig, YardModel>();
  return {
    water: ({ rig }, temperature) => {
      const ofRig = made.get(rig) ?? new Map<number | undefined, YardModel>();
      made.set(rig, ofRig);
      const model =
        ofRig.get(temperature) ??
        yardModel(rig, {
          ...options,
          ...(temperature === undefined ? {} : { waterTemperature: temperature }),
        });
      ofRig.set(temperature, model);
      return model;
    },
    scale: ({ rig, proof }) => {
      const model = weighed.get(rig) ?? (proof === undefined ? undefined : scaleModel(rig, proof));
      if (model !== undefined) weighed.set(rig, model);
      return model;
    },
  };
}

/** Puts the readings of one machine in the form in which they teach: those with water, and those of scales where there are any. */
export function evidenceOf(built: BuiltRig, modelsOf: ModelsOf): Evidence[] {
  const scale = modelsOf.scale(built);
  const water = built.tests.map(({ document }) => modelsOf.water(built, document.waterTemperature));
  const weighed =
    scale === undefined
      ? undefined
      : readBy(
          built,
          built.tests.map(() => scale),
        );
  const known = new Set(scale?.rows.map((row) => row.id));
  const read = readBy(built, water);
  const nobody = built.tests.flatMap(({ values }, t) =>
    [...values.keys()]
      .sort()
      .filter((id) => !known.has(id) && !water[t]!.rows.some((row) => row.id === id))
      .map((id) => ({ id, why: 'nobody has worked out what it should show' })),
  );
  return [
    { ...read, unused: [...read.unused, ...nobody] },
    ...(weighed === undefined || weighed.readings.length === 0 ? [] : [weighed]),
  ];
}

/** The readings of every test that a model, one for each test, has a row for. */
function readBy(built: BuiltRig, models: readonly YardModel[]): Evidence {
  const readings: Reading[] = [];
  const unused: { id: string; why: string }[] = [];
  const { inputs } = models[0]!;
  built.tests.forEach(({ values: read, document }, test) => {
    const model = models[test]!;
    const values = withSums(read, model);
    const shown = model.predict(inputs.map((i) => i.mean));
    for (const id of [...values.keys()].sort()) {
      const list = values.get(id)!;
      const row = model.rows.findIndex((r) => r.id === id);
      const found = model.rows[row];
      if (found === undefined) continue;
      const why = !Number.isFinite(shown[row]!)
        ? 'this rig has no steady reading there'
        : found.instrument === 'tape-farthest' && !tapeSays(document)
          ? 'a tape says nothing in wind above the limit, or in wind that nobody told'
          : atOdds(found.instrument, list)
            ? 'two readings are too far apart, and nobody read it a third time'
            : undefined;
      if (why !== undefined) {
        unused.push({ id, why });
        continue;
      }
      const { instrument } = found;
      const slipped = SLIPPED[instrumentOf(instrument).plain === true ? 'plain' : 'log'];
      const value = scaled(found, countedOf(instrument, list));
      const deviation = Math.hypot(
        scatterOf(instrument, soundValues(instrument, list).length),
        found.besides?.deviation ?? 0,
      );
      readings.push({ id, test, row, value, deviation, slipped });
    }
  });
  const weighs = inputs.some((i) => i.kind === 'dry-mass');
  return {
    built,
    models,
    inputs,
    keys: inputs.map((input) => builtKey(built, input)),
    readings,
    sums: weighs ? [{ id: WHOLE_MASS, weights: massWeights(built.rig) }] : [],
    unused,
  };
}

/** Readings with those that a row adds up, once all of them are there, replaced by their sum. */
function withSums(read: TakenReadings['values'], { rows }: YardModel): TakenReadings['values'] {
  const values = new Map(read);
  for (const { id, sumOf } of rows) {
    const parts = sumOf?.map((row) => read.get(row)?.[0]);
    if (sumOf === undefined || parts === undefined || parts.includes(undefined)) continue;
    for (const row of sumOf) values.delete(row);
    values.set(id, [parts.reduce<number>((sum, v) => sum + (v ?? 0), 0)]);
  }
  return values;
}

/** Log factors, and how far off they may be. */
export interface Near {
  readonly mean: Float64Array;
  readonly deviation: Float64Array;
}

/** Square of the outer of three points that stand for a normal, in deviations (Gauss and Hermite). */
const SQUARE = 3;

/**
 * Readings of a machine as a straight law near some log factors, as far as these may be off, through the real solver. What
 * a reading bends within that doubt, as where a regulator begins to open, is no fault of the reading: it widens its scatter.
 *
 * @source statistical linearisation with three points an input, as in the filters of Gelb (1974) and Ito and Xiong (2000);
 * from memory
 */
export function linearised({ models, inputs, readings }: Evidence, { mean: at, deviation }: Near): Linear {
  const steps = deviation.map((d) => Math.sqrt(SQUARE) * d);
  const made = new Map(models.map((model) => [model, around(model, at, steps)]));
  const width = inputs.length;
  const slope = zeros(readings.length, width);
  const bent = new Float64Array(readings.length);
  const rest = Float64Array.from(readings, ({ test, row, value }, i) => {
    const { base, slope: all, bend } = made.get(models[test]!)!;
    let r = value - base[row]!;
    for (let k = 0; k < width; k++) {
      const s = (slope[i]![k] = all[row * width + k]!);
      const b = bend[row * width + k]! / SQUARE;
      r += s * (at[k]! - inputs[k]!.mean) - b / 2;
      bent[i]! += (b * b) / 2;
    }
    // A rig that finds no steady state there says nothing.
    if (!Number.isFinite(r)) slope[i]!.fill(0);
    return Number.isFinite(r) ? r : 0;
  });
  return { rest, slope, bent };
}

/** Variance of an input that all copies of its part share, and that of one copy. */
export function dividedVariance({ kind, deviation }: UncertainInput): { part: number; copy: number } {
  const share = PART_SHARES[kind]?.share ?? 0;
  return { part: share * deviation ** 2, copy: (1 - share) * deviation ** 2 };
}
