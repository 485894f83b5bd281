import { outputByTank, workingDay, type DayInput } from '../../physics/index.ts';
import { compared, unknown, type Figure, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { dayInputOf, type DayMade } from './day-input.ts';
import { daySteps } from './day-working.ts';

type DayResult = ReturnType<typeof workingDay>;

/** The simulated day of a rig, as papers and curves show it. */
export interface DayProof {
  readonly duty: string;
  /** What is counted. */
  readonly unit: string;
  /** The day is told in ground done, since units are only acres of it. */
  readonly byArea: boolean;
  readonly input: DayInput;
  readonly result: DayResult;
  /** Start values that stand in for what nobody said. */
  readonly assumed: readonly string[];
  /** The same day with other tanks; absent when not asked for. */
  readonly tanks?: {
    readonly sizes: readonly number[];
    readonly units: readonly number[];
    readonly masses: readonly number[];
    /** Smallest tank within 1 % of the best [m3]. */
    readonly paying: number;
    readonly largerHelps: boolean;
  };
}

const METHOD = 'simulated working day: fill, mix, drive, set out, spray, take up, move, refill, flush';
const SOURCE =
  'balance of time and liquid; times that are not given are start values (common practice, no source)';
/** Tanks that are tried, as shares of the rig's own. */
const TANK_SHARES = [0.5, 0.75, 1, 1.5, 2, 3];

/** Runs the day; a day that cannot be told gives the reason. */
export function dayOf(context: ProofContext, curves: boolean): DayProof | { readonly reason: string } {
  const made = dayInputOf(context);
  if (made === undefined) return { reason: 'the duty that fills the day sprays nothing' };
  try {
    const result = workingDay(made.input);
    const { input, unit, byArea, assumed, proven } = made;
    return {
      duty: proven.duty.id,
      unit,
      byArea,
      input,
      result,
      assumed,
      ...(curves ? { tanks: tankCurve(made) } : {}),
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { reason: error.message };
  }
}

function tankCurve({ input }: DayMade): NonNullable<DayProof['tanks']> {
  const sizes = TANK_SHARES.map((share) => Math.min(100, share * input.tank)).filter(
    (tank) => tank >= 0.001 && tank > (input.unusable ?? 0),
  );
  const { units, masses, paying } = outputByTank({ day: input, tanks: sizes });
  const own = units[sizes.indexOf(Math.min(100, input.tank))] ?? 0;
  return { sizes, units, masses, paying, largerHelps: Math.max(...units) * 0.99 > own };
}

/** Does the day's work; and whether a larger tank would do more. */
export function dayPromises(
  context: ProofContext,
  day: DayProof | { readonly reason: string },
): RigPromise[] {
  const { units, area } = context.rig.brief.day ?? {};
  const told = {
    id: 'day:work',
    kind: 'day' as const,
    sentence: "Does the day's work",
    method: METHOD,
    source: SOURCE,
  };
  if ('reason' in day) return [unknown({ ...told, cause: day.reason })];
  const { result, unit } = day;
  const working = [...daySteps(day), ...day.assumed.map((text) => ({ text: `assumed: ${text}` }))];
  const cause = `${done(context, day, result.units)} and ${result.fills} ${result.fills === 1 ? 'fill' : 'fills'} in ${say(context, day.input.dayLength, 'time')}, ${endOf(result.limitedBy)}${tankWords(context, day)}`;
  if (units === undefined && area === undefined)
    return [
      unknown({
        ...told,
        duty: day.duty,
        cause: `say how much must be done in a day: it does ${cause}`,
        working,
      }),
    ];
  const out: RigPromise[] = [];
  const promise = (id: string, sentence: string, asked: Figure, has: Figure) =>
    compared(
      { ...told, id, sentence, duty: day.duty, cause, working, items: ['tank'] },
      asked,
      has,
      'at-least',
    );
  if (units !== undefined)
    out.push(
      promise(
        'day:work',
        `Does ${count(units)} ${plural(unit, units)} in a day`,
        { value: units, dimension: 'count' },
        { value: wholeUnits(result.units), dimension: 'count' },
      ),
    );
  if (area !== undefined)
    out.push(
      promise(
        'day:area',
        `Treats ${say(context, area, 'area')} in a day`,
        { value: area, dimension: 'area' },
        { value: result.area, dimension: 'area' },
      ),
    );
  return out;
}

/** A unit that is begun is not done. */
export function wholeUnits(units: number): number {
  return Math.floor(units + 1e-9);
}

function endOf(limitedBy: DayResult['limitedBy']): string {
  return { time: 'ended by the clock', work: 'ended when all was done', battery: 'ended by a flat battery' }[
    limitedBy
  ];
}

function tankWords(context: ProofContext, day: DayProof): string {
  const { tanks, input } = day;
  if (tanks === undefined) return '';
  if (tanks.largerHelps) {
    const more = tanks.units[tanks.sizes.indexOf(tanks.paying)] ?? 0;
    return `; a tank of ${say(context, tanks.paying, 'volume')} would do ${done(context, day, more)}`;
  }
  return tanks.paying < input.tank * 0.999
    ? `; a larger tank does no more, ${say(context, tanks.paying, 'volume')} would be enough`
    : '; a larger tank does no more';
}

/** So many units, or the ground they stand for. */
function done(context: ProofContext, { byArea, unit, input }: DayProof, units: number): string {
  return byArea ? say(context, units * input.unitArea, 'area') : `${count(units)} ${plural(unit, units)}`;
}

function count(value: number): string {
  return value >= 20 ? String(Math.floor(value)) : String(Math.floor(value * 10) / 10);
}

function plural(unit: string, value: number): string {
  if (value === 1) return unit;
  const [head = unit, ...rest] = unit.split(' ');
  return [head.endsWith('s') ? head : `${head}s`, ...rest].join(' ');
}
