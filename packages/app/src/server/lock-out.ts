/** Wrong passwords in a row until sign-in is closed, and for how long [ms]. */
const MOST = 5;
const CLOSED = 15 * 60_000;
/** Addresses that are remembered; beyond, the one tried longest ago is forgotten. */
const REMEMBERED = 10_000;

/** Counts wrong passwords by e-mail address, of people and of nobody alike, so that it tells nobody which is which. */
export class LockOut {
  readonly #tries = new Map<string, { count: number; last: number }>();

  /** Counts a try before its password is looked at, so that tries at the same time count too; false when closed. */
  begin(email: string, now: number): boolean {
    const before = this.#tries.get(email);
    const count = before !== undefined && now - before.last < CLOSED ? before.count : 0;
    if (count >= MOST) return false;
    this.#tries.delete(email);
    this.#tries.set(email, { count: count + 1, last: now });
    if (this.#tries.size > REMEMBERED) this.#tries.delete(this.#tries.keys().next().value!);
    return true;
  }

  succeeded(email: string): void {
    this.#tries.delete(email);
  }
}
