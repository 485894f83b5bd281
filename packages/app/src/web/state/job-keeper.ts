import { changeBetween, changed } from '@spraywright/engine/quantity';
import type { RigJson } from '../protocol.ts';
import { operationName } from '../frame/operation-name.ts';
import { merged, type Clash } from './merge.ts';
import { editStored, makeStored, openStored, type SentEdit, type StoredJob } from './records-link.ts';

/** What the records are known to have of a job, and what is on its way to them. */
export interface Synced {
  /** 0 before the job is made there. */
  readonly version: number;
  readonly rig: RigJson;
  /** Sent, and not yet answered: sent again under the same name until it is. */
  readonly pending?: { readonly edit: SentEdit; readonly rig: RigJson };
}

/** How the job on the desk stands with the records; `looking` where somebody only reads jobs, and tried something on it. */
export type Keeping = 'kept' | 'sending' | 'away' | 'refused' | 'signed-out' | 'clash' | 'looking';

/** Values that two people changed, and what the other made of the whole job. */
export interface Disagreement {
  readonly id: string;
  readonly clashes: readonly Clash[];
  readonly theirs: StoredJob;
  readonly base: RigJson;
}

/** The desk as the keeper sees it. */
export interface KeptDesk {
  readonly rigOf: (id: string) => RigJson | undefined;
  /** What the last step did, for the history. */
  readonly aboutOf: (id: string) => string;
  readonly syncedOf: (id: string) => Synced | undefined;
  readonly setSynced: (id: string, synced: Synced) => void;
  /** Somebody else's changes, put together with one's own. */
  readonly takeRig: (id: string, rig: RigJson, by: string) => void;
  readonly tell: (id: string, keeping: Keeping, why?: string) => void;
  readonly disagree: (disagreement: Disagreement | undefined) => void;
}

/** Quiet time after a change before it is sent [ms]: a drag is one edit. */
const QUIET = 500;
const TRY_AGAIN = 4000;
const MOST_PUTS = 500;

/** Sends what is done on the desk to the records and fetches what others did, job by job. */
export class JobKeeper {
  readonly #desk: KeptDesk;
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();
  readonly #busy = new Set<string>();
  readonly #open = new Map<string, Disagreement>();
  /** Fetched whole since the page was loaded: what this device keeps may be what somebody of another role was told. */
  readonly #fetched = new Set<string>();

  constructor(desk: KeptDesk) {
    this.#desk = desk;
  }

