import type { PlumbingGraph, SceneHold, SheetName } from '@spraywright/engine/drawings';
import type { Kind } from '@spraywright/engine/catalogue';
import type { Change, UnitSystem } from '@spraywright/engine/quantity';
import type { NoOdds, Odds } from '@spraywright/engine/rig';
import type { BriefEdit, BriefLists } from './whole-brief/brief-edits.ts';
import type { DeskBody } from './protocol/desk-body.ts';
import type { FieldProblem, RigJson } from './protocol/given.ts';
import type { CurvePicture, LaidPlumbing, Pictures, PlumbingPicture, Spared } from './protocol/pictures.ts';
import type { FoundRigs } from './protocol/search.ts';
import type { ChoicesPicture, Effects, WayOut } from './protocol/tried.ts';

/** What the page and its engine say to each other. Figures cross as text that is ready to be read. */

export type * from './protocol/desk-body.ts';
export type * from './protocol/given.ts';
export type * from './protocol/pictures.ts';
export type * from './protocol/search.ts';
export type * from './protocol/tried.ts';

/** Which of the job's drawings lie in the left column. */
export type Leaf = 'desk' | 'plumbing' | 'curves' | 'choices';

export interface View {
  readonly leaf: Leaf;
  readonly units: UnitSystem;
  readonly sheet: SheetName;
  readonly duty: string | undefined;
  readonly lit: string | undefined;
  /** Slot whose alternatives are wanted. */
  readonly slot: string | undefined;
  /** Promises whose working is open. */
  readonly working: readonly string[];
  readonly upright: boolean;
  readonly sceneWidth: number;
  readonly sceneHeight: number;
  readonly lineWidth: number;
  /** While something in the scene is dragged. */
  readonly hold: SceneHold | undefined;
  /** Drawings that are not wanted this time; the page keeps those it has. */
  readonly spared: readonly Spared[];
  readonly curveWidth: number;
  /** The newest layout of the plumbing; a stale one is not drawn. */
  readonly plumbing: LaidPlumbing | undefined;
  /** Valves that are shut to see what happens. */
  readonly tried: readonly string[];
  /** Rigs picked to be compared with the one that stands. */
  readonly compared: readonly string[];
  readonly scaleWidth: number;
  readonly scaleHeight: number;
}

/** What the worker of the odds is asked. */
export interface ToOdds {
  readonly address: string;
  readonly version: number;
  readonly rig: RigJson;
  readonly units: UnitSystem;
}

/** How sure the promises of one version of a rig are, by the promise's id. */
export interface OddsTold {
  readonly version: number;
  readonly draws: number;
  readonly odds: Readonly<Record<string, Odds | NoOdds>>;
  /** What tests of built machines have taught of this rig's parts: a heading, then a line each; empty when nothing. */
  readonly sharper: readonly string[];
}

/** A part that is in no catalogue, as it is typed. */
export interface TypedPart {
  readonly kind: Kind;
  readonly figuresFrom: string;
  readonly part: Readonly<Record<string, unknown>>;
}

/** What the form of such a part begins with. */
export interface OwnPartStart {
  readonly kinds: readonly Kind[];
  /** Of each kind, the part that is there or the cheapest that could be: what the leaflet does not say is taken over from it. */
  readonly like: Readonly<Partial<Record<Kind, TypedPart['part']>>>;
  readonly materials: readonly (readonly [id: string, name: string])[];
  /** False for those who do not sell: they are asked no cost. */
  readonly costsTold: boolean;
  /** The part that is there, when it is in no catalogue already. */
  readonly there?: TypedPart;
}

/** What the page asks beside its drawings, and what it is answered. */
export type Question =
  | { readonly about: 'own-part-start'; readonly slot: string }
  | { readonly about: 'own-part'; readonly slot: string; readonly own: TypedPart }
  | { readonly about: 'brief-lists' }
  | { readonly about: 'brief-edit'; readonly edit: BriefEdit }
  | { readonly about: 'price' };

