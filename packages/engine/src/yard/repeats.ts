import { instrumentOf, type InstrumentId } from './instruments.data.ts';

/** The 5 and 95 % points of a normal distribution, in deviations. */
const NINETY_FIVE = 1.6449;

/**
 * Deviation of the middle of so many normal readings, in that of one: exact for one and two (whose middle is their mean), for
 * three √(1 − √3/π).
 */
const MIDDLE = [1, Math.SQRT1_2, Math.sqrt(1 - Math.sqrt(3) / Math.PI)] as const;

/** What one of the readings of a row is called. */
export function repeatName({ instrument }: { readonly instrument: InstrumentId }): 'throw' | 'reading' {
  return instrumentOf(instrument).repeats?.one ?? 'reading';
}

/** How many values a row asks for: one for each tip, or for each time it is read. */
export function valuesAsked({
  tips,
  repeats,
}: {
  readonly tips?: number;
  readonly repeats?: number;
}): number {
  return repeats ?? tips ?? 1;
}

/** How many values a row takes at most: of two that are at odds a third tells which is right. */
export function valuesTaken(row: { readonly tips?: number; readonly repeats?: number }): number {
  return Math.max(valuesAsked(row), row.repeats === undefined ? 1 : MIDDLE.length);
}

/** A reading that lies so many deviations off the others went wrong: one sound reading in 700 does. */
const FAR = 3.2;

/** Whether each reading agrees with the others: of three one may lie so far off that it went wrong; of two nobody can tell which. */
export function repeatsAgree(instrument: InstrumentId, values: readonly number[]): boolean[] {
  const { repeats } = instrumentOf(instrument);
  if (repeats === undefined || values.length < 3) return values.map(() => true);
  const logs = values.map(Math.log);
  const sum = logs.reduce((all, x) => all + x, 0);
  // Off the mean of the others, whose scatter adds to its own.
  const others = values.length - 1;
  const off = logs.map((x) => Math.abs(x - (sum - x) / others));
  const most = Math.max(...off);
  const limit = FAR * repeats.deviation * Math.sqrt(1 + 1 / others);
  return off.map((o) => o < most || o <= limit);
}

/** The readings that agree; of a row that is read once everything. */
export function soundValues(instrument: InstrumentId, values: readonly number[]): readonly number[] {
  const agree = repeatsAgree(instrument, values);
  return values.filter((_, i) => agree[i]!);
}

/** Whether only two readings are left and lie so far apart that one went wrong: neither says anything before a third does. */
export function atOdds(instrument: InstrumentId, values: readonly number[]): boolean {
  const { repeats } = instrumentOf(instrument);
  const [a, b, ...more] = soundValues(instrument, values);
  if (repeats === undefined || a === undefined || b === undefined || more.length > 0) return false;
  return Math.abs(Math.log(a / b)) > FAR * repeats.deviation * Math.SQRT2;
}

/** How many times a row is still to be read; never again one that is read once. */
export function repeatsLeft(
  { instrument, repeats }: { readonly instrument: InstrumentId; readonly repeats?: number },
  values: readonly number[],
): number {
  if (repeats === undefined) return 0;
  const left = repeats - soundValues(instrument, values).length;
  return Math.max(atOdds(instrument, values) ? 1 : 0, left);
}

/**
 * What counts of the values of a row: of readings that agree the middle one, so that one gone wrong has no say; of tips their
 * mean. Of two that are at odds nothing counts: ask `atOdds` first.
 */
export function countedOf(instrument: InstrumentId, values: readonly number[]): number {
  if (instrumentOf(instrument).repeats === undefined)
    return values.reduce((sum, v) => sum + v, 0) / values.length;
  const sorted = [...soundValues(instrument, values)].sort((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1]!, sorted[sorted.length >> 1]!];
  return (low + high) / 2;
}

/**
 * Deviation of what counts of a row, of the instrument alone: what differs from one reading to the next shrinks with every one,
 * what is common to all of them does not.
 *
 * @param made how many values count
 * @returns of its logarithm, or in SI where the instrument reads through nought
 */
export function scatterOf(instrument: InstrumentId, made: number): number {
  const { deviation, repeats } = instrumentOf(instrument);
  if (repeats === undefined) return deviation;
  const share = MIDDLE[Math.min(made, MIDDLE.length) - 1] ?? 1;
  return Math.sqrt(deviation ** 2 - (1 - share ** 2) * repeats.deviation ** 2);
}

/** The window of a row that was read only so many times: wider than that of all. */
export function windowAfter(
  row: {
    readonly instrument: InstrumentId;
    readonly repeats?: number;
    readonly expected: number;
    readonly low: number;
    readonly high: number;
    readonly deviation: number;
  },
  made: number,
): { readonly low: number; readonly high: number; readonly deviation: number } {
  const { instrument, repeats, expected } = row;
  if (repeats === undefined || made >= repeats) return row;
  const deviation = Math.sqrt(
    row.deviation ** 2 - scatterOf(instrument, repeats) ** 2 + scatterOf(instrument, made) ** 2,
  );
  const wide = Math.exp(NINETY_FIVE * deviation);
  return { low: expected / wide, high: expected * wide, deviation };
}
