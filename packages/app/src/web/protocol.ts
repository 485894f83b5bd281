import type { PlumbingGraph, PlumbingLayout, SceneHold, SheetName } from '@spraywright/engine/drawings';
import type { Kind } from '@spraywright/engine/catalogue';
import type { Change, UnitSystem } from '@spraywright/engine/quantity';
import type { BriefEdit, BriefLists } from './whole-brief/brief-edits.ts';
import type { Design, NoOdds, Odds, PromiseKind, PromiseState } from '@spraywright/engine/rig';

/** What the page and its engine say to each other. Figures cross as text that is ready to be read. */

/** A rig as it is written to a file: what the page edits. */
export type RigJson = Extract<Design, { ok: true }>['rig'];

export interface FieldProblem {
  /** Steps of the field's path with points between them: `brief.duties.0.target.height`. */
  readonly path: string;
  readonly message: string;
}

/** A value that somebody gave, or may give: it is boxed and can be changed. */
export interface Given {
  readonly path: string;
  readonly sort: 'quantity' | 'number' | 'money' | 'flag' | 'choice' | 'text';
  /** What it is, for those who do not see where it stands. */
  readonly label: string;
  /** As read in the chosen units. */
  readonly shown: string;
  /** A start value of ours that nobody has confirmed. */
  readonly start?: boolean;
  readonly choices?: readonly (readonly [value: string, label: string])[];
  /** A second field that says the same. */
  readonly also?: string;
  /** The field that goes when the box is emptied; only what may be left unsaid has one. */
  readonly clears?: string;
}

export type Prose = readonly (string | Given)[];

export interface DutyTab {
  readonly id: string;
  readonly name: string;
  readonly state: PromiseState;
}

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

export interface PromiseRow {
  readonly id: string;
  readonly kind: PromiseKind;
  readonly state: PromiseState;
  readonly sentence: string;
  /** Letter of the duty it belongs to; absent when it holds for the whole rig. */
  readonly letter?: string;
  readonly duty?: string;
  readonly has?: string;
  readonly asked?: string;
  readonly cause: string;
  /** The small scale, as SVG text. */
  readonly scale: string;
  readonly items: readonly { readonly item: string; readonly number: number; readonly name: string }[];
  readonly decisions: readonly string[];
  readonly method: string;
  readonly source: string;
  /** Only for promises whose working is open. */
  readonly working?: readonly { readonly text: string; readonly figure?: string }[];
}

