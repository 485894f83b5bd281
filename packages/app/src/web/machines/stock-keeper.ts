import { askServer, sent } from '../frame/ask.ts';
import { Followed, useFollowed } from '../frame/followed.ts';
import { oneEach } from '../frame/one-each.ts';
import { operationName } from '../frame/operation-name.ts';
import { browserStorage } from '../state/kept-work.ts';
import { whoIsHere } from './kept-machine.ts';
import type { Counts } from './worker/protocol.ts';

/** A movement on its way to the records. */
export interface Movement {
  readonly operation: string;
  readonly part: string;
  readonly quantity: number;
  readonly why: 'taken' | 'put-back' | 'received' | 'counted';
  readonly serial: string;
}

/** The store as this device knows it, with what waits counted in. */
export interface StockState {
  /** What moved in all; undefined before the records have told it once. */
  readonly moved?: Counts;
  /** What moved for the machine. */
  readonly given?: Counts;
  readonly waiting: number;
  readonly away: boolean;
  /** Why the records refused the last movement; it was left out. */
  readonly refused?: string;
}

interface Kept {
  readonly moved?: Counts;
  readonly given?: Counts;
  readonly waiting: readonly Movement[];
}

type Moved = { readonly moved: readonly { readonly part: string; readonly quantity: number }[] };

const KEY = 'spraywright-stock-1 ';
const TRY_AGAIN = 4000;

/** Sends what is taken from the store for one machine, each movement once, and keeps it on the device until then. */
export class StockKeeper {
  readonly #serial: string;
  #kept: Kept;
  readonly followed: Followed<StockState>;
  #busy = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(serial: string) {
    this.#serial = serial;
    this.#kept = loaded(serial);
    this.followed = new Followed(stateOf(this.#kept, serial, { away: false }));
    for (const event of ['online', 'focus']) addEventListener(event, () => void this.work());
  }

  move(part: string, quantity: number, why: Movement['why']): void {
    const serial = why === 'received' || why === 'counted' ? '' : this.#serial;
    const movement = { operation: operationName(), part, quantity, why, serial };
    this.#put({ ...this.#kept, waiting: [...this.#kept.waiting, movement] });
    void this.work();
  }

  /** Sends what waits, then asks how the store stands. */
  async work(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    clearTimeout(this.#timer);
    try {
      while (this.#kept.waiting.length > 0) if (!(await this.#send(this.#kept.waiting[0]!))) return;
      await this.#ask();
    } finally {
      this.#busy = false;
    }
  }

  async #send(movement: Movement): Promise<boolean> {
    const body = { movements: [movement], by: whoIsHere() };
    const answer = await askServer<Moved>('api/stock/movements', sent(body));
    if (answer.is === 'away' || answer.is === 'unchanged') return this.#away();
    // A movement that the records refuse would be refused for ever: it is told, and left out.
    const waiting = this.#kept.waiting.filter((m) => m.operation !== movement.operation);
    if (answer.is === 'refused') this.#put({ ...this.#kept, waiting }, { refused: answer.why });
    else {
      const { part, quantity, serial } = movement;
      const given = this.#kept.given ?? {};
      this.#put({
        waiting,
        moved: countsOf(answer.value),
        given: serial === '' ? given : { ...given, [part]: (given[part] ?? 0) + quantity },
      });
    }
    return true;
  }

  async #ask(): Promise<void> {
    const serial = encodeURIComponent(this.#serial);
    const [all, own] = await Promise.all([
      askServer<Moved>('api/stock'),
      askServer<Moved>(`api/stock?serial=${serial}`),
    ]);
    if (all.is === 'done' && own.is === 'done')
      this.#put({ ...this.#kept, moved: countsOf(all.value), given: countsOf(own.value) });
    else this.#away();
  }

  #away(): false {
    this.#put(this.#kept, { away: true });
    this.#timer = setTimeout(() => void this.work(), TRY_AGAIN);
    return false;
  }

  #put(kept: Kept, { away = false, refused }: { away?: boolean; refused?: string } = {}): void {
    this.#kept = kept;
    try {
      browserStorage()?.setItem(`${KEY}${this.#serial}`, JSON.stringify(kept));
    } catch {
      // What waits is sent all the same while the page is open.
    }
    const told = refused ?? this.followed.state().refused;
    this.followed.put(
      stateOf(kept, this.#serial, { away, ...(told === undefined ? {} : { refused: told }) }),
    );
  }
}

function loaded(serial: string): Kept {
  try {
    const kept = JSON.parse(browserStorage()?.getItem(`${KEY}${serial}`) ?? '{}') as Partial<Kept>;
    return { ...kept, waiting: Array.isArray(kept.waiting) ? kept.waiting : [] };
  } catch {
    return { waiting: [] };
  }
}

function stateOf(
  { moved, given, waiting }: Kept,
  serial: string,
  more: Pick<StockState, 'away' | 'refused'>,
): StockState {
  const own = waiting.filter((m) => m.serial === serial);
  return {
    ...more,
    waiting: waiting.length,
    ...(moved === undefined ? {} : { moved: withWaiting(moved, waiting) }),
    ...(given === undefined ? {} : { given: withWaiting(given, own) }),
  };
}

function withWaiting(counts: Counts, waiting: readonly Movement[]): Counts {
  const sum: Record<string, number> = { ...counts };
  for (const { part, quantity } of waiting) sum[part] = (sum[part] ?? 0) + quantity;
  return sum;
}

function countsOf({ moved }: Moved): Counts {
  return Object.fromEntries(moved.map(({ part, quantity }) => [part, quantity]));
}

const keeperOf = oneEach((serial) => {
  const keeper = new StockKeeper(serial);
  void keeper.work();
  return keeper;
});

/** The store as it stands for a machine, and the way to move something in it. */
export function useStock(serial: string): { readonly stock: StockState; readonly keeper: StockKeeper } {
  const keeper = keeperOf(serial);
  return { stock: useFollowed(keeper.followed), keeper };
}
