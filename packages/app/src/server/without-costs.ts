import type { Context, MiddlewareHandler } from 'hono';
import { SELLERS } from './role-table.ts';

/** Fields that tell what things cost the shop, or by which rule it prices: only those who sell are told. */
const HIDDEN: ReadonlySet<unknown> = new Set([
  'costCents',
  'costCentsPerHour',
  'labourCostCentsPerHour',
  'pricing',
]);

/** Whether costs and margins are told to whoever asks; they are where one person works alone. */
export function seesCosts(c: Context): boolean {
  const role = c.get('person')?.role;
  return role === undefined || SELLERS.includes(role);
}

/** Takes costs and rules of price out of every document that goes to somebody who does not sell, whichever route sends it. */
export function costsForSellers(): MiddlewareHandler {
  return async (c, next) => {
    await next();
    // Two people at one browser are told different things under one address.
    if (c.get('person') !== undefined) c.header('Vary', 'Cookie', { append: true });
    if (seesCosts(c) || !/\bjson\b/.test(c.res.headers.get('Content-Type') ?? '')) return;
    const told: unknown = await c.res.json();
    c.res = new Response(JSON.stringify(withoutCosts(told)), c.res);
  };
}

/** A document without costs and rules of price, edits of them included; the same in all else. */
export function withoutCosts<T>(document: T): T {
  return stripped(document) as T;
}

function stripped(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((entry) => !isHiddenPut(entry)).map(stripped);
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).filter(([name]) => !HIDDEN.has(name));
  const bare = Object.fromEntries(fields.map(([name, field]) => [name, stripped(field)]));
  return isHiddenEdit(value) ? { ...bare, about: 'Prices' } : bare;
}

/** A put by path that sets one of the fields: `pricing.price`, `ownParts[0].part.costCents`. */
function isHiddenPut(entry: unknown): boolean {
  const { path } = (entry ?? {}) as { path?: unknown };
  return Array.isArray(path) && path.some((step) => HIDDEN.has(step));
}

/** What an edit says of itself may tell what it set. */
function isHiddenEdit(value: object): boolean {
  const { about, puts } = value as { about?: unknown; puts?: unknown };
  return about !== undefined && Array.isArray(puts) && puts.some(isHiddenPut);
}
