import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import { problem } from './problem.ts';
import { isSecure, type ReachedBy } from './reached-by.ts';

/** The names of this machine as it calls itself. */
const OWN_NAMES: readonly string[] = ['127.0.0.1', 'localhost', '[::1]'];

/**
 * Only pages that this server itself served may ask: a page of another address that runs in the same browser could
 * otherwise read and change the records, by a form or by a name that it lets point at this machine.
 */
export function ownPagesOnly(more: readonly string[], { origin: outside }: ReachedBy): MiddlewareHandler {
  const names = new Set([...OWN_NAMES, ...more]);
  if (outside !== undefined) names.add(new URL(outside).hostname);
  return async (c, next) => {
    const { hostname, origin } = new URL(c.req.url);
    const from = c.req.header('Origin');
    const site = c.req.header('Sec-Fetch-Site');
    const reads = c.req.method === 'GET' || c.req.method === 'HEAD';
    const foreign =
      (from !== undefined && from !== origin && from !== outside) ||
      site === 'cross-site' ||
      site === 'same-site';
    if (!names.has(hostname) || (foreign && !reads))
      return problem(c, 'foreign-page', 'only pages served by this server may ask it');
    return next();
  };
}

/** How long a browser asks by TLS alone once it did [s]. */
const TLS_ONLY = 180 * 24 * 3600;

export function safeHeaders(reached: ReachedBy): MiddlewareHandler {
  return secureHeaders({
    // Said in clear it would mean nothing; where others on the host's name are not served by us it would bind them.
    strictTransportSecurity: isSecure(reached) ? `max-age=${TLS_ONLY}` : false,
    // Without a referrer of its own, a form of the sign-in page would be sent with the origin 'null'.
    referrerPolicy: 'same-origin',
    contentSecurityPolicy: {
      defaultSrc: ["'self'"],
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", 'data:'],
      // A handbook for a telephone carries its faces inside.
      fontSrc: ["'self'", 'data:'],
      objectSrc: ["'none'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
    },
  });
}
