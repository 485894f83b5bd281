import type { Context, MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import type { People, Person } from './people.ts';
import { problem } from './problem.ts';
import { ROLE_TABLE } from './role-table.ts';

declare module 'hono' {
  interface ContextVariableMap {
    person?: Person;
  }
}

/**
 * Lets through what the table of roles allows to whoever is signed in.
 *
 * @param alone while there is nobody in the records, one person works here without signing in: on this machine only
 */
export function byRole(people: People, alone: boolean): MiddlewareHandler {
  return async (c, next) => {
    // The router itself tells which route answers, so that no spelling of an address can slip by the table.
    const route = matchedRoutes(c).find(({ method, path }) => method !== 'ALL' || path !== '/*');
    const allowed = route === undefined ? [] : ROLE_TABLE[`${route.method} ${route.path}`];
    if (allowed === null) return next();
    const person = await people.signedIn(c.req.raw.headers);
    if (person === undefined) {
      if (alone && !(await people.anybody())) return next();
      const page = c.req.method === 'GET' && !/^\/(api|assets)\/|\.json$/.test(c.req.path);
      return page
        ? c.redirect(signInBefore(c.req.path), 303)
        : problem(c, 'sign-in-first', 'sign in first, at /sign-in');
    }
    if (route !== undefined && !allowed?.includes(person.role))
      return problem(c, 'not-allowed', `this is not for a ${person.role.replace('-', ' ')}: ask an owner`);
    c.set('person', person);
    return next();
  };
}

/** Pages of the shop; an address of another kind is never gone on to. */
const PAGE = /^\/[a-z]+(\.html)?$/;

/** Where somebody signs in who asked for a page. */
function signInBefore(path: string): string {
  return PAGE.test(path) ? `/sign-in?to=${encodeURIComponent(path)}` : '/sign-in';
}

/** The page that was asked for before the sign-in; the desk where none was, or none of ours. */
export function pageAsked(to: string | undefined): string {
  return to !== undefined && PAGE.test(to) ? to : '/';
}

/** The name of whoever is signed in; nobody is where one person works alone. */
export function signedName(c: Context): string | undefined {
  return c.get('person')?.name;
}