  /** Something was done to a job, or the connection is back. */
  touched(id: string, wait = QUIET): void {
    clearTimeout(this.#timers.get(id));
    this.#timers.set(
      id,
      setTimeout(() => void this.#work(id), wait),
    );
  }

  /** A job comes onto the desk: what waits is sent, then what others did is fetched. */
  async opened(id: string): Promise<void> {
    await this.#work(id);
    await this.look(id);
  }

  /** Looks whether others changed a job that is open. */
  async look(id: string): Promise<void> {
    const synced = this.#desk.syncedOf(id);
    if (synced === undefined || synced.version === 0 || this.#unsent(id) || this.#open.has(id)) return;
    if (this.#busy.has(id)) return;
    const answer = await openStored(id, this.#fetched.has(id) ? synced.version : undefined);
    if (answer.is === 'done') this.#fetched.add(id);
    if (answer.is === 'done' && this.#desk.syncedOf(id) === synced) this.#meet(id, answer.value, synced.rig);
    if (answer.is === 'away') this.#desk.tell(id, 'away');
    else if (!this.#unsent(id) && !this.#open.has(id)) this.#desk.tell(id, 'kept');
  }

  /** Ends a disagreement: of each value, whether one's own stands. */
  settle(id: string, mineStands: (clash: Clash) => boolean): void {
    const open = this.#open.get(id);
    const mine = this.#desk.rigOf(id);
    if (open === undefined || mine === undefined) return;
    this.#open.delete(id);
    this.#desk.disagree(undefined);
    const { document } = merged(open.base, mine, open.theirs.document.rig, mineStands);
    this.#desk.setSynced(id, { version: open.theirs.version, rig: open.theirs.document.rig });
    this.#desk.takeRig(id, document, open.theirs.changedBy);
    this.touched(id, 0);
  }

  #unsent(id: string): boolean {
    const synced = this.#desk.syncedOf(id);
    return synced === undefined || synced.pending !== undefined || this.#desk.rigOf(id) !== synced.rig;
  }

  async #work(id: string): Promise<void> {
    if (this.#busy.has(id) || this.#open.has(id)) return;
    this.#busy.add(id);
    try {
      while (!this.#open.has(id) && (await this.#step(id)));
    } finally {
      this.#busy.delete(id);
    }
  }

  /** Sends one thing; true when there may be more to send. */
  async #step(id: string): Promise<boolean> {
    const desk = this.#desk;
    const rig = desk.rigOf(id);
    const synced = desk.syncedOf(id);
    if (rig === undefined) return false;
    if (synced === undefined || synced.version === 0) return this.#make(id, rig);
    const pending = synced.pending ?? this.#next(id, rig, synced);
    if (pending === undefined) {
      desk.setSynced(id, { version: synced.version, rig });
      desk.tell(id, 'kept');
      return false;
    }
    desk.setSynced(id, { ...synced, pending });
    desk.tell(id, 'sending');
    const answer = await editStored(id, synced.version, pending.edit);
    switch (answer.is) {
      case 'done':
        desk.setSynced(id, { version: synced.version + 1, rig: pending.rig });
        // It had arrived before, and others went on since.
        if (answer.value.version !== synced.version + 1) return this.#fetch(id, pending.rig);
        return true;
      case 'stale':
        return this.#meet(id, answer.job, synced.rig);
      case 'away':
        return this.#later(id);
      case 'signed-out':
        desk.tell(id, 'signed-out', undefined);
        return false;
      case 'not-yours':
        desk.setSynced(id, { version: synced.version, rig: synced.rig });
        desk.tell(id, 'looking');
        return false;
      default:
        desk.setSynced(id, { version: synced.version, rig: synced.rig });
        desk.tell(id, 'refused', answer.is === 'refused' ? answer.why : 'the records no longer have the job');
        return false;
    }
  }

  #next(id: string, rig: RigJson, synced: Synced): Synced['pending'] {
    if (rig === synced.rig) return undefined;
    const about = this.#desk.aboutOf(id).slice(0, 200) || 'Changed';
    const { puts } = changeBetween(synced.rig, rig, about);
    if (puts.length === 0) return undefined;
    const whole = puts.length > MOST_PUTS || puts.some((p) => p.path.length === 0);
    const sent = whole
      ? [{ path: ['rig'], value: rig }]
      : puts.map(({ path, value }) => ({ path: ['rig', ...path], value }));
    return { edit: { operation: operationName(), about, puts: sent }, rig };
  }

  async #make(id: string, rig: RigJson): Promise<boolean> {
    this.#desk.tell(id, 'sending');
    const answer = await makeStored(id, rig);
    switch (answer.is) {
      case 'done':
        this.#desk.setSynced(id, { version: answer.value.version, rig });
        return true;
      case 'taken':
        return this.#fetch(id, undefined);
      case 'away':
        return this.#later(id);
      case 'signed-out':
        this.#desk.tell(id, 'signed-out', undefined);
        return false;
      case 'not-yours':
        this.#desk.tell(id, 'looking');
        return false;
      default:
        this.#desk.tell(id, 'refused', answer.is === 'refused' ? answer.why : undefined);
        return false;
    }
  }

  /** Fetches the job as it stands and puts it together with what is on the desk. */
  async #fetch(id: string, base: RigJson | undefined): Promise<boolean> {
    const answer = await openStored(id);
    if (answer.is === 'away') return this.#later(id);
    if (answer.is !== 'done') return false;
    return this.#meet(id, answer.value, base);
  }

  /** @param base what both started from; unknown where the job was made twice, so that every difference is asked about */
  #meet(id: string, theirs: StoredJob, base: RigJson | undefined): boolean {
    const mine = this.#desk.rigOf(id);
    if (mine === undefined) return false;
    const their = theirs.document.rig;
    const from = base ?? strangerTo(their, mine);
    const { document, clashes } = merged(from, mine, their);
    if (clashes.length === 0) {
      // One object where there is one text: what waits to be sent is told by whether the two are the same.
      const now = alike(mine, document) ? mine : document;
      this.#desk.setSynced(id, { version: theirs.version, rig: alike(now, their) ? now : their });
      this.#desk.takeRig(id, now, theirs.changedBy);
      return true;
    }
    const open: Disagreement = { id, clashes, theirs, base: from };
    this.#open.set(id, open);
    this.#desk.disagree(open);
    this.#desk.tell(id, 'clash');
    return false;
  }

  #later(id: string): false {
    this.#desk.tell(id, 'away');
    this.touched(id, TRY_AGAIN);
    return false;
  }
}

function alike(a: RigJson, b: RigJson): boolean {
  return changeBetween(a, b, '').puts.length === 0;
}

/** Stands for what both started from where nobody knows it: whatever differs is then asked about. */
function strangerTo(their: RigJson, mine: RigJson): RigJson {
  const { puts } = changeBetween(their, mine, '');
  return changed(their, { about: '', puts: puts.map(({ path }) => ({ path, value: null })) }).document;
}
