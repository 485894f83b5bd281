/** A person. These columns, and those of passwords and sessions, are named as the library for sign-in asks. */
export interface PersonRow {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly emailVerified: number;
  role: string;
  readonly createdAt: string;
  updatedAt: string;
}

export interface PasswordRow {
  readonly id: string;
  readonly accountId: string;
  readonly providerId: string;
  readonly userId: string;
  /** Hashed. */
  password: string | null;
  readonly createdAt: string;
  updatedAt: string;
}

export interface SessionRow {
  readonly id: string;
  readonly userId: string;
  /** What the signed cookie carries. */
  readonly token: string;
  expiresAt: string;
}

/** A line of the book of who did what. Lines are added and never changed. */
export interface DoingRow {
  /** Moment and a few letters: in the order of its time, and like no other. */
  readonly id: string;
  readonly at: string;
  /** Name as it was then; empty where one person works alone. */
  readonly who: string;
  readonly email: string;
  readonly role: string;
  /** What the request was for, in the words of its description. */
  readonly did: string;
  /** What it was about: jobs, quotes, machines, parts, people. */
  readonly about_kind: string;
  readonly about_id: string;
  /** What changed, in words, where it is known. */
  readonly what: string;
}

/** What sessions are signed with, so that every process on the records knows them. */
export interface SecretRow {
  readonly name: string;
  readonly secret: string;
}

/** How often somebody asked since a moment. */
export interface AskRow {
  /** SHA-256 of what is counted and of who asks. */
  readonly asker: string;
  count: number;
  since: string;
  /** When it is forgotten. */
  until: string;
}

/** Wrong passwords under an address; the address itself is not kept, as some type their password there. */
export interface TriesRow {
  /** SHA-256. */
  readonly address: string;
  count: number;
  last: string;
}

/** An address that opens once: the first owner makes an account, or somebody chooses a password. */
export interface OneTimeLinkRow {
  /** SHA-256, so that no copy of the records opens anything. */
  readonly token: string;
  /** Empty: of the first owner, who is nobody yet. */
  readonly person_id: string;
  readonly expires_at: string;
}
