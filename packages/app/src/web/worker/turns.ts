/**
 * Background work of a worker in turns, between which its messages are answered. Only the newest that was asked for is
 * done. A turn without a wait comes by a message to oneself: timers in a row wait four thousandths of a second each.
 */
export class Turns {
  readonly #channel = new MessageChannel();
  #newest = 0;
  #next: (() => void) | undefined;

  constructor() {
    this.#channel.port1.onmessage = ({ data }: MessageEvent<number>) => this.#take(data);
  }

  /** Which turn it is: another one when something newer was asked for, or all was called off. */
  get newest(): number {
    return this.#newest;
  }

  /** @param wait until it is done [ms] */
  next(then: () => void, wait = 0): void {
    const turn = ++this.#newest;
    this.#next = then;
    if (wait > 0) setTimeout(() => this.#take(turn), wait);
    else this.#channel.port2.postMessage(turn);
  }

  callOff(): void {
    this.#newest++;
    this.#next = undefined;
  }

  #take(turn: number): void {
    if (turn === this.#newest) this.#next?.();
  }
}
