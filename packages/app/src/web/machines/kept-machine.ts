import { browserStorage } from '../state/kept-work.ts';

/** A machine as the records have it. */
export interface StoredMachine {
  readonly serial: string;
  readonly jobId: string;
  readonly jobVersion: number;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly document: {
    readonly rig: Readonly<Record<string, unknown>>;
    readonly parts: readonly unknown[];
    readonly engine: string;
    /** The accepted quote whose rig it is. */
    readonly quote?: {
      readonly number: string;
      readonly revision: string;
      readonly option: string;
      readonly acceptedAt: string;
    };
  };
}

/** Something that is written down of a machine, under a name of its own so that it arrives once. */
export interface Entry {
  readonly operation: string;
  readonly kind: string;
  readonly document: Readonly<Record<string, unknown>>;
  readonly by: string;
  readonly at: string;
  /** Absent until the records have it. */
  readonly number?: number;
}

/** What is kept on this device of one machine, so that work on it goes on without a network. */
export interface KeptMachine {
  readonly machine?: StoredMachine;
  /** In the records, in their order. */
  readonly entries: readonly Entry[];
  /** Not yet answered for by the records, in order. */
  readonly waiting: readonly Entry[];
}

const KEY = 'spraywright-machine-1 ';
const WHO = 'spraywright-who';

export const machineKey = (serial: string): string => `${KEY}${serial}`;

export function loadMachine(serial: string): KeptMachine {
  try {
    const kept = JSON.parse(browserStorage()?.getItem(machineKey(serial)) ?? '{}') as Partial<KeptMachine>;
    return {
      ...(kept.machine?.serial === serial ? { machine: kept.machine } : {}),
      entries: listOf(kept.entries).filter((e) => typeof e.number === 'number'),
      waiting: listOf(kept.waiting),
    };
  } catch {
    return { entries: [], waiting: [] };
  }
}

/** Keeps it; false when the browser refuses to. */
export function keepMachine(serial: string, kept: KeptMachine): boolean {
  try {
    const storage = browserStorage();
    storage?.setItem(machineKey(serial), JSON.stringify(kept));
    return storage !== undefined;
  } catch {
    return false;
  }
}

/** Who works on this device, as typed once. */
export function whoIsHere(): string {
  try {
    return browserStorage()?.getItem(WHO) ?? '';
  } catch {
    return '';
  }
}

export function rememberWho(name: string): void {
  try {
    browserStorage()?.setItem(WHO, name);
  } catch {
    // It is asked for again.
  }
}

function listOf(list: unknown): readonly Entry[] {
  return (Array.isArray(list) ? (list as Partial<Entry>[]) : []).filter(
    (e): e is Entry => typeof e?.operation === 'string' && typeof e.kind === 'string',
  );
}
