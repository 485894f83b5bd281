import { createHash } from 'node:crypto';
import { asksOf, countAsk, type Records } from '../../store/index.ts';

interface Limit {
  /** What is counted. */
  readonly of: string;
  /** So many are let through. */
  readonly most: number;
  /** From the first on, for so long [ms]. */
  readonly within: number;
}

/**
 * Counts requests by asker. The counts stand in the records, so that no second process and no new start gives more; of
 * the asker a hash alone is kept, and no longer than it is counted.
 */
export class RequestLimit {
  readonly #records: Pick<Records, 'db' | 'save'>;
  readonly #limit: Limit;

  constructor(records: Pick<Records, 'db' | 'save'>, limit: Limit) {
    this.#records = records;
    this.#limit = limit;
  }

  /** Counts a request; false when it is one too many. */
  async admit(asker: string, now: string): Promise<boolean> {
    const until = new Date(Date.parse(now) + this.#limit.within).toISOString();
    const count = await this.#records.save((t) => countAsk(t, this.#name(asker), now, until));
    return count <= this.#limit.most;
  }

  /** Whether the next one would be too many. */
  async isSpent(asker: string, now: string): Promise<boolean> {
    return (await asksOf(this.#records.db, this.#name(asker), now)) >= this.#limit.most;
  }

  #name(asker: string): string {
    return createHash('sha256').update(`${this.#limit.of} ${asker}`).digest('hex');
  }
}
