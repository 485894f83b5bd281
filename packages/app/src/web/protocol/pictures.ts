import type { PlumbingLayout, SceneHold } from '@spraywright/engine/drawings';

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

/** Drawings that need not follow a drag while nobody sees them. */
export type Spared = 'line' | 'rig';

export interface Pictures {
  readonly handles?: HandlesPicture;
  readonly scene: string;
  /** The rig alone from three sides, for rigs whose parts have places. */
  readonly rig?: RigPicture;
  /** The lying pressure line, as SVG text, or the upright one. */
  readonly line?: string;
  readonly upright?: UprightLine;
}

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
