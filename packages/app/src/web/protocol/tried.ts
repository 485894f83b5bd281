import type { Change } from '@spraywright/engine/quantity';
import type { PromiseState } from '@spraywright/engine/rig';
import type { RigJson } from './given.ts';

/** A change that keeps a broken promise and breaks no other. */
export interface WayOut {
  readonly name: string;
  readonly change: Change;
  /** Items of the rig that it touches. */
  readonly slots: readonly string[];
  /** What the promise then has, and how it stands. */
  readonly then: string;
  readonly state: PromiseState;
  readonly price: string;
  readonly mass: string;
}

/** One part as it would be in place of the one that is there. */
export interface Effect {
  readonly part: string;
  readonly name: string;
  /** Change of the duty's reach, or of its flow where nothing is to be reached. */
  readonly change: string;
  readonly mass: string;
  readonly price: string;
  readonly broken: number;
  /** The worst state of the rig with it. */
  readonly state: PromiseState;
  readonly breaks: readonly string[];
  readonly mends: readonly string[];
  /** What has to change with it: a set pressure that it cannot hold. */
  readonly also?: string;
}

export interface Effects {
  readonly slot: string;
  /** Heading of the change column: "reach, ft". */
  readonly what: string;
  readonly list: readonly Effect[];
  readonly total: number;
  readonly done: boolean;
}

/** A rig that no other beats in price and margin. */
export interface ChoiceRow {
  readonly id: string;
  readonly name: string;
  readonly price: string;
  readonly margin: string;
  readonly state: PromiseState;
  /** Those that are compared carry a letter. */
  readonly letter?: string;
}

/** A part in a slot, or a whole rig. */
export type Take = { readonly slot: string; readonly part: string } | { readonly rig: RigChange };

/** What a rig that was found puts in place of what the rig has. */
export type RigChange = Pick<RigJson, 'layout' | 'nodes' | 'items' | 'lines'>;

/** Rigs side by side, the first being the one that stands. */
export interface Compared {
  readonly rigs: readonly {
    readonly id: string;
    readonly letter: string;
    readonly name: string;
    /** What has to be taken to have it; none for the rig that stands. */
    readonly take?: Take;
  }[];
  readonly rows: readonly {
    readonly label: string;
    readonly cells: readonly {
      readonly text: string;
      readonly same: boolean;
      readonly change?: string;
      readonly state?: PromiseState;
    }[];
  }[];
  /** Further promises that differ and are not shown. */
  readonly more: number;
}

/** A kind of rig that the search found: of those alike the cheapest. */
export interface FoundRow extends ChoiceRow {
  readonly dry: string;
  readonly days: string;
  /** Rigs of this kind that were found, which differ in small parts. */
  readonly alike: number;
}

export interface ChoicesPicture {
  readonly svg: string;
  readonly tried: number;
  readonly total: number;
  readonly done: boolean;
  readonly sentence: string;
  readonly best: readonly ChoiceRow[];
  /** What the search of the whole catalogue found, and how many kinds are not among it. */
  readonly found: readonly FoundRow[];
  readonly moreFound: number;
  readonly compared: Compared;
}