export interface PartRow {
  readonly item: string;
  readonly number: number;
  readonly slot: string;
  readonly part: string;
  readonly name: string;
  readonly count: number;
  readonly note?: string;
  readonly stock: string;
  readonly mass: string;
  readonly price: string;
  readonly givens: readonly { readonly before: string; readonly given: Given; readonly after: string }[];
  readonly optional: boolean;
  /** It is in no catalogue: somebody laid it in. */
  readonly own: boolean;
  /** What a part of its kind is for, in words that it is found by. */
  readonly does: string;
  /** Where the document says that it stays, and whether it does. */
  readonly pin: { readonly path: string; readonly held: boolean };
  readonly state?: string;
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

interface BillRow {
  readonly name: string;
  readonly quantity: string;
  readonly price: string;
  readonly late?: string;
}

export interface BillGroup {
  readonly name: string;
  readonly rows: readonly BillRow[];
  readonly price: string;
}

/** How the rig is priced, and what comes of it. */
export interface PricingTold {
  /** The rig's own rule, or the shop's. */
  readonly mode: 'shop' | PriceMode;
  readonly shopMode: PriceMode;
  /** Markup and margin that would leave the lines as they stand [%]. */
  readonly markup: number;
  readonly margin: number;
  readonly percent?: Given;
  readonly discount: Given;
  readonly freight: Given;
  /** Absent where the shop reckons none. */
  readonly tax?: { readonly percent: number; readonly on: 'everything' | 'goods'; readonly free: boolean };
  /** From the lines on; none while nothing is taken off or added. */
  readonly rows: readonly { readonly name: string; readonly figure: string }[];
  /** What the shop keeps of the price. */
  readonly kept: string;
  /** Why it may not be quoted, by the role of whoever would quote it; '' for a role without floors of its own. */
  readonly refusals: Readonly<Record<string, string>>;
}

type PriceMode = 'list' | 'cost-plus' | 'target-margin';

export interface CautionNote {
  readonly id: string;
  readonly place: 'brief' | 'scene' | 'line' | 'parts';
  readonly danger: string;
  readonly act: string;
  readonly source: string;
}

/** One row of the upright pressure line; pressures as shares of the scale. */
export interface UprightStep {
  readonly item?: string;
  readonly number?: number;
  readonly name: string;
  readonly detail: string;
  readonly before: number;
  readonly after: number;
  readonly slope: boolean;
  readonly rise: boolean;
  readonly figure: string;
  readonly strong: boolean;
  readonly limit?: { readonly at: number; readonly text: string };
}

export interface UprightLine {
  readonly steps: readonly UprightStep[];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly unit: string;
  readonly sentence: string;
}

export interface DeskBody {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly layout: string;
  readonly counts: Readonly<Record<PromiseState, number>>;
  readonly price: string;
  readonly dry: string;
  readonly full: string;
  readonly ready: string;
  readonly catalogue: string;
  readonly engine: string;
  readonly massUnit: string;
  readonly duties: readonly DutyTab[];
  readonly duty: string;
  /** Outlets that a duty opens and the rig does not have, and lines that no duty opens, in words. */
  readonly outletsAmiss: readonly string[];
  readonly prose: readonly Prose[];
  /** The duty in one line: flow and pressure at pump and tip. */
  readonly headline: string;
  readonly promises: readonly PromiseRow[];
  readonly parts: readonly PartRow[];
  readonly notFitted: readonly { readonly slot: string; readonly name: string; readonly does: string }[];
  readonly bill: readonly BillGroup[];
  /** What is to be paid. */
  readonly toPay: string;
  /** Absent for those who do not sell: they are told list prices alone. */
  readonly pricing?: PricingTold;
  readonly cautions: readonly CautionNote[];
}

/** Something in the scene that can be dragged; its figures in the reader's unit. */
export interface Handle {
  readonly id: string;
  /** The field it sets, and the field within that one where the rest of it stays. */
  readonly path: string;
  readonly within?: string;
  readonly label: string;
  /** Its middle in the drawing, and its size [px]. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly axis: 'x' | 'y';
  /** Change of the value with each pixel right, or down. */
  readonly perPixel: number;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly decimals: number;
  readonly unit: string;
  /** The part that it moves. */
  readonly item?: string;
  /** A second field beside `within` that a pointer moves with it, right and left. */
  readonly along?: {
    readonly within: string;
    readonly perPixel: number;
    readonly value: number;
    readonly min: number;
    readonly max: number;
  };
  /** What stays in its place while it is dragged. */
  readonly keeps: SceneHold['keeps'];
  /** What follows, said after the value. */
  readonly told: string;
}

export interface HandlesPicture {
  readonly list: readonly Handle[];
  /** Scale and ground of the scene, to be held while something is dragged. */
  readonly hold?: Omit<SceneHold, 'keeps'>;
}

interface RigPicture {
  readonly svg: string;
  readonly handles: readonly Handle[];
}

export interface Pictures {
  readonly handles?: HandlesPicture;
  readonly scene: string;
  /** The rig alone from three sides, for rigs whose parts have places. */
  readonly rig?: RigPicture;
  /** The lying pressure line, as SVG text, or the upright one. */
  readonly line: string;
  readonly upright?: UprightLine;
}

/** Which of the job's drawings lie in the left column. */
export type Leaf = 'desk' | 'plumbing' | 'curves' | 'choices';

/** A drawing of its own with its name and one sentence; without a drawing the sentence says why. */
export interface CurvePicture {
  readonly id: string;
  readonly name: string;
  readonly svg?: string;
  readonly note: string;
}

/** A valve as a row: how it stands, and what turning it would do. */
export interface ValveRow {
  readonly item: string;
  readonly number: number;
  readonly name: string;
  readonly open: boolean;
  /** What turning it would do, in words. */
  readonly would: string;
  /** The field of the duty that turning it sets; without one it is only tried. */
  readonly puts?: { readonly path: string; readonly value: unknown };
}

export interface PlumbingPicture {
  readonly svg: string;
  /** The state that is drawn, in words. */
  readonly now: string;
  /** Valves are shut that are open in the duty. */
  readonly tried: boolean;
  readonly valves: readonly ValveRow[];
}

/** A layout of the plumbing and what it was made for. */
export interface LaidPlumbing {
  readonly key: string;
  readonly layout: PlumbingLayout;
}

/** A rig that no other beats in price and margin. */
interface ChoiceRow {
  readonly id: string;
  readonly name: string;
  readonly price: string;
  readonly margin: string;
  readonly state: PromiseState;
  /** Those that are compared carry a letter. */
  readonly letter?: string;
}

/** Rigs side by side, the first being the one that stands. */
export interface Compared {
  readonly rigs: readonly {
    readonly id: string;
    readonly letter: string;
    readonly name: string;
    /** What has to be taken to have it. */
    readonly slot?: string;
    readonly part?: string;
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

export interface ChoicesPicture {
  readonly svg: string;
  readonly tried: number;
  readonly total: number;
  readonly done: boolean;
  readonly sentence: string;
  readonly best: readonly ChoiceRow[];
  readonly compared: Compared;
}

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

export type ToEngine =
  | { readonly type: 'ask'; readonly ask: number; readonly rig: RigJson; readonly question: Question }
  | { readonly type: 'start'; readonly address: string }
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
  | {
      readonly type: 'show';
      readonly seq: number;
      readonly version: number;
      readonly view: View;
      /** Only when it differs from the one sent before. */
      readonly rig?: RigJson;
      /** The last document that could be read, where the newest is known not to be. */
      readonly good?: RigJson;
    };

/** What a part taken changes in the document. */
export type Taken = Pick<RigJson, 'items' | 'lines' | 'ownParts'>;

export interface BriefTab {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly raw: unknown;
}

export type FromEngine =
  | {
      readonly type: 'ready';
      readonly shop: { name: string; address: string };
      readonly briefs: readonly BriefTab[];
      /** What a new job begins with, by the kind of work. */
      readonly works: readonly Pick<BriefTab, 'id' | 'name' | 'raw'>[];
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
  | { readonly type: 'drawn'; readonly seq: number; readonly pictures?: Pictures }
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
