import { readLearned } from '@spraywright/engine/yard';

type Read = Extract<ReturnType<typeof readLearned>, { ok: true }>;
export type LearnedDocument = Read['document'];

/** How long what was learned is good for before the records are asked again [ms]. */
const FRESH = 60_000;
/** How long the first odds wait for it [ms]; many machines take longer, the odds follow then. */
const PATIENCE = 1000;
/** After so long the records are asked again at the next occasion [ms]. */
const LOST = 60_000;

/** What the yard tests of the shop's machines have taught, as the records have it. */
export class ShopLearning {
  #document: LearnedDocument | undefined;
  #tag: string | undefined;
  #asked = -Infinity;
  #answer: Promise<void> = Promise.resolve();

  /**
   * What is known soon. Without a connection it is what was known last; before that, nothing.
   *
   * @param address of what the page starts from, beside which the records are
   */
  async soon(address: string): Promise<LearnedDocument | undefined> {
    if (performance.now() - this.#asked > FRESH) {
      this.#asked = performance.now();
      this.#answer = this.#ask(new URL('api/learned', address)).catch(() => undefined);
    }
    await Promise.race([this.#answer, new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
    return this.#document;
  }

  /** What is known once the records have answered what they were last asked. */
  async latest(): Promise<LearnedDocument | undefined> {
    await this.#answer;
    return this.#document;
  }

  async #ask(address: URL): Promise<void> {
    const response = await fetch(address, {
      headers: this.#tag === undefined ? {} : { 'If-None-Match': this.#tag },
      signal: AbortSignal.timeout(LOST),
    });
    if (!response.ok) return;
    const learned = readLearned(((await response.json()) as { readonly document: unknown }).document);
    if (!learned.ok) return;
    this.#document = learned.document;
    this.#tag = response.headers.get('ETag') ?? undefined;
  }
}
