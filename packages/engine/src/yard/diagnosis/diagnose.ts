import { inverseOf, rootOf, times, zeros } from '../learning/symmetric.ts';
import { instrumentOf } from '../instruments.data.ts';
import type { TakenReadings } from '../readings-document.ts';
import { tapeSays } from '../tape-wind.ts';
import { atOdds, countedOf, scatterOf, soundValues } from '../repeats.ts';
import { scaled } from '../yard-model.ts';
import type { FaultModel, FaultState } from './fault-model.ts';
import { faultOf, type Fault, type FaultId } from './faults.data.ts';
import { yesWith } from './looks.data.ts';

/** Why a rig does what its readings say, with its probability. */
export interface Suspect {
  /** `fault:item`; `nothing-wrong`, or `something-else` that is not among the known faults. */
  readonly id: string;
  readonly name: string;
  readonly probability: number;
  readonly fault?: FaultId;
  readonly item?: string;
  readonly send?: string;
  readonly mend?: string;
}

/** What readings and looks leave of every fault and size; the ground for the next check. */
export interface Weighed {
  readonly suspects: readonly Suspect[];
  readonly cells: readonly Cell[];
  /** Rows that were read. */
  readonly read: ReadonlySet<number>;
}

/** One fault of one size in the light of the readings. */
interface Cell {
  readonly suspect: number;
  readonly probability: number;
  readonly state: FaultState;
  readonly fault: FaultId | undefined;
  /** Expected value and variance of a row not read yet. */
  readonly expect: (row: number) => { readonly mean: number; readonly variance: number };
}

/** Calls where nothing is wrong, and where it is something else, against the rates of the faults (which add to about 130): judgement. */
const NOTHING_RATE = 6;
const ELSE_RATE = 4;
/** How far something else may move a reading: its logarithm, or in pascal where the gauge reads through nought. Judgement. */
const ELSE_SPREAD = { log: 0.3, plain: 15_000 } as const;
/** What the straight law and the fault's likeness leave unsaid of a row: judgement. */
const UNSAID = { log: 0.01, plain: 500 } as const;
/** Tails of a reading that slipped: degrees of freedom of Student's t. */
const FREEDOM = 8;

/** Weighs readings and looks against every fault that the rig can have: Bayes' rule with the tolerances of the parts summed over. */
export function weigh({ model, faults }: FaultModel, taken: TakenReadings): Weighed {
  const at: number[] = [];
  const values: number[] = [];
  const made = new Map<number, number>();
  model.rows.forEach((row, r) => {
    const list = taken.values.get(row.id);
    if (list === undefined || (row.instrument === 'tape-farthest' && !tapeSays(taken.document))) return;
    if (atOdds(row.instrument, list)) return;
    at.push(r);
    made.set(r, soundValues(row.instrument, list).length);
    values.push(scaled(row, countedOf(row.instrument, list)));
  });
  const looks = taken.document.looks ?? [];
  const suspects: Omit<Suspect, 'probability'>[] = [];
  const cells: (Omit<Cell, 'probability'> & { readonly log: number })[] = [];
  const plain = faults[0]!.states[0]!;
  const weighOne = (
    fault: FaultId | undefined,
    rate: number,
    states: readonly FaultState[],
    wide = false,
  ) => {
    const seen = looks.reduce(
      (sum, { id, answer }) => {
        const yes = yesWith(id, fault);
        return sum + Math.log(answer === 'yes' ? yes : 1 - yes);
      },
      Math.log(rate / states.length),
    );
    for (const state of states) {
      const { log, expect } = likelihood(model, state, plain, at, values, made, wide);
      cells.push({
        suspect: suspects.length - 1,
        log: seen + Math.log(state.noticed) + log,
        state,
        fault,
        expect,
      });
    }
  };
  for (const { of, states } of faults) {
    suspects.push(
      of === undefined
        ? { id: 'nothing-wrong', name: 'nothing wrong' }
        : suspectOf(of.id, of.name, of.fault, of.item),
    );
    weighOne(of?.fault, of?.rate ?? NOTHING_RATE, states);
  }
  suspects.push({ id: 'something-else', name: 'something that is not among the known faults' });
  weighOne(undefined, ELSE_RATE, [plain], true);
  const most = Math.max(...cells.map((c) => c.log));
  const total = cells.reduce((sum, c) => sum + Math.exp(c.log - most), 0);
  const told = cells.map(({ log, ...c }): Cell => ({ ...c, probability: Math.exp(log - most) / total }));
  return {
    suspects: suspects.map((s, i) => ({
      ...s,
      probability: told.reduce((sum, c) => sum + (c.suspect === i ? c.probability : 0), 0),
    })),
    cells: told,
    read: new Set(at),
  };
}

function suspectOf(id: string, name: string, fault: FaultId, item: string): Omit<Suspect, 'probability'> {
  const { send, mend }: Fault = faultOf(fault);
  return { id, name, fault, item, mend, ...(send === undefined ? {} : { send }) };
}

/** Logarithm of the likelihood of what was read, and what it lets other rows expect. */
function likelihood(
  model: FaultModel['model'],
  { shown, slope, spread }: FaultState,
  plain: FaultState,
  at: readonly number[],
  values: readonly number[],
  made: ReadonlyMap<number, number>,
  wide: boolean,
): { log: number; expect: Cell['expect'] } {
  const { inputs, rows } = model;
  const width = inputs.length;
  const own = (row: number): number => {
    const { instrument } = rows[row]!;
    // A call asks for one reading.
    const deviation = scatterOf(instrument, made.get(row) ?? 1);
    const sort = instrumentOf(instrument).plain === true ? 'plain' : 'log';
    const lost = Number.isFinite(shown[row]!) ? 0 : (2 * ELSE_SPREAD[sort]) ** 2;
    return deviation ** 2 + UNSAID[sort] ** 2 + lost + (wide ? ELSE_SPREAD[sort] ** 2 : 0);
  };
  const together = (a: number, b: number): number => {
    let sum = spread[a]! * spread[b]!;
    for (let k = 0; k < width; k++)
      sum += slope[a * width + k]! * slope[b * width + k]! * inputs[k]!.deviation ** 2;
    return sum;
  };
  // A row that has no steady value with this fault is expected where any is, but widely.
  const middle = (row: number): number => (Number.isFinite(shown[row]!) ? shown[row]! : plain.shown[row]!);
  const n = at.length;
  const covariance = zeros(n, n);
  at.forEach((a, i) => at.forEach((b, j) => (covariance[i]![j] = together(a, b) + (i === j ? own(a) : 0))));
  const inverse = inverseOf(covariance);
  const off = Float64Array.from(values, (v, i) =>
    Number.isFinite(shown[at[i]!]!) ? v - middle(at[i]!) : LOST,
  );
  const pull = times(inverse, off);
  const square = off.reduce((sum, v, i) => sum + v * pull[i]!, 0);
  return {
    log: 0.5 * logDeterminant(inverse) - ((FREEDOM + n) / 2) * Math.log1p(square / FREEDOM),
    expect: (row) => {
      const to = at.map((a) => together(row, a));
      const mean = middle(row) + to.reduce((sum, t, i) => sum + t * pull[i]!, 0);
      const known = to.reduce((sum, t, i) => sum + t * to.reduce((s, u, j) => s + u * inverse[i]![j]!, 0), 0);
      return { mean, variance: Math.max(own(row) / 2, together(row, row) + own(row) - known) };
    },
  };
}

/** How far off a reading counts that the fault leaves without a steady value. */
const LOST = 1;

function logDeterminant(matrix: readonly Float64Array[]): number {
  return 2 * rootOf(matrix).reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
}
