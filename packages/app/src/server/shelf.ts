import { withMoved, type Catalogue, type Shop } from '@spraywright/engine/catalogue';
import {
  catalogueEdition,
  catalogueOn,
  countMovements,
  layFirstCatalogue,
  movedStock,
  type KeptCatalogue,
  type Records,
} from '../store/index.ts';
import { filesOfCatalogue, readFiles, type CatalogueFiles } from './catalogue-files.ts';

/** The catalogue in force with what is on hand: as the engine reads it, and as the page gets it. */
export interface Stocked {
  readonly edition: number;
  readonly catalogue: Catalogue;
  readonly shop: Shop;
  readonly kept: KeptCatalogue;
  readonly files: CatalogueFiles;
}

/**
 * The shop's catalogue, taken from the records. What was read is held as long as the edition and the day stay, and what
 * moved in the store is laid on it, so that a change of another process is seen at the next question.
 */
export class Shelf {
  readonly #records: Records;
  readonly #now: () => string;
  readonly #first: KeptCatalogue | undefined;
  #held: { readonly key: string; readonly stocked: Promise<Stocked> } | undefined;
  #onHand: { readonly of: Stocked; readonly movements: number; readonly stocked: Stocked } | undefined;

  /** @param first what is laid into records that have no catalogue yet; undefined where they are known to have one */
  constructor(records: Records, first: KeptCatalogue | undefined, now: () => string) {
    this.#records = records;
    this.#first = first;
    this.#now = now;
  }

  /** True when the first catalogue was laid in just now. */
  async layFirst(): Promise<boolean> {
    const first = this.#first;
    if (first === undefined) throw new Error('the records hold no catalogue');
    const at = this.#now();
    return this.#records.save((t) => layFirstCatalogue(t, first, { by: '', at }));
  }

  /** @throws Error when the records hold a catalogue that this engine cannot read */
  async current(): Promise<Stocked> {
    const day = this.#now().slice(0, 10);
    const edition = await catalogueEdition(this.#records.db);
    if (edition === undefined) {
      await this.layFirst();
      return this.current();
    }
    const key = `${edition} ${day}`;
    if (this.#held?.key !== key) {
      const stocked = this.#read(day);
      this.#held = { key, stocked };
      // What failed is not held: the next question tries again.
      stocked.catch(() => (this.#held = undefined));
    }
    return this.#withStock(await this.#held.stocked);
  }

  /** Movements are never changed, so their number tells whether there is a new one. */
  async #withStock(of: Stocked): Promise<Stocked> {
    const movements = await countMovements(this.#records.db);
    if (this.#onHand?.of !== of || this.#onHand.movements !== movements) {
      const moved = Object.fromEntries(
        (await movedStock(this.#records.db)).map(({ part, quantity }) => [part, quantity]),
      );
      const stocked = { ...of, catalogue: withMoved(of.catalogue, moved), files: { ...of.files, moved } };
      this.#onHand = { of, movements, stocked };
    }
    return this.#onHand.stocked;
  }

  async #read(day: string): Promise<Stocked> {
    const kept = (await catalogueOn(this.#records.db, day))!;
    const files = filesOfCatalogue(kept);
    return { edition: kept.edition, kept, files, ...readFiles(files) };
  }
}
