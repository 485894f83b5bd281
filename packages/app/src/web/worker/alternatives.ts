import type { Catalogue, Part } from '@spraywright/engine/catalogue';
import { parseQuantity, write } from '@spraywright/engine/quantity';
import { LAYOUTS, type Layout } from '@spraywright/engine/rig';
import type { RigJson } from '../protocol.ts';

type ItemJson = RigJson['items'][number];

/** Parts of the catalogue that a slot of the rig may take, cheapest first: carriers only of the form that the brief asks. */
export function partsForSlot(catalogue: Catalogue, rig: RigJson, slotId: string): Part[] {
  const slot = layoutOf(rig.layout)?.slots.find((s) => s.id === slotId);
  if (slot === undefined) return [];
  const form = (rig.brief as { carrier?: { form?: string } }).carrier?.form;
  return slot.kinds
    .flatMap((kind): readonly Part[] => catalogue.byKind[kind])
    .filter((part) => part.kind !== 'carrier' || part.form === form)
    .filter((part) =>
      Object.entries(slot.only ?? {}).every(([path, allowed]) => {
        let value: unknown = part;
        for (const step of path.split('.')) value = (value as Record<string, unknown> | undefined)?.[step];
        return typeof value === 'string' && allowed.includes(value);
      }),
    )
    .sort((a, b) => a.priceCents - b.priceCents || (a.id < b.id ? -1 : 1));
}

/** The rig with another part in a slot, or with the slot left empty; and what had to change with it. */
export function withSlot(
  rig: RigJson,
  catalogue: Catalogue,
  slotId: string,
  part: Part | undefined,
): { rig: RigJson; also?: string } {
  const before = rig.items.find((i) => i.id === slotId);
  if (part === undefined)
    return { rig: relined({ ...rig, items: rig.items.filter((i) => i.id !== slotId) }) };
  const { item, also } = fitted(before ?? { id: slotId, part: part.id }, part);
  let items = before === undefined ? [...rig.items, item] : rig.items.map((i) => (i === before ? item : i));
  if (part.kind === 'boom')
    items = items.map((i) =>
      catalogue.parts.get(i.part)?.kind === 'nozzle' ? { ...i, count: part.nozzles } : i,
    );
  const next = { ...rig, items };
  return { rig: before === undefined ? relined(next) : next, ...(also === undefined ? {} : { also }) };
}

/** The item with the part in it; a set pressure or speed that the part cannot hold goes to its nearest. */
function fitted(before: ItemJson, part: Part): { item: ItemJson; also?: string } {
  const item: ItemJson = { ...before, part: part.id };
  if (part.kind === 'hose' && item.length === undefined)
    return { item: { ...item, length: '5 ft' }, also: '5 ft of it' };
  if (part.kind === 'regulator') {
    const psi = (pressure: number) =>
      write(Math.round(pressure / 6894.757293168361) * 6894.757293168361, 'psi');
    const set = pressureOf(item.set);
    if (set === undefined)
      return { item: { ...item, set: psi(part.setMin) }, also: `set to ${psi(part.setMin)}` };
    const nearest = Math.min(part.setMax, Math.max(part.setMin, set));
    if (nearest !== set) return { item: { ...item, set: psi(nearest) }, also: `set to ${psi(nearest)}` };
  }
  return { item };
}

function pressureOf(text: string | undefined): number | undefined {
  const parsed = text === undefined ? undefined : parseQuantity(text, 'pressure');
  return parsed?.ok === true ? parsed.value : undefined;
}

/** Lines run again through the slots of the layout that are filled. */
function relined(rig: RigJson): RigJson {
  const layout = layoutOf(rig.layout);
  if (layout === undefined) return rig;
  const present = new Set(rig.items.map((i) => i.id));
  return {
    ...rig,
    lines: layout.lines.flatMap((line) => {
      const run = line.run.filter((id) => present.has(id));
      const was = rig.lines.find((l) => l.id === line.id);
      return run.length === 0 ? [] : [{ ...line, ...was, run }];
    }),
  };
}

function layoutOf(id: string): Layout | undefined {
  return LAYOUTS.find((l) => l.id === id);
}
