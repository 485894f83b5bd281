import type { Rig, UncertainInput } from '../../rig/index.ts';
import { instrumentOf } from '../instruments.data.ts';
import type { TakenReadings } from '../readings-document.ts';
import { tapeSays } from '../tape-wind.ts';
import { countedOf, scatterOf, soundValues } from '../throws.ts';
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
  /** Tests of one serial number are of one copy; without it every test is of a copy of its own. */
  readonly serial?: string;
  readonly tests: readonly TakenReadings[];
  /** Parts whose data were otherwise when it was built than they are today, each with the name of that version. */
  readonly versions?: ReadonlyMap<string, string>;
}

/** One reading as learning sees it, on the scale on which its scatter is even. */
interface Reading {
  readonly id: string;
  readonly test: number;
  readonly row: number;
  readonly value: number;
  /** Of the instrument alone, by as many throws as were made. */
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
  const part = rig.items.get(input.item)!.part.id;
  return rig.ownParts.has(part) ? `${input.kind}:${rig.document.id}/${part}` : `${input.kind}:${part}`;
}

/** Factor of an input of a built machine: what was learned against other data than today's is kept apart. */
function builtKey({ rig, versions }: BuiltRig, input: UncertainInput): string {
  const version = versions?.get(rig.items.get(input.item)!.part.id);
  const key = factorKey(rig, input);
  return version === undefined ? key : `${key}#${version}`;
}

/** Models made for a rig and water, so that copies of one rig share them. */
export function modelMaker(options: YardOptions): (rig: Rig, temperature: number | undefined) => YardModel {
  const made = new Map<Rig, Map<number | undefined, YardModel>>();
  return (rig, temperature) => {
    const ofRig = made.get(rig) ?? new Map<number | undefined, YardModel>();
    made.set(rig, ofRig);
    const model =
      ofRig.get(temperature) ??
      yardModel(rig, { ...options, ...(temperature === undefined ? {} : { waterTemperature: temperature }) });
    ofRig.set(temperature, model);
    return model;
  };
}

/** Puts the readings of one machine in the form in which they teach. */
export function evidenceOf(
  built: BuiltRig,
  modelOf: (rig: Rig, temperature: number | undefined) => YardModel,
): Evidence {
  const models = built.tests.map(({ document }) => modelOf(built.rig, document.waterTemperature));
  const readings: Reading[] = [];
  const unused: { id: string; why: string }[] = [];
  const { inputs } = models[0]!;
  built.tests.forEach(({ values, document }, test) => {
    const model = models[test]!;
    const shown = model.predict(inputs.map((i) => i.mean));
    for (const id of [...values.keys()].sort()) {
      const list = values.get(id)!;
      const row = model.rows.findIndex((r) => r.id === id);
      const found = model.rows[row];
      const why =
        found === undefined
          ? 'a scale says nothing of a part'
          : !Number.isFinite(shown[row]!)
            ? 'this rig has no steady reading there'
            : found.instrument === 'tape-farthest' && !tapeSays(document)
              ? 'a tape says nothing in wind above the limit, or in wind that nobody told'
              : undefined;
      if (why !== undefined || found === undefined) {
        unused.push({ id, why: why ?? '' });
        continue;
      }
      const { instrument } = found;
      const slipped = SLIPPED[instrumentOf(instrument).plain === true ? 'plain' : 'log'];
      const value = scaled(found, countedOf(instrument, list));
      const deviation = scatterOf(instrument, soundValues(instrument, list).length);
      readings.push({ id, test, row, value, deviation, slipped });
    }
  });
  return {
    built,
    models,
    inputs,
    keys: inputs.map((input) => builtKey(built, input)),
    readings,
    unused,
  };
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
