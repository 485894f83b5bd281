import type { SearchProgress } from '@spraywright/engine/rig';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { FoundRigs, FromSearch, RigJson, ToSearch } from '../protocol.ts';

/** How the search of the whole catalogue stands. */
export interface SearchTold {
  readonly running: boolean;
  /** Absent until it has looked at something. */
  readonly progress?: SearchProgress;
  /** Nothing of the catalogue is left to look at. */
  readonly complete: boolean;
  /** Why there is none, most first: told at the end. */
  readonly refused: readonly string[];
  readonly failure?: string;
}

const NONE: FoundRigs = { rigs: [], complete: false };

/** Searches the catalogue in a worker of its own: it holds up no edit, and is stopped at any moment with what it has found. */
export class SearchLink {
  #worker: Worker | undefined;
  #told: SearchTold | undefined;
  /** What the search was for; what it found is worth nothing for another brief, or around other pins. */
  #for = '';
  readonly #tell: (told: SearchTold | undefined, found?: FoundRigs) => void;

  /** @param tell how it stands, and what is found whenever that changed */
  constructor(tell: (told: SearchTold | undefined, found?: FoundRigs) => void) {
    this.#tell = tell;
  }

  start(rig: RigJson, units: UnitSystem): void {
    this.#end();
    this.#for = askedOf(rig);
    const worker = new Worker(new URL('../search-worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<FromSearch>) => this.#hear(data);
    worker.onerror = (event) => this.#hear({ type: 'failed', message: event.message || 'it ended' });
    this.#say({ running: true, complete: false, refused: [] }, NONE);
    worker.postMessage({
      address: new URL('start.json', document.baseURI).href,
      rig,
      units,
    } satisfies ToSearch);
  }

  /** Stops it; what is found stays. */
  stop(): void {
    if (this.#worker === undefined) return;
    this.#end();
    if (this.#told !== undefined) this.#say({ ...this.#told, running: false });
  }

  /** Gives up what was found, or is sought, for another brief than that of a rig. */
  keepFor(rig: RigJson | undefined): void {
    if (this.#told === undefined || (rig !== undefined && askedOf(rig) === this.#for)) return;
    this.#end();
    this.#told = undefined;
    this.#tell(undefined, NONE);
  }

  #hear(message: FromSearch): void {
    if (message.type === 'progress') {
      const { progress, rigs } = message;
      const told = { running: true, complete: false, refused: [], progress };
      this.#say(told, rigs === undefined ? undefined : { rigs, complete: false });
      return;
    }
    this.#end();
    if (message.type === 'failed')
      this.#say({ running: false, complete: false, refused: [], failure: message.message });
    else {
      const { found, progress, refused } = message;
      this.#say({ running: false, complete: found.complete, refused, progress }, found);
    }
  }

  #say(told: SearchTold, found?: FoundRigs): void {
    this.#told = told;
    this.#tell(told, found);
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}

/** What a search is asked: the brief, and what stays pinned. */
function askedOf({ id, brief, items }: RigJson): string {
  return JSON.stringify([id, brief, items.flatMap((i) => (i.pinned === true ? [i.id, i.part] : []))]);
}
