import { readLearned } from '@spraywright/engine/yard';

type Read = Extract<ReturnType<typeof readLearned>, { ok: true }>;
export type LearnedDocument = Read['document'];

/** How long what was learned is good for before the records are asked again [ms]. */
const FRESH = 60_000;
/** Longest wait for an answer; the odds go on without it [ms]. */
const PATIENCE = 5000;

/** What the yard tests of the shop's machines have taught, as the records have it. */
export class ShopLearning {
  #document: LearnedDocument | undefined;
  #tag: string | undefined;
  #asked = -Infinity;

  /**
   * What is known now. Without a connection it is what was known last; before that, nothing.
   *
   * @param address of what the page starts from, beside which the records are
   */
  async now(address: string): Promise<LearnedDocument | undefined> {
    if (performance.now() - this.#asked > FRESH) {
      this.#asked = performance.now();
      await this.#ask(new URL('api/learned', address)).catch(() => undefined);
    }
    return this.#document;
  }

  async #ask(address: URL): Promise<void> {
    const response = await fetch(address, {
      headers: this.#tag === undefined ? {} : { 'If-None-Match': this.#tag },
      signal: AbortSignal.timeout(PATIENCE),
    });
    if (!response.ok) return;
    const learned = readLearned(((await response.json()) as { readonly document: unknown }).document);
    if (!learned.ok) return;
    this.#document = learned.document;
    this.#tag = response.headers.get('ETag') ?? undefined;
  }
}
