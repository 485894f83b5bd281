import { askServer, sent, type Problem } from '../frame/ask.ts';

/** A field that was refused; of a table also where it stands. */
export interface Refused {
  readonly field: string;
  readonly message: string;
  readonly line?: number;
  readonly column?: number;
}

/** What was answered, or in words why not. */
export type Got<T> = { readonly value: T } | { readonly why: string; readonly problems: readonly Refused[] };

const AWAY = 'The server cannot be reached; nothing was changed. Try again.';

/** Asks a route of the server; a refusal comes in its words. */
export async function got<T>(path: string, init?: RequestInit): Promise<Got<T>> {
  const answer = await askServer<T>(path, init);
  if (answer.is === 'done') return { value: answer.value };
  if (answer.is !== 'refused') return { why: AWAY, problems: [] };
  const { problems = [] } = answer.problem as Problem & { problems?: readonly Refused[] };
  return { why: answer.why, problems };
}

/** The same with a document that is sent along. */
export function gotFor<T>(path: string, body: unknown): Promise<Got<T>> {
  return got<T>(path, sent(body));
}
