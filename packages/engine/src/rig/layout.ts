import type { Kind } from '../catalogue/index.ts';
import type { Outlet, Work } from './brief.ts';

/** One place in a layout where a part goes. The item of a rig that fills it carries the slot's id. */
export interface Slot {
  readonly id: string;
  readonly kinds: readonly Kind[];
  /** What the slot is for, as a builder says it. */
  readonly name: string;
  /** A rig may leave an optional slot empty. */
  readonly optional?: boolean;
  /** Only parts that pass are offered here: the use of a hose, the form of a valve. */
  readonly only?: Readonly<Record<string, readonly string[]>>;
}

/** A run of slots from one node to another; liquid flows from `from` to `to`. */
export interface LayoutLine {
  readonly id: string;
  readonly name: string;
  /** `tank`, `air` or a node of the layout. */
  readonly from: string;
  readonly to: string;
  readonly run: readonly string[];
  /** Bends and branches that plumbing of this kind has besides its parts, counted at the line's bore. */
  readonly elbows?: number;
  readonly teesRun?: number;
  readonly teesBranch?: number;
  /** Open when a duty opens this outlet, when it asks for agitation, or always. */
  readonly opens: Outlet | 'always' | 'agitation';
}

/** How the lines of one rig family join. A layout is data: a shop adds its own without touching the engine. */
export interface Layout {
  readonly id: string;
  readonly name: string;
  readonly works: readonly Work[];
  /** Nodes and their height above the deck [m]. */
  readonly nodes: Readonly<Record<string, number>>;
  readonly slots: readonly Slot[];
  readonly lines: readonly LayoutLine[];
}
