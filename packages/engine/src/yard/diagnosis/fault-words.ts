import type { Rig } from '../../rig/index.ts';
import type { Suspect } from './diagnose.ts';
import type { Diagnosis } from './diagnosis.ts';
import type { NextCheck } from './next-check.ts';

/** Above this probability a further check tells nothing that matters. */
const SURE = 0.99;
/** Suspects less likely than this are not worth telling. */
const LEAST_TOLD = 0.005;

/** What the readings say is wrong, as one sentence. */
export function verdictText({ state, suspects }: Diagnosis): string {
  const [first, second] = suspects;
  switch (state) {
    case 'found':
      return `Most likely, ${chanceText(first!)}: ${first!.name}`;
    case 'nothing-wrong':
      return `Nothing wrong by what was read, ${chanceText(first!)}: it reads as a sound rig of these parts does`;
    case 'unknown-cause':
      return `No known fault reads so, ${chanceText(first!)}. Are the readings right, and are the parts those of the list?`;
    case 'cannot-tell':
      return `Cannot tell yet: what was read does not separate ${first!.name} (${chanceText(first!)}) from ${second!.name} (${chanceText(second!)})`;
  }
}

/** How likely a suspect is: "73 in 100"; the ends are not told more finely than they are known. */
export function chanceText({ probability }: Pick<Suspect, 'probability'>): string {
  if (probability > SURE) return 'more than 99 in 100';
  return probability < 0.01 ? 'under 1 in 100' : `${Math.floor(100 * probability)} in 100`;
}

/** What to do about the cause that was found, and what to send out for it. */
interface Remedy {
  readonly mend?: string;
  /** "a new one, for Spray tip 8"; "nothing" where no part is needed. */
  readonly send: string;
  /** Part number of what it is for; absent where nothing is sent. */
  readonly part?: string;
}

/** Undefined unless a cause was found. */
export function remedyOf(rig: Rig, { state, suspects }: Diagnosis): Remedy | undefined {
  if (state !== 'found') return undefined;
  const { item, send, mend } = suspects[0]!;
  const part = rig.items.get(item ?? '')?.part;
  return {
    ...(mend === undefined ? {} : { mend }),
    ...(send === undefined || part === undefined
      ? { send: 'nothing' }
      : { send: `${send}, for ${part.name}`, part: part.id }),
  };
}

/** The likeliest suspects that are worth telling, at most `most` of them. */
export function toldSuspects({ suspects }: Diagnosis, most: number): readonly Suspect[] {
  return suspects.filter((s) => s.probability >= LEAST_TOLD).slice(0, most);
}

/** What of the first round is still open; none when the cause is as good as sure. */
export function toldFirst({ suspects, first }: Diagnosis): Diagnosis['first'] {
  return suspects[0]!.probability > SURE ? [] : first;
}

/** How much of what is open a check is likely to settle, in one word. */
export function worthText({ settles }: Pick<NextCheck, 'settles'>): string {
  if (settles >= 0.6) return 'most';
  if (settles >= 0.3) return 'much';
  return settles >= 0.1 ? 'some' : 'little';
}

/** The most telling checks that are left, at most `most` of them; none when the cause is as good as sure. */
export function toldChecks({ suspects, next }: Diagnosis, most: number): Diagnosis['next'] {
  return suspects[0]!.probability > SURE ? [] : next.slice(0, most);
}
