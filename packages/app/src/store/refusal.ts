/** Why the records refuse something that was asked of them. */
export type RefusalCode =
  | 'no-such-job'
  | 'job-exists'
  | 'stale-version'
  | 'bad-change'
  | 'no-such-catalogue'
  | 'no-such-part'
  | 'part-exists'
  | 'stale-part'
  | 'bad-movement'
  | 'bad-entry'
  | 'bad-part'
  | 'promise-broken'
  | 'unreadable-rig'
  | 'no-such-version'
  | 'no-such-machine'
  | 'machine-exists'
  | 'no-such-person'
  | 'person-exists'
  | 'last-owner'
  | 'link-used'
  | 'no-such-quote'
  | 'quote-closed'
  | 'too-many';

/** Nothing was changed; `details` is what the asker needs to go on. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly details: Readonly<Record<string, unknown>>;

  constructor(code: RefusalCode, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(message);
    this.code = code;
    this.details = details;
  }
}
