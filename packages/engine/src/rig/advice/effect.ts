import type { Figure, PromiseKind, PromiseState, RigPromise } from '../promise.ts';
import type { Proof } from '../proof/prove.ts';

/** How a promise stands in one proof. */
export type Standing = Pick<RigPromise, 'state' | 'sentence' | 'cause' | 'asked' | 'has' | 'margin'>;

/** A promise before and after a change; absent on the side where there is no such promise. */
export interface PromiseChange {
  readonly id: string;
  readonly kind: PromiseKind;
  readonly duty?: string;
  readonly before?: Standing;
  readonly after?: Standing;
}

/** Reach and flow of one duty before and after a change: what the work of the rig is. */
export interface DutyChange {
  readonly duty: string;
  /** Promised reach where there is a target [m]. */
  readonly reach: readonly [before: number | undefined, after: number | undefined];
  /** Flow of the first open outlet [m3/s]. */
  readonly flow: readonly [before: number | undefined, after: number | undefined];
}

/** What a change does to a rig, from the whole proof before it and the whole proof after it. */
export interface Effect {
  /** Changes of price, of dry mass [kg] and of the working days until it is ready. */
  readonly priceCents: number;
  readonly mass: number;
  readonly days: number;
  readonly duties: readonly DutyChange[];
  /** Every promise whose state or figure is another. */
  readonly promises: readonly PromiseChange[];
  /** Those that are broken after it and were not before. */
  readonly breaks: readonly PromiseChange[];
  /** Those that nobody can judge after it and that were kept before. */
  readonly doubts: readonly PromiseChange[];
  /** Those that were broken before it and are kept after it. */
  readonly mends: readonly PromiseChange[];
  /** Promises of the changed rig by state, and the worst of them. */
  readonly counts: Proof['counts'];
  readonly worst: PromiseState;
}

export function effectOf(before: Proof, after: Proof): Effect {
  const was = new Map(before.promises.map((p) => [p.id, p]));
  const is = new Map(after.promises.map((p) => [p.id, p]));
  const promises = [...new Set([...was.keys(), ...is.keys()])].flatMap((id): PromiseChange[] => {
    const [a, b] = [was.get(id), is.get(id)];
    if (a?.state === b?.state && sameFigure(a?.has, b?.has) && sameFigure(a?.asked, b?.asked)) return [];
    const { kind, duty } = (b ?? a)!;
    return [
      {
        id,
        kind,
        ...(duty === undefined ? {} : { duty }),
        ...(a === undefined ? {} : { before: standing(a) }),
        ...(b === undefined ? {} : { after: standing(b) }),
      },
    ];
  });
  const dutiesAfter = new Map(after.duties.map((d) => [d.id, d]));
  return {
    priceCents: after.bill.priceCents - before.bill.priceCents,
    mass: after.bill.dryMass - before.bill.dryMass,
    days: after.bill.readyInDays - before.bill.readyInDays,
    duties: before.duties.map((d) => {
      const then = dutiesAfter.get(d.id);
      return {
        duty: d.id,
        reach: [d.reach?.promised, then?.reach?.promised],
        flow: [d.open.outlets[0]?.flow, then?.open.outlets[0]?.flow],
      };
    }),
    promises,
    breaks: promises.filter((p) => p.after?.state === 'broken' && p.before?.state !== 'broken'),
    doubts: promises.filter((p) => p.after?.state === 'unknown' && isGood(p.before?.state ?? 'kept')),
    mends: promises.filter((p) => p.before?.state === 'broken' && mends(p, after)),
    counts: after.counts,
    worst: worstOf(after.counts),
  };
}

/**
 * Whether a promise that was broken or thin is kept after a change. One that is gone, such as a finding on a part that
 * has been taken out, is mended when nothing of its kind is broken or in doubt.
 */
function mends({ id, kind, after: then }: PromiseChange, after: Proof): boolean {
  if (then !== undefined) return isGood(then.state);
  return after.promises.every((p) => p.id === id || p.kind !== kind || isGood(p.state));
}

function isGood(state: PromiseState): boolean {
  return state === 'kept' || state === 'thin';
}

function worstOf(counts: Proof['counts']): PromiseState {
  return (['broken', 'thin', 'unknown'] as const).find((s) => counts[s] > 0) ?? 'kept';
}

function sameFigure(a: Figure | undefined, b: Figure | undefined): boolean {
  return a?.value === b?.value;
}

function standing({ state, sentence, cause, asked, has, margin }: RigPromise): Standing {
  return {
    state,
    sentence,
    cause,
    ...(asked === undefined ? {} : { asked }),
    ...(has === undefined ? {} : { has }),
    ...(margin === undefined ? {} : { margin }),
  };
}
