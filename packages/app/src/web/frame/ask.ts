/** What the server answered, or why it did not. */
type Answered<T> =
  | { readonly is: 'done'; readonly value: T }
  | { readonly is: 'unchanged' }
  /**
   * No connection, or the server cannot reach its records: worth asking again. `mayBeDone` where a change was asked for
   * and no answer came: nobody knows whether it was made.
   */
  | { readonly is: 'away'; readonly mayBeDone?: true }
  | { readonly is: 'refused'; readonly why: string; readonly problem: Problem };

/** A refusal as the server words it; docs/problems.md explains the codes. */
export interface Problem {
  readonly code?: string;
  readonly title?: string;
  readonly detail?: string;
  /** What is wrong with single fields that were sent. */
  readonly problems?: readonly { readonly field: string; readonly message: string }[];
}

/** Longest wait for an answer [ms]. */
const PATIENCE = 10_000;

/** Asks a route of the server. @param patience longest wait for an answer [ms] */
export async function askServer<T>(
  path: string,
  init: RequestInit = {},
  patience = PATIENCE,
): Promise<Answered<T>> {
  let response: Response;
  let body: unknown;
  try {
    response = await fetch(new URL(path, document.baseURI), {
      ...init,
      signal: AbortSignal.timeout(patience),
    });
    body = response.status === 304 ? undefined : await response.json();
  } catch {
    return init.method === undefined ? { is: 'away' } : { is: 'away', mayBeDone: true };
  }
  if (response.status === 304) return { is: 'unchanged' };
  if (response.ok) return { is: 'done', value: body as T };
  if (response.status === 503) return { is: 'away' };
  const problem = body as Problem;
  return {
    is: 'refused',
    why: problem.detail ?? problem.title ?? `the server answered ${response.status}`,
    problem,
  };
}

/** A request that carries a document. */
export function sent(body: unknown, method: 'POST' | 'PUT' | 'PATCH' = 'POST'): RequestInit {
  return { method, headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) };
}
