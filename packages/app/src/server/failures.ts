import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { Refusal } from '../store/index.ts';
import { fieldProblem, problem, RefusedFields } from './problem.ts';
import { PROBLEMS, type ProblemCode } from './problems.ts';

/** Turns whatever a route threw into a problem. What nobody foresaw is reported, and tells the asker nothing else. */
export function failed(error: unknown, c: Context, report: (error: unknown) => void): Response {
  if (error instanceof Refusal) return problem(c, error.code, error.message, error.details);
  if (error instanceof RefusedFields) return fieldProblem(c, error.code, error.problems);
  if (error instanceof HTTPException) {
    const code = BY_STATUS[error.status];
    if (code !== undefined) return problem(c, code, PROBLEMS[code].title);
  }
  const trouble = databaseTrouble(error);
  // Of trouble that is known the message is enough; where it arose helps nobody.
  report(trouble === undefined ? error : `${PROBLEMS[trouble].title}: ${(error as Error).message}`);
  const code = trouble ?? 'unexpected';
  return problem(c, code, `${PROBLEMS[code].title}; nothing was changed`);
}

const BY_STATUS: Readonly<Record<number, ProblemCode>> = {
  400: 'not-json',
  404: 'no-such-page',
  413: 'too-large',
  415: 'wrong-type',
};

function databaseTrouble(error: unknown): ProblemCode | undefined {
  const code = (error as { code?: unknown } | null)?.code;
  if (
    error instanceof Error &&
    /^Connection terminated|timeout exceeded when trying to connect|is not queryable/.test(error.message)
  )
    return 'records-away';
  if (typeof code !== 'string') return undefined;
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return 'records-busy';
  // PostgreSQL: connection lost, server ending or starting, too many connections.
  if (/^(08|57P|53300)|^E(CONNREFUSED|CONNRESET|PIPE|TIMEDOUT)$/.test(code)) return 'records-away';
  return /^SQLITE_(FULL|IOERR|READONLY|CANTOPEN)/.test(code) ? 'records-full' : undefined;
}
