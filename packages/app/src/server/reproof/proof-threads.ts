import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { OpenQuote, ReproofFinding } from '../../store/index.ts';
import type { CatalogueFiles } from '../catalogue-files.ts';

/** More threads than this wait for the records. */
const MOST = 4;

/** Sources are read by a loader while developing; the built program has them as JavaScript. */
const FROM_SOURCES = import.meta.url.endsWith('.ts');

/** Threads that prove quotes with one edition of the catalogue. */
export class ProofThreads {
  readonly #threads: readonly Worker[];

  constructor(files: CatalogueFiles) {
    const count = Math.max(1, Math.min(MOST, availableParallelism() - 1));
    this.#threads = Array.from({ length: count }, () => thread(files));
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
          const findings = await answerOf(thread, batch);
          await inTurn(() => told(batch.length, findings));
        }
      }),
    );
  }

  async close(): Promise<void> {
    await Promise.all(this.#threads.map((thread) => thread.terminate()));
  }
}

function thread(files: CatalogueFiles): Worker {
  if (!FROM_SOURCES) return new Worker(new URL('./proof-worker.js', import.meta.url), { workerData: files });
  const source = JSON.stringify(new URL('./proof-worker.ts', import.meta.url).href);
  const code = `import('tsx/esm/api').then(({ register }) => { register(); return import(${source}); });`;
  return new Worker(code, { eval: true, workerData: files, execArgv: ['--conditions=source'] });
}

function answerOf(thread: Worker, batch: readonly OpenQuote[]): Promise<readonly ReproofFinding[]> {
  return new Promise((resolve, reject) => {
    const done = () => {
      thread.off('message', answered);
      thread.off('error', failed);
      thread.off('exit', ended);
    };
    const answered = (findings: readonly ReproofFinding[]) => {
      done();
      resolve(findings);
    };
    const failed = (error: Error) => {
      done();
      reject(error);
    };
    const ended = () => {
      done();
      reject(new Error('the thread that proves quotes has ended'));
    };
    thread.on('message', answered);
    thread.on('error', failed);
    thread.on('exit', ended);
    thread.postMessage(batch);
  });
}
