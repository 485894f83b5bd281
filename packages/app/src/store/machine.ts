/** What a machine is, kept with it from the day it was begun: later changes of job and catalogue do not touch it. */
export interface MachineDocument {
  /** The rig with the brief it answers. */
  readonly rig: Readonly<Record<string, unknown>>;
  /** The catalogue parts it is built of, as typed in the catalogue then. */
  readonly parts: readonly { readonly kind: string; readonly part: unknown }[];
  /** Engine that proved it. */
  readonly engine: string;
  /** The accepted quote whose rig it is; absent where it was begun from the job as that stood. */
  readonly quote?: {
    readonly number: string;
    readonly revision: string;
    readonly option: string;
    readonly acceptedAt: string;
  };
}

/** A machine as lists show it. */
export interface MachineHead {
  readonly serial: string;
  readonly jobId: string;
  readonly jobVersion: number;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
  readonly madeBy: string;
}

export interface Machine extends MachineHead {
  /** How many entries there are of it. */
  readonly entries: number;
  readonly document: MachineDocument;
}

/** What is written down of a machine, under a name of its own so that it is kept once. */
export interface NewEntry {
  readonly operation: string;
  readonly kind: string;
  readonly document: Readonly<Record<string, unknown>>;
}

export interface MachineEntry extends NewEntry {
  readonly serial: string;
  readonly number: number;
  readonly by: string;
  readonly at: string;
}
