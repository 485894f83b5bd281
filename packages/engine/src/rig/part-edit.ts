import { ownPartShape, readOwnParts, type Catalogue, type Layout, type Part } from '../catalogue/index.ts';
import { changeBetween, parseQuantity, read, type Change } from '../quantity/index.ts';
import { wholePsi, wholeRpm, type RawRig } from './design/assemble.ts';

type RawItem = RawRig['items'][number];

/** A part put into a slot: the change of the document, and what had to change with the part, in words. */
export interface PartEdit {
  readonly change: Change;
  readonly also: readonly string[];
}

/** Length that a hose gets in a place that was empty: whoever takes it knows how long it must be. */
const FIRST_LENGTH = '5 ft';

/** A part by its id: of the catalogue, or one that the rig brings itself and that can be read. */
export function partById(rig: RawRig, catalogue: Catalogue, id: string): Part | undefined {
  const part = catalogue.parts.get(id);
  if (part !== undefined) return part;
  const own = (rig.ownParts ?? []).flatMap((raw) => {
    const found = read(ownPartShape, raw);
    return found.ok ? [found.value] : [];
  });
  return readOwnParts(own, catalogue, []).parts.get(id)?.part;
}

/**
 * Puts a part into a slot of a rig, or leaves the slot empty when no part is given. Settings that the part cannot hold
 * go to the nearest it can; a boom brings its number of nozzles; a slot newly filled or emptied changes the lines.
 */
export function putPart(rig: RawRig, catalogue: Catalogue, slot: string, part: Part | undefined): PartEdit {
  const before = rig.items.find((i) => i.id === slot);
  const layout = catalogue.layouts.find((l) => l.id === rig.layout);
  if (part === undefined) {
    const emptied = without(rig, slot);
    return { change: changeBetween(rig, emptied, `Leave out the ${nameOf(layout, slot)}`), also: [] };
  }
  const also: string[] = [];
  const item = fitted(before ?? { id: slot, part: part.id }, part, also);
  let items = before === undefined ? [...rig.items, item] : rig.items.map((i) => (i === before ? item : i));
  if (part.kind === 'boom')
    items = items.map((i) => {
      if (partById(rig, catalogue, i.part)?.kind !== 'nozzle' || (i.count ?? 1) === part.nozzles) return i;
      also.push(`${part.nozzles} nozzles`);
      return { ...i, count: part.nozzles };
    });
  const filled = { ...rig, items };
  const next = before === undefined ? { ...filled, lines: linesWith(filled, layout, slot) } : filled;
  return { change: changeBetween(rig, next, `Take ${part.name}`), also };
}

/** The item with the part in it; a setting that the part cannot hold goes to its nearest. */
function fitted(before: RawItem, part: Part, also: string[]): RawItem {
  const item: RawItem = { ...before, part: part.id };
  switch (part.kind) {
    case 'hose':
      if (item.length === undefined) {
        item.length = FIRST_LENGTH;
        also.push(`${FIRST_LENGTH} of it`);
      }
      return item;
    case 'regulator': {
      const held = (text: string | undefined): string | undefined => {
        const set = quantityOf(text, 'pressure');
        if (set === undefined || set < part.setMin) return wholePsi(part.setMin, Math.ceil);
        return set > part.setMax ? wholePsi(part.setMax, Math.floor) : text;
      };
      const set = held(item.set);
      if (set !== item.set) {
        item.set = set!;
        also.push(`set to ${set}`);
      }
      for (const [duty, text] of Object.entries(item.setByDuty ?? {})) {
        const nearest = held(text)!;
        if (nearest === text) continue;
        item.setByDuty = { ...item.setByDuty, [duty]: nearest };
        also.push(`set to ${nearest} for ${duty}`);
      }
      return item;
    }
    case 'engine': {
      const speed = quantityOf(item.speed, 'rotation');
      if (speed === undefined) return item;
      const nearest = Math.min(part.ratedSpeed, Math.max(part.minSpeed, speed));
      if (nearest === speed) return item;
      item.speed = wholeRpm(nearest);
      also.push(`at ${item.speed}`);
      return item;
    }
    default:
      return item;
  }
}

function quantityOf(text: string | undefined, dimension: 'pressure' | 'rotation'): number | undefined {
  const parsed = text === undefined ? undefined : parseQuantity(text, dimension);
  return parsed?.ok === true ? parsed.value : undefined;
}

/** The rig without an item: it leaves its line, and a line of nothing else goes with it. */
function without(rig: RawRig, slot: string): RawRig {
  return {
    ...rig,
    items: rig.items.filter((i) => i.id !== slot),
    lines: rig.lines.flatMap((line) => {
      if (!line.run.includes(slot)) return [line];
      const run = line.run.filter((id) => id !== slot);
      return run.length === 0 ? [] : [{ ...line, run }];
    }),
  };
}

/** Lines with a newly filled slot where the layout has it; lines that the layout does not know stay as they are. */
function linesWith(rig: RawRig, layout: Layout | undefined, slot: string): RawRig['lines'] {
  const line = layout?.lines.find((l) => l.run.includes(slot));
  if (layout === undefined || line === undefined) return rig.lines;
  const place = (id: string) => {
    const at = layout.lines.findIndex((l) => l.id === id);
    return at < 0 ? layout.lines.length : at;
  };
  return rig.lines.some((l) => l.id === line.id)
    ? rig.lines.map((l) => (l.id === line.id ? { ...l, run: inserted(l.run, line.run, slot) } : l))
    : [...rig.lines, { ...line, run: [slot] }].sort((a, b) => place(a.id) - place(b.id));
}

/** A run with the slot behind those that stand before it in the layout. */
function inserted(run: readonly string[], order: readonly string[], slot: string): string[] {
  const ahead = order.slice(0, order.indexOf(slot));
  const at = run.reduce((last, id, i) => (ahead.includes(id) ? i + 1 : last), 0);
  return [...run.slice(0, at), slot, ...run.slice(at)];
}

function nameOf(layout: Layout | undefined, slot: string): string {
  return (layout?.slots.find((s) => s.id === slot)?.name ?? slot).toLowerCase();
}
