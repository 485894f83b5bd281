import { waterDensity, waterViscosity } from '../physics/index.ts';
import type { UnitSystem } from '../quantity/index.ts';
import {
  siteOf,
  uncertainInputs,
  withFactors,
  type Correction,
  type Rig,
  type ToleranceKind,
  type UncertainInput,
} from '../rig/index.ts';
import { instrumentOf } from './instruments.data.ts';
import { yardRows } from './rows.ts';
import type { WateredRig, YardRow } from './yard-row.ts';
import { waterRunner, type WaterRun } from './water-run.ts';

/** Inputs that readings with water in a new rig depend on. New tips are not worn, and strainers are clean. */
const SEEN_BY_WATER: ReadonlySet<ToleranceKind> = new Set<ToleranceKind>([
  'pump-flow',
  'pump-slip',
  'drive-speed',
  'hose-bore',
  'hose-roughness',
  'passage',
  'set-pressure',
  'override',
  'tip-flow',
  'jet-flow',
  'current',
  'throw',
]);

/** Water at or below freezing, or hotter than a hand bears, is in no test. */
const WATER_RANGE = { low: 1, high: 50 } as const;

export interface YardOptions {
  readonly units?: UnitSystem;
  /** What readings of other rigs have taught of this one's inputs. */
  readonly corrections?: readonly Correction[];
  /** Of the water [K]; the site's when absent. */
  readonly waterTemperature?: number;
  /** A rig that has worked: its tips are worn as tips in service are. */
  readonly inService?: boolean;
}

/** Readings of one rig as a function of the logarithms of its uncertain inputs' factors, with the real solver. */
export interface YardModel {
  readonly rig: Rig;
  readonly inputs: readonly UncertainInput[];
  readonly rows: readonly YardRow[];
  /**
   * What every row shows: the logarithm of the SI value, or the plain value where the instrument says so; NaN where the rig
   * has no steady state.
   * @param logFactors one number per input [-]
   * @param changed a rig with a fault, of the same items, instead of the rig itself
   */
  readonly predict: (logFactors: ArrayLike<number>, changed?: Rig) => Float64Array;
}

/** Makes the model of a rig with water of the yard's temperature in it. */
export function yardModel(rig: Rig, options: YardOptions = {}): YardModel {
  const celsius = (options.waterTemperature ?? siteOf(rig.brief).temperature) - 273.15;
  const warm = Math.min(WATER_RANGE.high, Math.max(WATER_RANGE.low, celsius));
  const water = { density: waterDensity(warm), viscosity: waterViscosity(warm) };
  const inputs = uncertainInputs(rig, options.corrections).filter(
    (i) => SEEN_BY_WATER.has(i.kind) || (options.inService === true && i.kind === 'tip-wear'),
  );
  const places = new Map(inputs.map((input, i) => [input.id, i]));
  const runners = rig.brief.duties.map((duty) => ({ id: duty.id, run: waterRunner(duty, water) }));
  const watered = (logFactors: ArrayLike<number>, of: Rig): WateredRig => {
    const varied = withFactors(of, inputs, (_, i) => logFactors[i]!);
    const runs = new Map<string, WaterRun>();
    for (const { id, run } of runners) {
      const shown = run(varied);
      if (shown !== undefined) runs.set(id, shown);
    }
    const factor = (id: string) => {
      const place = places.get(id);
      return place === undefined ? 1 : Math.exp(logFactors[place]!);
    };
    return { rig: varied, runs, factor };
  };
  const middle = inputs.map((i) => i.mean);
  const rows = yardRows(watered(middle, rig), water.density, options.units ?? 'us');
  return {
    rig,
    inputs,
    rows,
    predict: (logFactors, changed = rig) => {
      const now = watered(logFactors, changed);
      return Float64Array.from(rows, (row) => scaled(row, row.read(now)));
    },
  };
}

/** A value on the scale on which its doubt is symmetric: its logarithm, or itself. */
export function scaled(row: YardRow, value: number): number {
  if (instrumentOf(row.instrument).plain === true) return value;
  return value > 0 ? Math.log(value) : NaN;
}

/** The way back from `scaled`. */
export function unscaled(row: YardRow, value: number): number {
  return instrumentOf(row.instrument).plain === true ? value : Math.exp(value);
}

/** How each row moves with each input around a point: rows times inputs, row by row. */
export function slopes(model: YardModel, at: ArrayLike<number>): Float64Array {
  const steps = model.inputs.map((i) => i.deviation);
  return around(model, at, steps).slope;
}

/** Rows around a point, each input moved by its doubt either way. */
export interface Around {
  /** Every row at the point. */
  readonly base: Float64Array;
  /** How each row moves with each input: rows times inputs, row by row. */
  readonly slope: Float64Array;
  /** How far each row bends off the straight: what it moves both ways together, row by row. */
  readonly bend: Float64Array;
}

/** @param steps how far each input is moved either way: its doubt */
export function around(model: YardModel, at: ArrayLike<number>, steps: ArrayLike<number>): Around {
  const { inputs, rows, predict } = model;
  const base = predict(at);
  const [slope, bend] = [0, 0].map(() => new Float64Array(rows.length * inputs.length)) as [
    Float64Array,
    Float64Array,
  ];
  const point = Float64Array.from(at);
  inputs.forEach((_, k) => {
    const step = steps[k]!;
    point[k] = at[k]! + step;
    const up = predict(point);
    point[k] = at[k]! - step;
    const down = predict(point);
    point[k] = at[k]!;
    for (let r = 0; r < rows.length; r++) {
      const [tilt, off] = [(up[r]! - down[r]!) / (2 * step), up[r]! + down[r]! - 2 * base[r]!];
      const place = r * inputs.length + k;
      slope[place] = Number.isFinite(tilt) ? tilt : 0;
      bend[place] = Number.isFinite(off) ? off : 0;
    }
  });
  return { base, slope, bend };
}
