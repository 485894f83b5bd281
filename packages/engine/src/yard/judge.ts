import { acceptanceCheck, type RigKind } from '../physics/index.ts';
import { display, type UnitSystem } from '../quantity/index.ts';
import { first, type Rig } from '../rig/index.ts';
import { instrumentOf } from './instruments.data.ts';
import type { TakenReadings } from './readings-document.ts';
import type { ReadingLimit } from './promise-limits.ts';
import type { SheetReading } from './sheet-reading.ts';
import type { YardSheet } from './sheet.ts';
import {
  atOdds,
  countedOf,
  repeatName,
  repeatsAgree,
  repeatsLeft,
  scatterOf,
  soundValues,
  windowAfter,
} from './repeats.ts';

/**
 * pass: inside the window. look: outside it, though every promise holds. fail: a promise or an acceptance limit is broken,
 * or no rig of these parts reads so. refused: taken in conditions that say nothing. more: inside so far, or at odds with
 * itself, and to be read again. missing: not taken.
 */
export type ReadingState = 'pass' | 'look' | 'fail' | 'refused' | 'more' | 'missing';

export interface JudgedReading {
  readonly id: string;
  readonly state: ReadingState;
  /** What counts of what was read, SI: the middle one of several, the mean of tips; absent when nothing was, or what was is at odds. */
  readonly value?: number;
  /** Every reading in its order, SI, where a row is read several times, and how many are still to be taken. */
  readonly repeated?: readonly number[];
  readonly repeatsLeft?: number;
  /** How many deviations it lies from what it should show. */
  readonly off?: number;
  /** Why, each a sentence. */
  readonly because: readonly string[];
}

export interface JudgedTest {
  /** Worst of its readings; missing while a needed one is missing and none failed. */
  readonly state: Exclude<ReadingState, 'more'>;
  readonly readings: readonly JudgedReading[];
}

export interface JudgeOptions {
  readonly units?: UnitSystem;
  /** Acceptance limits of a jurisdiction, by the id of their edition; none: only this rig's own windows count. */
  readonly edition?: string;
}

/** Beyond so many deviations no rig of these parts reads so: one in 700. */
const IMPOSSIBLE = 3.2;
const NINETY_FIVE = 1.6449;
/** Rounding of a reading that sits on its limit. */
const LEAST = 1e-6;
/** Tips of one boom that differ by more than this from their mean are worn or blocked: US extension guidance, 10 % over the mean. */
const TIP_SPREAD = 0.1;

/** Judges readings against their sheet: each says pass, look or fail, and why. */
export function judgeReadings(
  rig: Rig,
  sheet: YardSheet,
  taken: TakenReadings,
  options: JudgeOptions = {},
): JudgedTest {
  const readings = sheet.readings.map((row) => judgeOne(rig, row, taken, sheet.windLimit, options));
  const has = (state: ReadingState) => readings.some((r) => r.state === state);
  const neededMissing = sheet.readings.some(
    (row, i) =>
      row.needed &&
      (readings[i]!.state === 'missing' || atOdds(row.instrument, taken.values.get(row.id) ?? [])),
  );
  const state = has('fail')
    ? 'fail'
    : neededMissing
      ? 'missing'
      : has('look')
        ? 'look'
        : has('refused')
          ? 'refused'
          : 'pass';
  return { state, readings };
}

