import type { Worker } from 'node:worker_threads';
import { learnedDocument, type LearnedDocument } from '@spraywright/engine/yard';
import { writtenMachines, writtenMark, type Records } from '../../store/index.ts';
import type { Shelf } from '../shelf.ts';
import { answerOf, sourceThread } from '../source-thread.ts';
import { learnFromTests, type LearnedFromTests } from './learn-from-tests.ts';
import { TEACHING_KINDS } from './tested-machines.ts';

/** What the tests of all built machines say, worked out from the entries alone. */
export interface ShopLearned extends LearnedFromTests {
  /** Changes whenever anything does that it was worked out from. */
  readonly mark: string;
  readonly document: LearnedDocument;
}

/**
 * What the shop has learned. It is never stored: it follows from the entries, the machines as built and today's
 * catalogue, is worked out in a thread beside the server, and is held until one of them changes, also by another process.
 */
export class ShopLearning {
  readonly #db: Records['db'];
  readonly #shelf: Shelf;
  #held: { readonly mark: string; readonly found: Promise<ShopLearned> } | undefined;
  #thread: Worker | undefined;
  /** The thread is asked one thing at a time. */
  #turn: Promise<unknown> = Promise.resolve();

  constructor({ db }: Pick<Records, 'db'>, shelf: Shelf) {
    this.#db = db;
    this.#shelf = shelf;
  }

  async current(): Promise<ShopLearned> {
    const { edition } = await this.#shelf.current();
    const mark = `${edition}\n${await writtenMark(this.#db, TEACHING_KINDS)}`;
    if (this.#held?.mark !== mark) {
      const found = this.#turn.then(() => this.#learn(mark));
      this.#turn = found.catch(() => undefined);
      this.#held = { mark, found };
      // What failed is not held: the next question tries again.
      found.catch(() => {
        if (this.#held?.found === found) this.#held = undefined;
      });
    }
    return this.#held.found;
  }

  async #learn(mark: string): Promise<ShopLearned> {
    const { files } = await this.#shelf.current();
    const written = await writtenMachines(this.#db, TEACHING_KINDS);
    const question = { written, files };
    const told =
      written.length === 0
        ? learnFromTests(question)
        : await answerOf<LearnedFromTests>(this.#theThread(), question);
    return { mark, ...told, document: learnedDocument(told.learned) };
  }

  #theThread(): Worker {
    if (this.#thread !== undefined) return this.#thread;
    const thread = sourceThread(new URL('./learning-worker', import.meta.url));
    const gone = () => {
      if (this.#thread === thread) this.#thread = undefined;
    };
    thread.on('error', gone);
    thread.on('exit', gone);
    // Nobody waits for it when the server ends.
    thread.unref();
    return (this.#thread = thread);
  }
}
