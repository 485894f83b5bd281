import { normalShareBelow } from '../../physics/index.ts';
import { binomialBand } from './binomial-band.ts';
import type { TakenReadings } from '../readings-document.ts';
import type { YardSheet } from '../sheet.ts';
import { tapeSays } from '../tape-wind.ts';
import { atOdds, countedOf, soundValues, windowAfter } from '../repeats.ts';
import { instrumentOf } from '../instruments.data.ts';

/** One test with the sheet it was taken by. */
export interface SheetTest {
  readonly sheet: YardSheet;
  readonly taken: TakenReadings;
}

/** Promises of about one probability: how many were tested, and how many held. */
export interface CalibrationBand {
  readonly from: number;
  readonly to: number;
  readonly tested: number;
  /** How many should have held: the sum of their probabilities. */
  readonly promised: number;
  readonly held: number;
  /** So many would hold in nine of ten shops whose odds are right. */
  readonly fair: readonly [number, number];
  /** How what held compares with that. */
  readonly told: 'as promised' | 'held less often' | 'held more often' | 'too few to tell';
}

export interface Calibration {
  readonly bands: readonly CalibrationBand[];
  /** Readings, and those inside the window that nine good rigs in ten read in. */
  readonly readings: number;
  readonly inside: number;
  /** How the share inside compares with nine in ten. */
  readonly windows: 'as promised' | 'too narrow' | 'too wide' | 'too few to tell';
}

const EDGES = [0, 0.5, 0.9, 0.99, 1] as const;
const NINE_IN_TEN = 0.9;
/** Fewer readings than this show no share of windows. */
const FEWEST = 40;
/** Fewer promises of about one probability than this show nothing of it. */
const FEWEST_PROMISES = 10;
/** Readings of one rig move together, so only a gap of so many deviations of independent ones is told. */
const TOLD = 4;

/**
 * What was promised, held against what happened: for each reading that a promise limits, the probability by the tolerances
 * that it stays inside, and whether it did; and how many readings fell into the windows that should hold nine in ten.
 */
export function calibrationOf(tests: readonly SheetTest[]): Calibration {
  const bands = EDGES.slice(1).map((to, i) => ({ from: EDGES[i]!, to, tested: 0, promised: 0, held: 0 }));
  let [readings, inside] = [0, 0];
  for (const { sheet, taken } of tests)
    for (const row of sheet.readings) {
      const list = taken.values.get(row.id);
      if (list === undefined) continue;
      if (row.instrument === 'tape-farthest' && !tapeSays(taken.document)) continue;
      if (atOdds(row.instrument, list)) continue;
      const value = countedOf(row.instrument, list);
      const { low, high, deviation } = windowAfter(row, soundValues(row.instrument, list).length);
      readings++;
      if (value >= low && value <= high) inside++;
      const plain = instrumentOf(row.instrument).plain === true;
      const off = (limit: number) =>
        (plain ? limit - row.expected : Math.log(limit / row.expected)) / deviation;
      for (const limit of row.limits) {
        if (!plain && !(limit.value > 0)) continue;
        const below = normalShareBelow(off(limit.value));
        const promised = limit.sense === 'at-most' ? below : 1 - below;
        const band = bands.find((b) => promised <= b.to)!;
        band.tested++;
        band.promised += promised;
        if (limit.sense === 'at-most' ? value <= limit.value : value >= limit.value) band.held++;
      }
    }
  return {
    bands: bands.filter((b) => b.tested > 0).map(judged),
    readings,
    inside,
    windows: windowsOf(readings, inside),
  };
}

function judged(band: Omit<CalibrationBand, 'fair' | 'told'>): CalibrationBand {
  const { tested, promised, held } = band;
  const fair = binomialBand(tested, promised / tested, NINE_IN_TEN);
  const told =
    tested < FEWEST_PROMISES
      ? 'too few to tell'
      : held < fair[0]
        ? 'held less often'
        : held > fair[1]
          ? 'held more often'
          : 'as promised';
  return { ...band, fair, told };
}

function windowsOf(readings: number, inside: number): Calibration['windows'] {
  if (readings < FEWEST) return 'too few to tell';
  const gap = (inside / readings - NINE_IN_TEN) / Math.sqrt((NINE_IN_TEN * (1 - NINE_IN_TEN)) / readings);
  return gap < -TOLD ? 'too narrow' : gap > TOLD ? 'too wide' : 'as promised';
}
