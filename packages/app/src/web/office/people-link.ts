import type { Me } from '../frame/me.ts';
import { got, gotFor } from './got.ts';

/** What people do in a shop, as they read it. */
export const ROLES = {
  owner: 'owner',
  builder: 'builder',
  'shop-hand': 'shop hand',
  support: 'support',
} as const;

export interface PersonKept {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  /** Browsers where they are signed in. */
  readonly signedIn: number;
  readonly hasPassword: boolean;
}

/** An address at which somebody chooses a password, once. */
export interface PasswordLink {
  readonly path: string;
  readonly expiresAt: string;
}

export const me = () => got<Me>('api/me');

export const everybody = () => got<{ people: readonly PersonKept[] }>('api/people');

export const addPerson = (person: { name: string; email: string; role: string }) =>
  gotFor<{ link: PasswordLink }>('api/people', person);

export const newLink = (id: string) =>
  got<PasswordLink>(`api/people/${encodeURIComponent(id)}/password-link`, { method: 'POST' });

export const giveRole = (id: string, role: string) =>
  gotFor<unknown>(`api/people/${encodeURIComponent(id)}/role`, { role });

export const signOut = (id: string) =>
  got<unknown>(`api/people/${encodeURIComponent(id)}/sign-out`, { method: 'POST' });

export const takeOut = (id: string) =>
  got<unknown>(`api/people/${encodeURIComponent(id)}`, { method: 'DELETE' });

/** A line of the book of who did what. */
export interface Doing {
  readonly id: string;
  readonly at: string;
  readonly who: string;
  readonly email: string;
  readonly role: string;
  readonly did: string;
  readonly aboutKind: string;
  readonly aboutId: string;
  readonly what: string;
}

export const doings = (asked: Readonly<Record<string, string>>) =>
  got<{ doings: readonly Doing[]; next?: string }>(`api/doings?${new URLSearchParams(asked)}`);
