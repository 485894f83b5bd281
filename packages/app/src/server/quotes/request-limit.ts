/** How long requests are counted [ms]. */
const MINUTE = 60_000;
/** Askers that are remembered; beyond, the one that asked longest ago is forgotten. */
const REMEMBERED = 10_000;

/**
 * Counts requests by asker, so many a minute. Each process counts for itself: it slows whoever tries addresses; what
 * keeps a link from being guessed is its length.
 */
export class RequestLimit {
  readonly #most: number;
  readonly #askers = new Map<string, { since: number; count: number }>();

  constructor(most: number) {
    this.#most = most;
  }

  /** Counts a request; false when it is one too many. */
  admit(asker: string, now: number): boolean {
    const before = this.#askers.get(asker);
    const fresh = before === undefined || now - before.since >= MINUTE;
    const counted = fresh ? { since: now, count: 1 } : { ...before, count: before.count + 1 };
    this.#askers.delete(asker);
    this.#askers.set(asker, counted);
    if (this.#askers.size > REMEMBERED) this.#askers.delete(this.#askers.keys().next().value!);
    return counted.count <= this.#most;
  }
}
