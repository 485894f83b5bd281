import { LAYOUTS, type Catalogue, type Layout, type Part, type Slot } from '../../catalogue/index.ts';
import type { Brief } from '../brief.ts';
import type { LineContext } from '../design/line-context.ts';
import { partsFor } from '../design/slot-parts.ts';
import { liquidOf } from '../proof/liquid.ts';
import { siteOf } from '../proof/site.ts';

/** One slot with everything that may stand in it; `undefined` is the empty slot. */
export interface SearchSlot {
  readonly id: string;
  readonly options: readonly (Part | undefined)[];
}

/** Every set of parts that a layout and the wishes of a brief let stand in its slots. */
export interface SearchSpace {
  readonly brief: Brief;
  readonly rawBrief: unknown;
  readonly catalogue: Catalogue;
  readonly layout: Layout;
  /** In the order in which the search decides them: what refuses most comes first. */
  readonly slots: readonly SearchSlot[];
  /** Lines are reckoned with spare; where that is not to be had, without. */
  readonly contexts: readonly LineContext[];
  /** Number of sets of parts before any is refused. */
  readonly size: number;
}

/** The part in a slot that has been decided; `undefined` when the slot stands empty. */
export type PartAt = (slot: string) => Part | undefined;

/** Slots in the order of the search: what drives a rig and carries it, its outlet lines, of which there are most, then the small parts. */
const ORDER = [
  'pump',
  'reduction',
  'engine',
  'pto',
  'tank',
  'carrier',
  'reel',
  'gun',
  'tip',
  'hose',
  'boom',
  'nozzle',
  'boom-hose',
  'boom-valve',
  'transfer-hose',
  'transfer-valve',
  'regulator',
  'agitator',
  'strainer',
  'suction-hose',
];

/** The space of one layout of a brief. */
export function spaceOf(brief: Brief, rawBrief: unknown, catalogue: Catalogue, layout: Layout): SearchSpace {
  const site = siteOf(brief);
  const liquids = new Map(brief.liquids.map((l) => [l.id, liquidOf(brief, l.id, site)]));
  const rank = (id: string) => (ORDER.includes(id) ? ORDER.indexOf(id) : ORDER.length);
  const slots = [...layout.slots]
    .map((slot, i) => ({ slot, i }))
    .sort((a, b) => rank(a.slot.id) - rank(b.slot.id) || a.i - b.i)
    .map(({ slot }): SearchSlot => ({ id: slot.id, options: optionsOf(brief, catalogue, slot) }));
  return {
    brief,
    rawBrief,
    catalogue,
    layout,
    slots,
    contexts: [1.06, 1].map((spare) => ({
      catalogue,
      layout,
      brief,
      site,
      liquids,
      spare,
      tipPressures: new Map(),
    })),
    size: slots.reduce((n, s) => n * s.options.length, 1),
  };
}

/** Whether a space is of a family that comes with the program, as it came but for what may stand in its slots. */
export function hasKnownFamily({ layout }: SearchSpace): boolean {
  return LAYOUTS.some((known) => known.lines === layout.lines);
}

/** Parts of a space that items of a rig are, by slot. */
export function partsIn(
  { slots }: SearchSpace,
  items: readonly { readonly id: string; readonly part: string }[],
): Map<string, Part> {
  const parts = new Map<string, Part>();
  for (const { id, options } of slots) {
    const item = items.find((i) => i.id === id);
    const part = options.find((p) => p !== undefined && p.id === item?.part);
    if (part !== undefined) parts.set(id, part);
  }
  return parts;
}

/** What may stand in a slot: parts of its kind that the brief's wishes allow, cheapest first; nothing where it may be empty. */
function optionsOf(brief: Brief, catalogue: Catalogue, slot: Slot): (Part | undefined)[] {
  const { wishes, carrier } = brief;
  const parts = partsFor(catalogue, slot).filter((part) => {
    if (part.kind === 'carrier') return part.form === carrier.form;
    if (part.kind === 'tank') return part.volume >= (wishes.tank ?? 0) * 0.98;
    if (part.kind === 'reel') return wishes.rewind === undefined || part.rewind === wishes.rewind;
    return true;
  });
  const wished = slot.id === 'reel' && wishes.rewind !== undefined;
  // A rig without a gauge cannot be set: where the catalogue has one, it has one.
  const needed = slot.id === 'gauge' && parts.length > 0;
  return slot.optional === true && !wished && !needed ? [undefined, ...parts] : [...parts];
}
