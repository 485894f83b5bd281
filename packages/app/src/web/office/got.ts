import { askServer, sent, type Problem } from '../frame/ask.ts';

/** A field that was refused; of a table also where it stands. */
export interface Refused {
  readonly field: string;
  readonly message: string;
  readonly line?: number;
  readonly column?: number;
}

/** What was answered, or in words why not. */
export type Got<T> =
  | { readonly value: T }
  | {
      readonly why: string;
      readonly problems: readonly Refused[];
      /** How many more fields were refused than are named. */
      readonly more?: number;
    };

const AWAY = 'The server cannot be reached. Try again.';
const NOTHING = 'The records cannot be reached; nothing was changed. Try again.';
const MAY_BE_DONE =
  'No answer came from the server. It may have been done all the same: load the page again and look before you do it once more.';

/** Longest wait for what is made of many proofs or papers, or goes through a mail server [ms]. */
export const LONG = 90_000;

/** Asks a route of the server; a refusal comes in its words. */
export async function got<T>(path: string, init?: RequestInit, patience?: number): Promise<Got<T>> {
  const answer = await askServer<T>(path, init, patience);
  if (answer.is === 'done') return { value: answer.value };
  if (answer.is === 'away') {
    const why = init?.method === undefined ? AWAY : answer.mayBeDone === true ? MAY_BE_DONE : NOTHING;
    return { why, problems: [] };
  }
  if (answer.is === 'unchanged') return { why: AWAY, problems: [] };
  const { problems = [], more = 0 } = answer.problem as Problem & {
    readonly problems?: readonly Refused[];
    readonly more?: number;
  };
  return { why: answer.why, problems, more };
}

/** The same with a document that is sent along. */
export function gotFor<T>(path: string, body: unknown, patience?: number): Promise<Got<T>> {
  return got<T>(path, sent(body), patience);
}
