import type { Kysely, Transaction } from 'kysely';
import type { Tables } from './schema.ts';

type Work<T> = (transaction: Transaction<Tables>) => Promise<T>;

interface Waiting {
  readonly work: Work<unknown>;
  readonly answer: (result: unknown) => void;
  readonly refuse: (reason: unknown) => void;
  /** How often it met another process crosswise. */
  met: number;
}

/** A save that meets others crosswise this often is refused. */
const MOST_MET = 5;

/**
 * Saves that arrive in one turn of the event loop go to the disk together, in one transaction and one flush; each
 * stands behind a savepoint, so that one that is refused takes no other with it. Nothing is answered before the commit.
 */
export class GroupCommit {
  readonly #db: Kysely<Tables>;
  #waiting: Waiting[] = [];
  #busy = false;

  constructor(db: Kysely<Tables>) {
    this.#db = db;
  }

  save<T>(work: Work<T>): Promise<T> {
    return new Promise<T>((answer, refuse) => {
      this.#waiting.push({ work, answer: answer as Waiting['answer'], refuse, met: 0 });
      this.#later();
    });
  }

  /** Resolves when no save is waiting or being written. */
  async idle(): Promise<void> {
    while (this.#busy || this.#waiting.length > 0) await new Promise((then) => setImmediate(then));
  }

  #later(): void {
    if (this.#busy || this.#waiting.length === 0) return;
    this.#busy = true;
    setImmediate(() => {
      const group = this.#waiting;
      this.#waiting = [];
      void this.#commit(group).finally(() => {
        this.#busy = false;
        this.#later();
      });
    });
  }

  /** Nothing has been sent yet when a transaction cannot begin, so a lost connection is tried once more with a new one. */
  #begin() {
    const begin = () => this.#db.startTransaction().execute();
    return begin().catch((error: { code?: unknown }) => {
      if (String(error.code).startsWith('SQLITE')) throw error;
      return begin();
    });
  }

  async #commit(group: readonly Waiting[]): Promise<void> {
    const answers: (() => void)[] = [];
    const again: Waiting[] = [];
    try {
      const transaction = await this.#begin();
      try {
        for (const waiting of group) {
          const { work, answer, refuse } = waiting;
          const here = await transaction.savepoint('one').execute();
          try {
            const result = await work(here);
            await here.releaseSavepoint('one').execute();
            answers.push(() => answer(result));
          } catch (reason) {
            await here.rollbackToSavepoint('one').execute();
            await here.releaseSavepoint('one').execute();
            // What the group holds stays held until its commit: the save is made after it, in another group.
            if (isDeadlock(reason) && ++waiting.met <= MOST_MET) again.push(waiting);
            else answers.push(() => refuse(reason));
          }
        }
        await transaction.commit().execute();
      } catch (reason) {
        // After a failed commit SQLite may have rolled back by itself.
        await transaction
          .rollback()
          .execute()
          .catch(() => undefined);
        throw reason;
      }
    } catch (reason) {
      for (const { refuse } of group) refuse(reason);
      return;
    }
    this.#waiting.unshift(...again);
    for (const answer of answers) answer();
  }
}

/** PostgreSQL ends one of two saves that wait for each other's rows. */
function isDeadlock(reason: unknown): boolean {
  return (reason as { code?: unknown } | null)?.code === '40P01';
}
