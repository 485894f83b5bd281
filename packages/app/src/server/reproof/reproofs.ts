import { randomBytes } from 'node:crypto';
import {
  addFindings,
  askReproof,
  catalogueEdition,
  countOpenQuotes,
  moveReproof,
  openQuotes,
  reproofsLeft,
  takeReproof,
  type Records,
  type Reproof,
} from '../../store/index.ts';
import type { Shelf } from '../shelf.ts';
import { ProofThreads } from './proof-threads.ts';
import { workByServer } from './work-by-server.ts';
import { workHere, type WorkQueue } from './work-queue.ts';

/** Quotes that a thread proves at a time: the records are told of each batch. */
const BATCH = 20;
/** A round that has not moved for so long is taken up by whoever comes next [ms]. */
const STUCK = 60_000;

interface ReproofsGiven {
  readonly records: Records;
  readonly shelf: Shelf;
  readonly now: () => string;
  readonly report: (error: unknown) => void;
}

/** Proves all open quotes again when the catalogue has changed, in threads beside the server. */
export class Reproofs {
  readonly #given: ReproofsGiven;
  readonly #queue: WorkQueue;

  constructor(given: ReproofsGiven) {
    this.#given = given;
    const work = {
      next: (ended: AbortSignal) => this.#next(ended),
      left: () => reproofsLeft(given.records.db),
      report: given.report,
    };
    const { server } = given.records;
    this.#queue = server === undefined ? workHere(work) : workByServer(server, work);
  }

  /** Asks for a round after the catalogue was changed; none where no quote is open. The change itself stands whatever happens here. */
  async afterChange(by: string): Promise<void> {
    try {
      if ((await countOpenQuotes(this.#given.records.db)) > 0) await this.ask(by);
    } catch (error) {
      this.#given.report(error);
    }
  }

  /**
   * Asks for a round.
   *
   * @param records those that tell the book who asked, where somebody did
   * @returns its id
   */
  async ask(by: string, records: Records = this.#given.records): Promise<string> {
    const { now } = this.#given;
    const at = now();
    const edition = (await catalogueEdition(records.db)) ?? 0;
    const fresh = `${at.replace(/\D/g, '')}-${randomBytes(8).toString('hex')}`;
    const id = await records.save((t) => askReproof(t, fresh, edition, { by, at }));
    this.#queue.wake();
    return id;
  }

  /** Goes on with what an earlier start left. */
  resume(): void {
    this.#queue.wake();
  }

  idle(): Promise<void> {
    return this.#queue.idle();
  }

  close(): Promise<void> {
    return this.#queue.close();
  }

  async #next(ended: AbortSignal): Promise<boolean> {
    const { records, now } = this.#given;
    const at = now();
    const stuck = new Date(Date.parse(at) - STUCK).toISOString();
    const round = await records.save((t) => takeReproof(t, at, stuck));
    if (round === undefined) return false;
    try {
      await this.#prove(round, ended);
    } catch (error) {
      const trouble = error instanceof Error ? error.message : String(error);
      await records.save((t) => moveReproof(t, round.id, { state: 'failed', trouble }, now()));
      this.#given.report(error);
    }
    return true;
  }

  async #prove({ id }: Reproof, ended: AbortSignal): Promise<void> {
    const { records, shelf, now } = this.#given;
    const { edition, files } = await shelf.current();
    const total = await countOpenQuotes(records.db);
    await records.save((t) => moveReproof(t, id, { edition, total }, now()));
    const threads = new ProofThreads(files);
    let after = '';
    let [done, changed] = [0, 0];
    try {
      await threads.prove(
        async () => {
          const batch = ended.aborted ? [] : await openQuotes(records.db, BATCH, after);
          after = batch.at(-1)?.number ?? after;
          return batch;
        },
        (count, findings) => {
          done += count;
          changed += findings.length;
          return records.save(async (t) => {
            await addFindings(t, id, findings);
            await moveReproof(t, id, { done, changed }, now());
          });
        },
      );
      // One that was broken off waits for the next start.
      const state = ended.aborted ? 'waiting' : 'done';
      await records.save((t) => moveReproof(t, id, { state }, now()));
    } finally {
      await threads.close();
    }
  }
}
