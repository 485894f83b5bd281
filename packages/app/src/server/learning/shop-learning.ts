import {
  calibrationOf,
  learnedDocument,
  learnFrom,
  type Calibration,
  type Learned,
  type LearnedDocument,
} from '@spraywright/engine/yard';
import { writtenMachines, writtenMark, type Records } from '../../store/index.ts';
import type { Shelf } from '../shelf.ts';
import { TEACHING_KINDS, testedMachines, type Tested } from './tested-machines.ts';

/** What the tests of all built machines say, worked out from the entries alone. */
export interface ShopLearned extends Pick<Tested, 'unfinished' | 'unfit'> {
  /** Changes whenever anything does that it was worked out from. */
  readonly mark: string;
  readonly learned: Learned;
  readonly document: LearnedDocument;
  readonly calibration: Calibration;
}

/**
 * What the shop has learned. It is never stored: it follows from the entries, the machines as built and today's
 * catalogue, and is held until one of them changes, also by another process.
 */
export class ShopLearning {
  readonly #db: Records['db'];
  readonly #shelf: Shelf;
  #held: { readonly mark: string; readonly found: Promise<ShopLearned> } | undefined;

  constructor({ db }: Pick<Records, 'db'>, shelf: Shelf) {
    this.#db = db;
    this.#shelf = shelf;
  }

  async current(): Promise<ShopLearned> {
    const { edition } = await this.#shelf.current();
    const mark = `${edition}\n${await writtenMark(this.#db, TEACHING_KINDS)}`;
    if (this.#held?.mark !== mark) {
      const found = this.#learn(mark);
      this.#held = { mark, found };
      // What failed is not held: the next question tries again.
      found.catch(() => (this.#held = undefined));
    }
    return this.#held.found;
  }

  async #learn(mark: string): Promise<ShopLearned> {
    const { catalogue, shop } = await this.#shelf.current();
    const { machines, tests, unfinished, unfit } = testedMachines(
      await writtenMachines(this.#db, TEACHING_KINDS),
      catalogue,
      shop,
    );
    const learned = learnFrom(machines);
    const calibration = calibrationOf(tests);
    return { mark, learned, document: learnedDocument(learned), calibration, unfinished, unfit };
  }
}
