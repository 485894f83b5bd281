import type { Dimension, UnitSystem } from '@spraywright/engine/quantity';
import type { PlumbingGraph, PlumbingLayout } from '@spraywright/engine/drawings';
import type { StepAsks } from '@spraywright/engine/rig';
import type { JudgedTest, YardSheet } from '@spraywright/engine/yard';
import type { StoredMachine } from '../kept-machine.ts';

/** A machine as it stands, for the engine: what it was begun as, and what was put in since. */
export interface AskedMachine {
  readonly serial: string;
  readonly document: StoredMachine['document'];
  /** Documents of its substitutions, in order. */
  readonly instead: readonly unknown[];
  readonly units: UnitSystem;
}

/** Pieces or feet by part number. */
export type Counts = Readonly<Record<string, number>>;

/** What the engine of this sheet can be asked, and what it answers. */
export interface Questions {
  readonly build: {
    readonly asks: {
      /** What moved in the store in all, and for this machine; absent while the records have not been reached. */
      readonly moved?: Counts;
      readonly given?: Counts;
      readonly sheet: 'day' | 'night';
    };
    readonly tells: BuildSheet;
  };
  readonly plumbing: {
    readonly asks: { readonly layout: PlumbingLayout; readonly sheet: 'day' | 'night' };
    readonly tells: string;
  };
  readonly instead: { readonly asks: { readonly slot: string }; readonly tells: readonly TriedPart[] };
  readonly fault: {
    readonly asks: {
      readonly readings: readonly { readonly id: string; readonly value: string }[];
      readonly looks: readonly { readonly id: string; readonly answer: 'yes' | 'no' }[];
      readonly waterTemperature?: string;
    };
    readonly tells: FaultSheet;
  };
  readonly yard: {
    /** Readings in the form of a readings document; the edition whose limits the tips are held against. */
    readonly asks: { readonly readings: unknown; readonly edition?: string };
    readonly tells: YardTold;
  };
  readonly liquids: {
    readonly asks: { readonly last?: string; readonly next?: string };
    readonly tells: LiquidSheet;
  };
}

export type Topic = keyof Questions;

export interface ToMachine<T extends Topic = Topic> {
  readonly id: number;
  /** Of what the page starts from. */
  readonly address: string;
  readonly topic: T;
  readonly machine: AskedMachine;
  readonly asks: Questions[T]['asks'];
}

export interface FromMachine {
  readonly id: number;
  readonly tells?: unknown;
  readonly why?: string;
}

export interface FetchRow {
  readonly group: string;
  /** Part numbers of the drawings. */
  readonly numbers: string;
  readonly part: string;
  readonly name: string;
  readonly unit: string;
  readonly need: number;
  readonly taken: number;
  readonly onHand: number;
  /** What the records say is in the store, less than nought where more was taken than was there. */
  readonly inStore: number;
  readonly take: number;
  readonly short: number;
}

export interface OrderRow {
  readonly supplier: string;
  readonly part: string;
  readonly name: string;
  readonly order: string;
  readonly days: number;
}

export interface CutRow {
  readonly number: string;
  readonly name: string;
  readonly ends: readonly [string, string];
  readonly count: number;
  readonly length: string;
}

export interface StepRow {
  readonly id: string;
  readonly text: string;
  readonly numbers: readonly number[];
  /** Catalogue numbers and names of its parts. */
  readonly parts: readonly { readonly part: string; readonly name: string }[];
  readonly check: string;
  readonly figure: string;
  readonly by: string;
  readonly asks?: StepAsks;
}

export interface CautionRow {
  readonly id: string;
  readonly danger: string;
  readonly act: string;
  readonly source: string;
}

export interface SlotRow {
  readonly slot: string;
  readonly name: string;
  readonly part: string;
  readonly partName: string;
}

/** Everything that one machine is built by. */
export interface LoadRow {
  readonly support: string;
  readonly full: string;
  readonly half: string;
  readonly empty: string;
  /** "not told" where nobody said it. */
  readonly rating: string;
}

export interface BuildSheet {
  readonly title: string;
  readonly customer: string;
  readonly warnings: readonly string[];
  readonly fetch: readonly FetchRow[];
  readonly orders: readonly OrderRow[];
  readonly cuts: readonly CutRow[];
  readonly steps: readonly StepRow[];
  readonly cautions: readonly CautionRow[];
  readonly slots: readonly SlotRow[];
  readonly frame?: string;
  /** What rests on each support. */
  readonly loads: readonly LoadRow[];
  readonly wiring?: string;
  readonly plumbing: PlumbingGraph;
}

/** Another part for a slot, and what the whole rig says of it. */
export interface TriedPart {
  readonly part: string;
  readonly name: string;
  readonly allowed: boolean;
  /** What has to change with it. */
  readonly also: readonly string[];
  /** Promises that it would break or bring into doubt. */
  readonly worse: readonly string[];
}

interface FaultRow {
  readonly name: string;
  readonly chance: string;
  readonly probability: number;
}

export interface CheckRow {
  readonly id: string;
  readonly kind: 'reading' | 'look';
  readonly text: string;
  /** What kind of value is typed. */
  readonly dimension?: Dimension;
}

export interface FaultSheet {
  /** Everything that can be read or looked at on this rig. */
  readonly checks: readonly CheckRow[];
  readonly state: 'found' | 'nothing-wrong' | 'unknown-cause' | 'cannot-tell';
  readonly verdict: string;
  readonly mend?: string;
  readonly send?: string;
  /** Part number of what is sent, or of what it is for. */
  readonly part?: string;
  readonly suspects: readonly FaultRow[];
  /** What is asked at once, and not answered yet. */
  readonly first: readonly CheckRow[];
  /** The most telling first. */
  readonly next: readonly (CheckRow & { readonly settles: string })[];
  readonly source: string;
  /** Readings that do not fit, each a sentence. */
  readonly problems: readonly string[];
}

export interface YardTold {
  readonly sheet: YardSheet;
  readonly judged: JudgedTest;
  readonly cautions: readonly CautionRow[];
  /** Readings that do not fit the sheet, each a sentence. */
  readonly problems: readonly string[];
}

export interface LiquidSheet {
  readonly liquids: readonly { readonly id: string; readonly name: string }[];
  /** Absent while no last liquid is known. */
  readonly between?: {
    readonly after: string;
    readonly steps: readonly string[];
    readonly dangers: readonly {
      readonly a: string;
      readonly b: string;
      readonly severity: 'never' | 'avoid';
      readonly result: string;
      readonly sources: string;
    }[];
  };
}
