import {
  roleOf,
  type Catalogue,
  type Layout,
  type LayoutLine,
  type Part,
  type Slot,
} from '../../catalogue/index.ts';
import type { Chosen } from './assemble.ts';
import { SUCTION_HOSE } from './rest-of-rig.ts';
import { partsFor } from './slot-parts.ts';

const BAR = 1e5;
/** Loss that an added piece may take, and the speed that its bore is sized by: common practice, no source. */
const LARGEST_LOSS = 0.1 * BAR;
const FASTEST = 3;

/** Slots of outlet lines that the selection sizes by the duties; it fills every other by size. */
const SIZED: ReadonlySet<string> = new Set([
  'reel',
  'hose',
  'gun',
  'tip',
  'boom-valve',
  'boom-hose',
  'boom',
  'nozzle',
  'transfer-valve',
  'transfer-hose',
]);

/** Parts that a slot may take, cheapest first. */
export type PartsOf = (slot: Slot) => readonly Part[];

/**
 * Parts for the slots of an outlet line that a shop's own layout adds, such as a line strainer; undefined when the
 * catalogue has none large enough for the flow, or that stands the pressure.
 */
export function extrasOfLine(
  layout: Layout,
  line: LayoutLine,
  flow: number,
  pressure: number,
  partsOf: PartsOf,
): readonly (readonly [string, Part])[] | undefined {
  const out: (readonly [string, Part])[] = [];
  for (const slot of layout.slots) {
    if (!line.run.includes(slot.id) || SIZED.has(roleOf(slot.id))) continue;
    const part = partBySize(partsOf(slot), flow, pressure);
    if (part === undefined) return undefined;
    out.push([slot.id, part]);
  }
  return out;
}

/** Fills what is still empty and may not be; false when the catalogue has no part that does. */
export function fillExtraSlots(
  catalogue: Catalogue,
  layout: Layout,
  chosen: Map<string, Chosen>,
  flow: number,
  pressure: number,
): boolean {
  const unused = new Set(
    layout.lines.filter((l) => l.to === 'air' && !l.run.some((id) => chosen.has(id))).flatMap((l) => l.run),
  );
  for (const slot of layout.slots) {
    if (slot.optional === true || chosen.has(slot.id) || unused.has(slot.id)) continue;
    const part = partBySize(partsFor(catalogue, slot), flow, pressure);
    if (part === undefined) return false;
    chosen.set(slot.id, part.kind === 'hose' ? { part, length: SUCTION_HOSE } : { part });
  }
  return true;
}

/** Loss of a piece that says how much it passes at one bar [Pa]. */
export function lossThrough(part: Part, flow: number, density: number): number {
  return 'flowAtOneBar' in part && part.flowAtOneBar !== undefined
    ? (flow / part.flowAtOneBar) ** 2 * BAR * (density / 1000)
    : 0;
}

/** The first part that passes the flow with little loss and stands the pressure. */
function partBySize(parts: readonly Part[], flow: number, pressure: number): Part | undefined {
  const bore = Math.sqrt(flow / FASTEST / (Math.PI / 4));
  return parts.find(
    (part) =>
      (!('maxPressure' in part) || part.maxPressure >= pressure) &&
      (!('bore' in part) || part.bore >= bore * 0.9) &&
      lossThrough(part, flow, 1000) <= LARGEST_LOSS,
  );
}
