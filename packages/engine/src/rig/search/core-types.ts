import type { LayoutLine, Part, Port } from '../../catalogue/index.ts';
import type { FallingMain } from './falling-main.ts';
import type { MainCheck } from './main-check.ts';
import type { Adds } from './money.ts';
import type { LineEnd, Trim, TrimFront } from './trims.ts';

/** Slots whose parts are chosen last, group by group. */
export interface Group {
  readonly id: 'suction' | 'return' | 'agitation' | 'induction' | 'gauge' | 'battery';
  readonly slots: readonly string[];
  readonly line: LayoutLine | undefined;
}

/** A rig's parts outside the groups with what they add, and the ways to fill each group. */
export interface Core {
  readonly adds: Adds;
  readonly margin: number;
  /** What the wires add beyond those over the least ways, by the battery. */
  readonly wires: ReadonlyMap<Part | undefined, Adds>;
  readonly ends: readonly CoreEnd[];
  readonly fronts: readonly (readonly TrimFront[])[];
  /** Least that what meets at the manifold adds, whatever fills the groups. */
  readonly node: Adds;
  /** [Pa] */
  readonly pressure: number;
  /** Where a displacement pump feeds a regulator. */
  readonly main: MainCheck | undefined;
  /** That the drive carries at the pump's shaft [W]. */
  readonly power: number;
  /** Where a pump gives less against more. */
  readonly falling: FallingMain | undefined;
}

/** One end at the manifold that the core brings there. */
export interface CoreEnd {
  readonly line: string;
  readonly port: Port;
  readonly feeds: boolean;
  readonly bends: LineEnd | undefined;
}

/** A whole set of parts with its best figures. */
export interface Completion extends Trim {
  readonly groups: readonly Trim[];
}

/** Best figures that the ways of some fronts have, each by itself. */
export function idealOf(fronts: readonly Pick<TrimFront, 'trims'>[]): Omit<Trim, 'parts'> {
  let [cents, mass, late, margin] = [Infinity, Infinity, Infinity, -1];
  for (const { trims } of fronts)
    for (const t of trims) {
      cents = Math.min(cents, t.cents);
      mass = Math.min(mass, t.mass);
      late = Math.min(late, t.late);
      margin = Math.max(margin, t.margin);
    }
  return { cents, mass, late, margin };
}
