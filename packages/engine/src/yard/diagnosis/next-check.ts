import type { FaultModel } from './fault-model.ts';
import { canBeRead, looksOf, questionOf, type Check } from './first-round.ts';
import { yesWith, type LookId } from './looks.data.ts';
import type { TakenReadings } from '../readings-document.ts';
import type { Weighed } from './diagnose.ts';

/** A check that is worth doing next. */
export type NextCheck = Check & {
  /** How much it is expected to tell of the cause [bit]. */
  readonly bits: number;
  /** Share of what is still open about the cause that it is expected to settle [-]. */
  readonly settles: number;
};

/** Points of the even grid on which a reading's distribution is summed. */
const GRID = 96;
/** Its reach on either side, in deviations. */
const REACH = 4;
/** A check that tells less is not worth the walk [bit]. */
const LEAST_BITS = 0.02;

/** Checks not done yet, most telling first: each by the information that it is expected to bring about the cause. */
export function nextChecks(fault: FaultModel, weighed: Weighed, taken: TakenReadings): NextCheck[] {
  const { model } = fault;
  const done = new Set((taken.document.looks ?? []).map((l) => l.id));
  const open = doubt(weighed.suspects.map((s) => s.probability));
  const worth = (bits: number) => ({ bits, settles: Math.min(1, bits / open) });
  const readings = model.rows.flatMap((row, r): NextCheck[] =>
    weighed.read.has(r) || !canBeRead(fault, r)
      ? []
      : [{ reading: row.id, ...worth(readingBits(weighed, r)) }],
  );
  const looks = looksOf(fault).flatMap((look): NextCheck[] =>
    done.has(look)
      ? []
      : [{ look, question: questionOf(look, model.rig), ...worth(lookBits(weighed, look)) }],
  );
  return [...readings, ...looks].filter((c) => c.bits >= LEAST_BITS).sort((a, b) => b.bits - a.bits);
}

function lookBits({ suspects }: Weighed, look: LookId): number {
  const yes = suspects.map(({ fault }) => yesWith(look, fault));
  const share = suspects.reduce((sum, s, i) => sum + s.probability * yes[i]!, 0);
  const left = suspects.reduce((sum, s, i) => sum + s.probability * doubt([yes[i]!, 1 - yes[i]!]), 0);
  return doubt([share, 1 - share]) - left;
}

/** Entropy of a choice [bit]. */
function doubt(shares: readonly number[]): number {
  return shares.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

/** Information that one reading is expected to bring about the suspects, by the mixture of what each fault expects of it. */
function readingBits({ cells, suspects }: Weighed, row: number): number {
  const told = cells
    .filter((c) => c.probability > 1e-4)
    .map((c) => ({ ...c.expect(row), suspect: c.suspect, probability: c.probability }));
  const low = Math.min(...told.map((t) => t.mean - REACH * Math.sqrt(t.variance)));
  const high = Math.max(...told.map((t) => t.mean + REACH * Math.sqrt(t.variance)));
  const least = Math.min(...told.map((t) => Math.sqrt(t.variance)));
  const count = Math.min(600, Math.max(GRID, Math.ceil((2 * (high - low)) / least)));
  const step = (high - low) / count;
  const mixed = new Float64Array(count);
  const bySuspect = suspects.map(() => new Float64Array(count));
  for (const { mean, variance, suspect, probability } of told) {
    const scale = (probability * step) / Math.sqrt(2 * Math.PI * variance);
    for (let i = 0; i < count; i++) {
      const off = low + (i + 0.5) * step - mean;
      const p = scale * Math.exp((-off * off) / (2 * variance));
      mixed[i]! += p;
      bySuspect[suspect]![i]! += p;
    }
  }
  let bits = 0;
  bySuspect.forEach((own, s) => {
    const { probability } = suspects[s]!;
    own.forEach((p, i) => {
      if (p > 1e-12) bits += p * Math.log2(p / (probability * mixed[i]!));
    });
  });
  return Math.max(0, bits);
}
