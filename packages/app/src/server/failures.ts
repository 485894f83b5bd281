import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { Refusal } from '../store/index.ts';
import { problem } from './problem.ts';
import { PROBLEMS, type ProblemCode } from './problems.ts';

/** Turns whatever a route threw into a problem. What nobody foresaw is reported, and tells the asker nothing else. */
export function failed(error: unknown, c: Context, report: (error: unknown) => void): Response {
  if (error instanceof Refusal) return problem(c, error.code, error.message, error.details);
  if (error instanceof HTTPException) {
    const code = BY_STATUS[error.status];
    if (code !== undefined) return problem(c, code, PROBLEMS[code].title);
  }
  report(error);
  const code = databaseTrouble(error) ?? 'unexpected';
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
  if (typeof code !== 'string') return undefined;
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return 'records-busy';
  return /^SQLITE_(FULL|IOERR|READONLY|CANTOPEN)/.test(code) ? 'records-full' : undefined;
}
