import { instrumentOf, type InstrumentId } from './instruments.data.ts';

/** The 5 and 95 % points of a normal distribution, in deviations. */
const NINETY_FIVE = 1.6449;

/**
 * Deviation of the middle of so many normal throws, in that of one: exact for one and two (whose middle is their mean), for three
 * √(1 − √3/π).
 */
const MIDDLE = [1, Math.SQRT1_2, Math.sqrt(1 - Math.sqrt(3) / Math.PI)] as const;

/** How many values a row asks for: one for each tip, or for each throw. */
export function valuesAsked({ tips, throws }: { readonly tips?: number; readonly throws?: number }): number {
  return throws ?? tips ?? 1;
}

/** A throw that lies so many deviations off the two others went wrong: one sound throw in 700 does. */
const FAR = 3.2;

/** Whether each throw agrees with the others: of three one may lie so far off that it went wrong; of two nobody can tell which. */
export function throwsAgree(instrument: InstrumentId, values: readonly number[]): boolean[] {
  const { throws } = instrumentOf(instrument);
  if (throws === undefined || values.length < 3) return values.map(() => true);
  const logs = values.map(Math.log);
  const sum = logs.reduce((all, x) => all + x, 0);
  // Off the mean of the others, whose scatter adds to its own.
  const others = values.length - 1;
  const off = logs.map((x) => Math.abs(x - (sum - x) / others));
  const most = Math.max(...off);
  const limit = FAR * throws.deviation * Math.sqrt(1 + 1 / others);
  return off.map((o) => o < most || o <= limit);
}

/** The throws that agree; of a row that is not thrown everything. */
export function soundValues(instrument: InstrumentId, values: readonly number[]): readonly number[] {
  const agree = throwsAgree(instrument, values);
  return values.filter((_, i) => agree[i]!);
}

/** Throws still to be made before the middle one counts; none of a row that is not thrown. */
export function throwsLeft({ throws = 0 }: { readonly throws?: number }, made: number): number {
  return Math.max(0, throws - made);
}

/** What counts of the values of a row: of throws that agree the middle one, so that one gone wrong has no say; of tips their mean. */
export function countedOf(instrument: InstrumentId, values: readonly number[]): number {
  if (instrumentOf(instrument).throws === undefined)
    return values.reduce((sum, v) => sum + v, 0) / values.length;
  const sorted = [...soundValues(instrument, values)].sort((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1]!, sorted[sorted.length >> 1]!];
  return (low + high) / 2;
}

/**
 * Deviation of what counts of a row, of the instrument alone: what differs from one throw to the next shrinks with every throw,
 * what is common to all of them does not.
 *
 * @param made how many values count
 * @returns of its logarithm, or in SI where the instrument reads through nought
 */
export function scatterOf(instrument: InstrumentId, made: number): number {
  const { deviation, throws } = instrumentOf(instrument);
  if (throws === undefined) return deviation;
  const share = MIDDLE[Math.min(made, MIDDLE.length) - 1] ?? 1;
  return Math.sqrt(deviation ** 2 - (1 - share ** 2) * throws.deviation ** 2);
}

/** The window of a row of which only so many throws were made: wider than that of all. */
export function windowAfter(
  row: {
    readonly instrument: InstrumentId;
    readonly throws?: number;
    readonly expected: number;
    readonly low: number;
    readonly high: number;
    readonly deviation: number;
  },
  made: number,
): { readonly low: number; readonly high: number; readonly deviation: number } {
  if (throwsLeft(row, made) === 0) return row;
  const { instrument, throws = 1, expected } = row;
  const deviation = Math.sqrt(
    row.deviation ** 2 - scatterOf(instrument, throws) ** 2 + scatterOf(instrument, made) ** 2,
  );
  const wide = Math.exp(NINETY_FIVE * deviation);
  return { low: expected / wide, high: expected * wide, deviation };
}
