import type { UnitSystem } from '@spraywright/engine/quantity';
import type { OddsTold, RigJson, ToOdds } from '../protocol.ts';

/** Quiet time after a change before the odds are drawn [ms]. */
const QUIET = 400;

/** Draws the odds of a rig in a worker of their own, so that hundreds of draws never hold up an edit. */
export class OddsLink {
  #worker: Worker | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #tell: (told: OddsTold) => void;

  constructor(tell: (told: OddsTold) => void) {
    this.#tell = tell;
  }

  ask(version: number, rig: RigJson, units: UnitSystem): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#worker ??= this.#start();
      const address = new URL('start.json', document.baseURI).href;
      const message: ToOdds = { address, version, rig, units };
      this.#worker.postMessage(message);
    }, QUIET);
  }

  #start(): Worker {
    const worker = new Worker(new URL('../odds-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<OddsTold>) => this.#tell(data);
    return worker;
  }
}
