import type { Proof, Rig } from '../rig/index.ts';
import { instrumentOf } from './instruments.data.ts';
import { promiseLimits } from './promise-limits.ts';
import { scaleModel } from './scale-model.ts';
import { WIND_LIMIT } from './tape-wind.ts';
import type { SheetReading } from './sheet-reading.ts';
import { scatterOf } from './repeats.ts';
import { slopes, unscaled, yardModel, type YardModel, type YardOptions } from './yard-model.ts';

/** 5 and 95 % points of the normal distribution. */
const NINETY_FIVE = 1.6449;

/** The yard test of one rig. */
export interface YardSheet {
  readonly rig: string;
  readonly title: string;
  readonly customer: string;
  readonly windLimit: number;
  readonly duties: readonly { readonly id: string; readonly name: string }[];
  readonly readings: readonly SheetReading[];
  /** Duties that find no steady state with water, and so cannot be tested. */
  readonly untested: readonly string[];
}

/** Names of what causes doubt that are listed for one reading. */
const NAMED = 3;

/**
 * The yard test sheet of a rig: every reading with its 5-95 % window. The window follows from the tolerances of this
 * rig's own parts, carried through the real solver by slopes at the middle, and the instrument's own scatter.
 */
export function yardSheet(rig: Rig, proof: Proof, options: YardOptions = {}): YardSheet {
  const model = yardModel(rig, options);
  return {
    rig: rig.document.id,
    title: rig.document.title,
    customer: rig.brief.customer,
    windLimit: WIND_LIMIT,
    duties: rig.brief.duties.map(({ id, name }) => ({ id, name })),
    readings: [...sheetReadings(model, proof), ...sheetReadings(scaleModel(rig, proof), proof)],
    untested: rig.brief.duties.filter((d) => !model.rows.some((r) => r.duty?.id === d.id)).map((d) => d.name),
  };
}

function sheetReadings(model: YardModel, proof: Proof): SheetReading[] {
  const { inputs, rows } = model;
  const middle = inputs.map((i) => i.mean);
  const at = model.predict(middle);
  const slope = slopes(model, middle);
  return rows.flatMap((row, r): SheetReading[] => {
    if (!Number.isFinite(at[r]!) || row.sumOf !== undefined) return [];
    const { dimension, name, repeats } = instrumentOf(row.instrument);
    const noise = scatterOf(row.instrument, repeats?.times ?? 1);
    const parts = inputs.map((input, k) => ({
      of: input.name,
      variance: (slope[r * inputs.length + k]! * input.deviation) ** 2,
    }));
    const { of: besides = '', deviation: beside = 0 } = row.besides ?? {};
    const all = [
      ...parts,
      { of: name, variance: noise ** 2 },
      ...(beside > 0 ? [{ of: besides, variance: beside ** 2 }] : []),
    ].sort((a, b) => b.variance - a.variance);
    const variance = all.reduce((sum, p) => sum + p.variance, 0);
    const deviation = Math.sqrt(variance);
    const expected = unscaled(row, at[r]!);
    return [
      {
        id: row.id,
        instrument: row.instrument,
        dimension,
        ...(row.duty === undefined ? {} : { duty: row.duty.id, tankLevel: row.duty.tankLevel }),
        ...(row.line === undefined ? {} : { line: row.line }),
        ...(row.duty?.hoseOut === undefined ? {} : { hoseOut: row.duty.hoseOut }),
        ...(row.volume === undefined ? {} : { volume: row.volume }),
        ...(row.tips === undefined ? {} : { tips: row.tips }),
        ...(repeats === undefined ? {} : { repeats: repeats.times }),
        needed: row.needed,
        expected,
        low: unscaled(row, at[r]! - NINETY_FIVE * deviation),
        high: unscaled(row, at[r]! + NINETY_FIVE * deviation),
        deviation,
        limits: promiseLimits(model.rig, proof, row, expected),
        doubt: all.slice(0, NAMED).map((p) => ({ of: p.of, share: p.variance / variance })),
      },
    ];
  });
}