function judgeOne(
  rig: Rig,
  row: SheetReading,
  taken: TakenReadings,
  windLimit: number,
  options: JudgeOptions,
): JudgedReading {
  const values = taken.values.get(row.id);
  const units = options.units ?? 'us';
  const say = (value: number) => display(value, row.dimension, units);
  if (values === undefined)
    return {
      id: row.id,
      state: 'missing',
      because: [row.needed ? 'not read yet; the test is not complete without it' : 'not read'],
    };
  const value = countedOf(row.instrument, values);
  const made = soundValues(row.instrument, values).length;
  const left = repeatsLeft(row, values);
  const odds = atOdds(row.instrument, values);
  const read = {
    id: row.id,
    ...(odds ? {} : { value }),
    ...(row.repeats === undefined ? {} : { repeated: values, repeatsLeft: left }),
  };
  const again = againBecause(row, values, say);
  if (row.instrument === 'tape-farthest') {
    const { wind } = taken.document;
    const speed = (v: number) => display(v, 'speed', units);
    if (wind === undefined)
      return {
        ...read,
        state: 'refused',
        because: ['enter the wind: without it a tape says nothing', ...again],
      };
    if (wind > windLimit)
      return {
        ...read,
        state: 'refused',
        because: [
          `wind of ${speed(wind)}: above ${speed(windLimit)} a tape says nothing. Wait for a calm hour`,
        ],
      };
  }
  if (odds) return { ...read, state: 'more', because: again };
  const plain = instrumentOf(row.instrument).plain === true;
  const { low, high, deviation } = windowAfter(row, made);
  const off = (plain ? value - row.expected : Math.log(value / row.expected)) / deviation;
  const scatter = plain ? 0 : NINETY_FIVE * scatterOf(row.instrument, made);
  const beyond = (share: number) =>
    row.limits.filter(({ sense, value: limit }) =>
      sense === 'at-least' ? value < limit * (1 - share) : value > limit * (1 + share),
    );
  const broken = beyond(scatter);
  const close = beyond(LEAST).filter((l) => !broken.includes(l));
  const fails = [
    ...broken.map((l) => `promise broken: ${l.promise}; ${limitText(l, say)}`),
    ...acceptance(rig, row, values, taken, options),
    ...(Math.abs(off) > IMPOSSIBLE
      ? [
          `no rig of these parts reads ${say(value)}: it lies ${Math.abs(off).toFixed(1)} times its usual spread ${sideOf(off)} ${say(row.expected)}. Is it the right part, and is the gauge right?`,
        ]
      : []),
  ];
  const looks = [
    ...(Math.abs(off) > NINETY_FIVE
      ? [
          `${sideOf(off) === 'above' ? 'high' : 'low'}: nine rigs in ten read ${say(low)} to ${say(high)}. Most of the doubt: ${row.doubt.map((d) => d.of).join('; ')}`,
        ]
      : []),
    ...close.map((l) => `too close to tell whether a promise holds: ${l.promise}; ${limitText(l, say)}`),
    ...(row.repeats === undefined ? oddTips(values, say) : []),
  ];
  const inside = `inside ${say(low)} to ${say(high)}`;
  if (fails.length > 0) return { ...read, state: 'fail', off, because: [...fails, ...looks, ...again] };
  if (looks.length > 0) return { ...read, state: 'look', off, because: [...looks, ...again] };
  if (left > 0) return { ...read, state: 'more', off, because: [...again, `so far ${inside}`] };
  return { ...read, state: 'pass', off, because: [...again, inside] };
}

/** Which readings of a row do not count, and how many are to be taken again. */
function againBecause(
  row: SheetReading,
  values: readonly number[],
  say: (value: number) => string,
): string[] {
  const one = repeatName(row);
  const left = repeatsLeft(row, values);
  const far = repeatsAgree(row.instrument, values).flatMap((agrees, i) =>
    agrees ? [] : [`${one} ${i + 1} of ${say(values[i]!)} is far from the others and does not count`],
  );
  if (left === 0) return far;
  const more = left === 1 ? `one more ${one}` : `${left} more ${one}s`;
  const counts = row.repeats === 2 ? 'two that agree count' : `the middle one of ${row.repeats} counts`;
  if (!atOdds(row.instrument, values)) return [...far, `${more}: ${counts}`];
  const [a, b] = soundValues(row.instrument, values);
  return [...far, `${say(a!)} and ${say(b!)} are too far apart: ${more} tells which counts`];
}

const sideOf = (off: number): 'above' | 'below' => (off > 0 ? 'above' : 'below');

function limitText(limit: ReadingLimit, say: (value: number) => string): string {
  return `this must read ${limit.sense === 'at-least' ? 'at least' : 'at most'} ${say(limit.value)}`;
}

function oddTips(values: readonly number[], say: (value: number) => string): string[] {
  if (values.length < 2) return [];
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return values.flatMap((v, i) =>
    Math.abs(v / mean - 1) > TIP_SPREAD
      ? [`tip ${i + 1} takes ${say(v)}, more than 10 % off the mean of ${say(mean)}: clean it or change it`]
      : [],
  );
}

/** Flow of each tip against its nominal flow at the pressure read, as the edition asks. */
function acceptance(
  rig: Rig,
  row: SheetReading,
  values: readonly number[],
  taken: TakenReadings,
  { edition }: JudgeOptions,
): string[] {
  if (edition === undefined || row.instrument !== 'bucket') return [];
  const line = rig.lines.find((l) => l.id === row.line);
  const tip = rig.items.get(line?.run[line.run.length - 1] ?? '')?.part;
  const pressure = taken.values.get(`tip-gauge:${row.duty!}:${row.line!}`)?.[0];
  if ((tip?.kind !== 'tip' && tip?.kind !== 'nozzle') || pressure === undefined) return [];
  const nominal = tip.flowAtOneBar * Math.sqrt(pressure / 1e5);
  const kind: RigKind = first(rig, 'boom') !== undefined && row.line === 'boom' ? 'boom' : 'orchard';
  return values.flatMap((seconds, i) => {
    const check = acceptanceCheck(edition, 'tip-flow', nominal, row.volume! / seconds, kind);
    const which = values.length > 1 ? `tip ${i + 1}` : 'the tip';
    return check.state === 'fail'
      ? [`${which} is off its nominal flow by more than ${edition} allows (${check.source})`]
      : [];
  });
}
