import { askServer, sent } from '../frame/ask.ts';
import { Followed, useFollowed } from '../frame/followed.ts';
import { oneEach } from '../frame/one-each.ts';
import { operationName } from '../frame/operation-name.ts';
import {
  keepMachine,
  loadMachine,
  machineKey,
  whoIsHere,
  type Entry,
  type KeptMachine,
} from './kept-machine.ts';

/** How what is on this device stands with the records. */
export type MachineKeeping =
  | { readonly is: 'asking' | 'kept' | 'sending' | 'away' | 'absent' }
  /** The records do not take it; what waits stays on this device. */
  | { readonly is: 'refused'; readonly why: string };

export interface MachineState extends KeptMachine {
  readonly keeping: MachineKeeping;
  /** False when the browser keeps nothing: closing the page would lose what waits. */
  readonly onDevice: boolean;
}

const TRY_AGAIN = 4000;
/** Entries sent and fetched at a time. */
const BATCH = 100;
const PAGE = 1000;

/**
 * Keeps one machine on the device and sends what is written down of it. An entry is on the device before `write`
 * returns, and goes from there only when the records have told that they have it.
 */
export class MachineKeeper {
  readonly #serial: string;
  readonly followed: Followed<MachineState>;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #busy = false;

  constructor(serial: string) {
    this.#serial = serial;
    this.followed = new Followed({ ...loadMachine(serial), keeping: { is: 'asking' }, onDevice: true });
    for (const event of ['online', 'focus']) addEventListener(event, () => void this.work());
    // Another page of this browser wrote something down of the same machine.
    addEventListener('storage', ({ key }: StorageEvent) => {
      if (key === machineKey(serial)) this.#put({});
    });
  }

  /** Writes something down: on the device at once, in the records as soon as they are reached. */
  write(kind: string, document: Readonly<Record<string, unknown>>): void {
    const at = new Date().toISOString();
    const entry: Entry = { operation: operationName(), kind, document, by: whoIsHere(), at };
    this.#put({ waiting: [...this.#state.waiting, entry] });
    void this.work();
  }

  /** Sends what waits, then fetches what others wrote down. */
  async work(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    clearTimeout(this.#timer);
    try {
      let done = false;
      while (!done) done = !(await this.#step());
    } finally {
      this.#busy = false;
    }
  }

  /** True when there is more to do at once. */
  async #step(): Promise<boolean> {
    const { machine, waiting } = this.#state;
    if (machine === undefined) return this.#fetchMachine();
    if (waiting.length > 0) return this.#send(waiting[0]!.by, waiting);
    return this.#fetchEntries();
  }

  async #fetchMachine(): Promise<boolean> {
    const answer = await askServer<NonNullable<KeptMachine['machine']>>(this.#path());
    if (answer.is === 'done') this.#put({ machine: answer.value });
    else if (answer.is === 'refused' && answer.problem.code === 'no-such-machine')
      this.#put({ keeping: { is: 'absent' } });
    else this.#failed(answer);
    return answer.is === 'done';
  }

  async #send(by: string, waiting: readonly Entry[]): Promise<boolean> {
    this.#put({ keeping: { is: 'sending' } });
    // A batch has one name under it.
    const other = waiting.findIndex((e) => e.by !== by);
    const batch = waiting.slice(0, Math.min(other === -1 ? waiting.length : other, BATCH));
    const entries = batch.map(({ operation, kind, document }) => ({ operation, kind, document }));
    const answer = await askServer(`${this.#path()}/entries`, sent({ entries, by }));
    if (answer.is !== 'done') {
      this.#failed(answer);
      return false;
    }
    return this.#fetchEntries(true);
  }

  /** @param more whether something may wait behind it */
  async #fetchEntries(more = false): Promise<boolean> {
    const last = this.#state.entries.at(-1)?.number ?? 0;
    const answer = await askServer<{ readonly entries: readonly Entry[] }>(
      `${this.#path()}/entries?after=${last}&limit=${PAGE}`,
    );
    if (answer.is !== 'done') {
      this.#failed(answer);
      return false;
    }
    const { entries: found } = answer.value;
    const entries = [...this.#state.entries, ...found.filter((e) => (e.number ?? 0) > last)];
    this.#put({ entries, keeping: { is: 'kept' } });
    return found.length === PAGE || (more && this.#state.waiting.length > 0);
  }

  #failed(answer: { readonly is: string; readonly why?: string }): void {
    const { why } = answer;
    this.#put({ keeping: why === undefined ? { is: 'away' } : { is: 'refused', why } });
    this.#timer = setTimeout(() => void this.work(), TRY_AGAIN);
  }

  /** Takes a change over, together with what another page of this browser has kept meanwhile. */
  #put(change: Partial<MachineState>): void {
    const there = loadMachine(this.#serial);
    const machine = change.machine ?? this.#state.machine ?? there.machine;
    const mine = change.entries ?? this.#state.entries;
    const entries = (there.entries.at(-1)?.number ?? 0) > (mine.at(-1)?.number ?? 0) ? there.entries : mine;
    const arrived = new Set(entries.map((e) => e.operation));
    const waiting = new Map(
      [...(change.waiting ?? this.#state.waiting), ...there.waiting].map((e) => [e.operation, e]),
    );
    for (const operation of arrived) waiting.delete(operation);
    const kept: KeptMachine = {
      ...(machine === undefined ? {} : { machine }),
      entries,
      waiting: [...waiting.values()],
    };
    const same = JSON.stringify(kept) === JSON.stringify(there);
    const onDevice = same || machine === undefined || keepMachine(this.#serial, kept);
    this.followed.put({ ...kept, keeping: change.keeping ?? this.#state.keeping, onDevice });
  }

  get #state(): MachineState {
    return this.followed.state();
  }

  #path(): string {
    return `api/machines/${encodeURIComponent(this.#serial)}`;
  }
}

/** The one keeper of a machine on this page. */
const keeperOf = oneEach((serial) => {
  const keeper = new MachineKeeper(serial);
  void keeper.work();
  return keeper;
});

/** A machine as it stands on this device, and the way to write something down of it. */
export function useMachine(serial: string): { readonly state: MachineState; readonly keeper: MachineKeeper } {
  const keeper = keeperOf(serial);
  return { state: useFollowed(keeper.followed), keeper };
}
