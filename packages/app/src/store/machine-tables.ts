import type { JsonText } from './json-text.ts';

/** A built machine: what it is, frozen when it was begun. */
export interface MachineRow {
  readonly serial: string;
  readonly job_id: string;
  /** The version of the job that it was built from. */
  readonly job_version: number;
  readonly title: string;
  readonly customer: string;
  /** Serial number, title, customer and job in small letters: what a search looks through. */
  readonly found_by: string;
  readonly document: JsonText;
  readonly made_at: string;
  readonly made_by: string;
}

/** One thing that was written down of a machine: a reading, a look, a step that was done. Never changed. */
export interface MachineEntryRow {
  readonly serial: string;
  /** Counts the entries of the machine: 1 for the first. */
  readonly number: number;
  /** Name that the sender gave it, so that it is kept once however often it arrives. */
  readonly operation: string;
  readonly kind: string;
  readonly document: JsonText;
  readonly made_by: string;
  readonly made_at: string;
}
