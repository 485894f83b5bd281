import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context } from 'hono';

/** How people outside reach this server: by itself, or through something before it that speaks TLS. */
export interface ReachedBy {
  /** Origin that people type and letters carry, such as https://quotes.shop.example. */
  readonly origin?: string;
  /** This server itself speaks TLS. */
  readonly tls?: boolean;
  /** Header in which whatever stands before this server writes the address that asked; believed only when it is named. */
  readonly clientHeader?: string;
}

/** Origin of this server's pages as others reach them. */
export function originOf(c: Context, { origin }: ReachedBy): string {
  return origin ?? new URL(c.req.url).origin;
}

/** True where every page comes through TLS. */
export function isSecure({ origin, tls }: ReachedBy): boolean {
  return tls === true || origin?.startsWith('https:') === true;
}

/** The address that a request comes from; '' when it was asked within this process. */
export function askerOf(c: Context, { clientHeader }: ReachedBy): string {
  const named = clientHeader === undefined ? undefined : c.req.header(clientHeader);
  // Each one on the way adds at the end: only the last entry was written by our own.
  const last = named?.split(',').at(-1)?.trim();
  if (last !== undefined && last !== '') return last;
  try {
    return getConnInfo(c).remote.address ?? '';
  } catch {
    return '';
  }
}

/**
 * Reads the address that others reach the server at.
 *
 * @throws RangeError when it is no origin
 */
export function readOrigin(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  const bare = url !== undefined && url.pathname === '/' && url.search === '' && url.hash === '';
  if (url === undefined || !bare || !/^https?:$/.test(url.protocol) || url.username !== '')
    throw new RangeError(
      `--public-url is '${text}'; an address without a path such as https://quotes.shop.example was expected`,
    );
  return url.origin;
}