export type Answers = {
  readonly 'own-part-start': OwnPartStart;
  readonly 'own-part': { readonly refused: readonly FieldProblem[] } | { readonly taken: Taken };
  readonly 'brief-lists': BriefLists;
  readonly 'brief-edit': { readonly change: Change } | { readonly refused: string };
  /** Nothing of a rig that cannot be read. */
  readonly price: { readonly price?: string; readonly counts?: DeskBody['counts'] };
};

/** What a part taken changes in the document. */
export type Taken = Pick<RigJson, 'items' | 'lines' | 'ownParts'>;

export interface BriefTab {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly raw: unknown;
}

export type ToEngine =
  | { readonly type: 'ask'; readonly ask: number; readonly rig: RigJson; readonly question: Question }
  /** What the page starts from, as the bytes of `start.json`. */
  | { readonly type: 'start'; readonly document: ArrayBuffer }
  | {
      readonly type: 'design';
      readonly brief: unknown;
      /** The rig whose parts are chosen again; what is pinned in it stays. */
      readonly from?: RigJson;
      readonly units: UnitSystem;
    }
  | {
      readonly type: 'take';
      readonly rig: RigJson;
      readonly slot: string;
      /** Without one the slot is left empty. */
      readonly part?: string;
      readonly about: string;
    }
  /** What the search of the catalogue has found. */
  | { readonly type: 'found'; readonly found: FoundRigs }
  | {
      readonly type: 'show';
      readonly seq: number;
      readonly version: number;
      readonly view: View;
      /** What makes the rig that was sent before into this one, where it is of the same job; else the rig itself. Absent when it is the same. */
      readonly change?: Change;
      readonly rig?: RigJson;
      /** The last document that could be read, where the newest is known not to be. */
      readonly good?: RigJson;
    };

export type FromEngine =
  | {
      readonly type: 'ready';
      readonly shop: { name: string; address: string };
      readonly briefs: readonly BriefTab[];
      /** What a new job begins with, by the kind of work. */
      readonly works: readonly Pick<BriefTab, 'id' | 'name' | 'raw'>[];
      /** Rig that is chosen already for one of the briefs. */
      readonly designed?: RigJson;
    }
  | { readonly type: 'failed'; readonly message: string }
  | { readonly type: 'answer'; readonly ask: number; readonly answer: Answers[Question['about']] }
  | { readonly type: 'designed'; readonly rig: RigJson }
  | { readonly type: 'taken'; readonly taken: Taken; readonly about: string }
  | { readonly type: 'no-design'; readonly problems: readonly FieldProblem[] }
  | {
      readonly type: 'shown';
      readonly seq: number;
      readonly version: number;
      readonly problems: readonly FieldProblem[];
      /** What makes the newest `DeskBody` of the last one that was told: from one edit to the next little of it changes. */
      readonly change?: Change;
    }
  /** Follows each `shown`, so that figures need not wait for drawings; nothing to draw without a readable rig. */
  | {
      readonly type: 'drawn';
      readonly seq: number;
      readonly pictures?: Pictures;
      readonly spared?: readonly Spared[];
    }
  /** The plumbing wants a layout, which the page makes. */
  | { readonly type: 'plumbing'; readonly key: string; readonly graph: PlumbingGraph }
  | { readonly type: 'plumbing-drawn'; readonly version: number; readonly picture: PlumbingPicture }
  | { readonly type: 'choices'; readonly version: number; readonly choices: ChoicesPicture }
  | { readonly type: 'curves'; readonly version: number; readonly curves: readonly CurvePicture[] }
  | { readonly type: 'effects'; readonly version: number; readonly effects: Effects }
  | {
      readonly type: 'ways-out';
      readonly version: number;
      readonly ways: Readonly<Record<string, readonly WayOut[]>>;
      readonly done: boolean;
    };
