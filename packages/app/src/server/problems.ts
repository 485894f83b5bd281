import type { ContentfulStatusCode } from 'hono/utils/http-status';

interface ProblemKind {
  readonly status: ContentfulStatusCode;
  readonly title: string;
}

/** Every problem there is. Each has a paragraph of its own in docs/problems.md, and a test that it has. */
export const PROBLEMS = {
  'not-json': { status: 400, title: 'The body is not JSON' },
  'sign-in-first': { status: 401, title: 'Nobody is signed in' },
  'not-allowed': { status: 403, title: 'The role does not allow it' },
  'foreign-page': { status: 403, title: 'Asked by a page of another address' },
  'no-such-page': { status: 404, title: 'There is nothing at this address' },
  'no-such-job': { status: 404, title: 'There is no such job' },
  'no-such-person': { status: 404, title: 'There is nobody of this id' },
  'no-such-quote': { status: 404, title: 'There is no such quote or revision' },
  'no-such-catalogue': { status: 404, title: 'The records have no catalogue' },
  'no-such-part': { status: 404, title: 'There is no such part' },
  'part-exists': { status: 409, title: 'The part is there already' },
  'stale-part': { status: 409, title: 'Somebody else changed the part first' },
  'job-exists': { status: 409, title: 'The job is there already' },
  'no-such-version': { status: 404, title: 'The job has no such version' },
  'no-such-machine': { status: 404, title: 'There is no such machine' },
  'machine-exists': { status: 409, title: 'The serial number is taken' },
  'person-exists': { status: 409, title: 'Somebody has the e-mail address already' },
  'last-owner': { status: 409, title: 'There must be an owner' },
  'stale-version': { status: 409, title: 'Somebody else changed the job first' },
  'link-used': { status: 410, title: 'The address opens no more' },
  'quote-closed': { status: 409, title: 'The quote can no longer be changed' },
  'too-large': { status: 413, title: 'The body is too large' },
  'wrong-type': { status: 415, title: 'The body must be sent as application/json' },
  'bad-request': { status: 422, title: 'A field is wrong' },
  'bad-change': { status: 422, title: 'The change does not fit the job' },
  'bad-movement': { status: 422, title: 'The stock cannot move so' },
  'bad-entry': { status: 422, title: 'The entry cannot be kept' },
  'bad-part': { status: 422, title: 'The part does not fit there' },
  'promise-broken': { status: 422, title: 'The machine would not keep its promises' },
  'unreadable-part': { status: 422, title: 'The part cannot be read' },
  'unreadable-table': { status: 422, title: 'The table cannot be read' },
  'unreadable-shop': { status: 422, title: "The shop's settings cannot be read" },
  'unreadable-rig': { status: 422, title: 'The rig cannot be read' },
  'below-floor': { status: 422, title: 'The price is under what this role may give' },
  'too-many': { status: 429, title: 'Too much at once' },
  'locked-out': { status: 429, title: 'Too many wrong passwords' },
  unexpected: { status: 500, title: 'The server failed' },
  'records-busy': { status: 503, title: 'The records are busy' },
  'records-away': { status: 503, title: 'The records cannot be reached' },
  'records-full': { status: 507, title: 'The records cannot be written' },
} as const satisfies Record<string, ProblemKind>;

export type ProblemCode = keyof typeof PROBLEMS;
