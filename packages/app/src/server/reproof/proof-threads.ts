import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import type { OpenQuote, ReproofFinding } from '../../store/index.ts';
import type { CatalogueFiles } from '../catalogue-files.ts';
import { answerOf, sourceThread } from '../source-thread.ts';

/** More threads than this wait for the records. */
const MOST = 4;

/** Threads that prove quotes with one edition of the catalogue. */
export class ProofThreads {
  readonly #threads: readonly Worker[];

  constructor(files: CatalogueFiles) {
    const count = Math.max(1, Math.min(MOST, availableParallelism() - 1));
    this.#threads = Array.from({ length: count }, () =>
      sourceThread(new URL('./proof-worker', import.meta.url), files),
    );
  }

  /**
   * Proves everything that `next` gives, each thread a batch at a time.
   *
   * @param next the next batch; empty when there is no more
   * @param told what a batch came to, one after another
   * @throws Error when a thread fails
   */
  async prove(
    next: () => Promise<readonly OpenQuote[]>,
    told: (count: number, findings: readonly ReproofFinding[]) => Promise<void>,
  ): Promise<void> {
    let turn: Promise<unknown> = Promise.resolve();
    const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
      const done = turn.then(work);
      turn = done.catch(() => undefined);
      return done;
    };
    await Promise.all(
      this.#threads.map(async (thread) => {
        for (;;) {
          const batch = await inTurn(next);
          if (batch.length === 0) return;
          const findings = await answerOf<readonly ReproofFinding[]>(thread, batch);
          await inTurn(() => told(batch.length, findings));
        }
      }),
    );
  }

  async close(): Promise<void> {
    await Promise.all(this.#threads.map((thread) => thread.terminate()));
  }
}
