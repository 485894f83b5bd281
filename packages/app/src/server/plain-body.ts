import type { MiddlewareHandler } from 'hono';
import { problem } from './problem.ts';

/** Levels that a document may be nested; a rig has about ten. */
const DEEPEST = 100;

/**
 * Refuses what no record can hold, before anything reads it: the sign of code 0, which a database does not keep in a text,
 * numbers beyond all bounds, and documents nested so deeply that reading them would take the server's whole stack.
 */
export function plainBody(): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.url.includes('%00')) return problem(c, 'bad-request', 'the address has the sign of code 0');
    if (c.req.header('Content-Type')?.includes('json') === true) {
      const fault = faultIn(await c.req.text());
      if (fault !== undefined) return problem(c, 'bad-request', fault);
    }
    return next();
  };
}

function faultIn(text: string): string | undefined {
  return (
    faultOfSigns(text) ??
    (hasEndlessNumber(text) ? 'a number of the body is too large to be kept' : undefined)
  );
}

/** A number beyond what the program can hold would be kept as nothing at all. */
function hasEndlessNumber(text: string): boolean {
  if (!/\d[eE]\+?\d{3}|\d{309}/.test(text)) return false;
  let found = false;
  try {
    JSON.parse(text, (_, value: unknown) => {
      found ||= value === Infinity || value === -Infinity;
      return value;
    });
  } catch {
    // What is no JSON is refused as such, by whoever reads it.
  }
  return found;
}

function faultOfSigns(text: string): string | undefined {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (quoted) {
      if (sign === '"') quoted = false;
      else if (sign === '\\') {
        if (text.startsWith('u0000', i + 1)) return 'a text of the body has the sign of code 0';
        i++;
      }
    } else if (sign === '"') quoted = true;
    else if (sign === '{' || sign === '[') {
      if (++depth > DEEPEST) return `the body is nested deeper than ${DEEPEST} levels`;
    } else if (sign === '}' || sign === ']') depth--;
  }
  return undefined;
}
