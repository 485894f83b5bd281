import type { Kysely, Transaction } from 'kysely';
import type { Tables } from './schema.ts';

type Work<T> = (transaction: Transaction<Tables>) => Promise<T>;

interface Waiting {
  readonly work: Work<unknown>;
  readonly answer: (result: unknown) => void;
  readonly refuse: (reason: unknown) => void;
}

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
      this.#waiting.push({ work, answer: answer as Waiting['answer'], refuse });
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
    try {
      const transaction = await this.#begin();
      try {
        for (const { work, answer, refuse } of group) {
          const here = await transaction.savepoint('one').execute();
          try {
            const result = await work(here);
            await here.releaseSavepoint('one').execute();
            answers.push(() => answer(result));
          } catch (reason) {
            await here.rollbackToSavepoint('one').execute();
            await here.releaseSavepoint('one').execute();
            answers.push(() => refuse(reason));
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
    for (const answer of answers) answer();
  }
}
