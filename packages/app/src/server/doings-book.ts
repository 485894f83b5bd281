import { AsyncLocalStorage } from 'node:async_hooks';
import { randomBytes } from 'node:crypto';
import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context, MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import { addDoing, type Doing, type Records } from '../store/index.ts';

declare module 'hono' {
  interface ContextVariableMap {
    /** What the request changed, in words, for the book. */
    told?: string;
    /** Who asked and about what, where neither a sign-in nor the address tells. */
    toldAs?: Told;
  }
}

interface Telling {
  readonly doing: (result: unknown) => Doing;
  written: boolean;
}

/** What is known of a line of the book; the rest stays empty. */
export type Told = Partial<Omit<Doing, 'id' | 'at'>>;

const telling = new AsyncLocalStorage<Telling>();
const LONGEST = 500;

/** Says in words what a request changes, before it is saved: the book then tells more than the route. */
export function tell(c: Context, words: string): void {
  c.set('told', words);
}

/** Says who asked and about what: a customer is known by a link, and its address must not stand in the book. */
export function tellAs(c: Context, told: Told): void {
  c.set('toldAs', told);
}

export function doingAt(at: string, told: Told): Doing {
  const { who = '', email = '', role = '', did = '', about_kind = '', about_id = '', what = '' } = told;
  const id = `${at}-${randomBytes(8).toString('hex')}`;
  return { id, at, who, email, role, did, about_kind, about_id, what: what.slice(0, LONGEST) };
}

/**
 * Records whose first save under a changing request writes a line of the book in the same transaction: neither stands
 * without the other.
 */
export function tellingRecords(records: Records): Records {
  return {
    ...records,
    async save(work) {
      const now = telling.getStore();
      if (now === undefined || now.written) return records.save(work);
      const result = await records.save(async (t) => {
        const done = await work(t);
        await addDoing(t, now.doing(done));
        return done;
      });
      now.written = true;
      return result;
    },
  };
}

/** Lets the saves under every changing request tell who asked for them. */
export function tellingDoings(app: OpenAPIHono, now: () => string): MiddlewareHandler {
  let summaries: ReadonlyMap<string, string> | undefined;
  return (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    summaries ??= summariesOf(app);
    const route = matchedRoutes(c).find(({ method, path }) => method !== 'ALL' || path !== '/*');
    const pattern = route?.path ?? '';
    const did = summaries.get(`${c.req.method} ${pattern}`) ?? `${c.req.method} ${pattern}`;
    const doing = (result: unknown) => {
      const { name: who = '', email = '', role = '' } = c.get('person') ?? {};
      const what = c.get('told') ?? '';
      const about = aboutOf(pattern, c.req.path, result);
      return doingAt(now(), { who, email, role, did, ...about, what, ...c.get('toldAs') });
    };
    return telling.run({ doing, written: false }, next);
  };
}

function summariesOf(app: OpenAPIHono): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const definition of app.openAPIRegistry.definitions) {
    if (definition.type !== 'route') continue;
    const { method, path, summary = '' } = definition.route;
    // What follows the first stop is for programs.
    found.set(`${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ':$1')}`, summary.split(/[,;:]/)[0]!);
  }
  return found;
}

/** What a request is about: the first name in its address, or what it made. */
function aboutOf(pattern: string, path: string, result: unknown): Pick<Told, 'about_kind' | 'about_id'> {
  const [steps, names] = [pattern.split('/'), path.split('/')];
  const about_kind = steps[2] ?? '';
  // What opens something is no name: whoever reads the book must not be let in by it.
  if (steps.includes(':token')) return { about_kind: steps[1] ?? '', about_id: '' };
  const place = steps.findIndex((step) => step.startsWith(':'));
  if (place !== -1) return { about_kind, about_id: (names[place] ?? '').slice(0, 100) };
  const made = (result ?? {}) as Readonly<Record<string, unknown>>;
  const id = made.id ?? made.serial ?? made.number ?? '';
  return { about_kind, about_id: typeof id === 'string' || typeof id === 'number' ? String(id) : '' };
}
