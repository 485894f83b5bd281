import { partNumbers } from '@spraywright/engine/drawings';
import { displayParts, priceText, type UnitSystem } from '@spraywright/engine/quantity';
import type { Proof, Rig } from '@spraywright/engine/rig';
import type { PartRow } from '../protocol.ts';
import { Givens } from './given.ts';
import { DOES } from './what-parts-do.ts';

/** Rows of the parts list in the order of their numbers: name, what is given, mass and price. */
export function partRows(raw: unknown, rig: Rig, proof: Proof, units: UnitSystem): PartRow[] {
  const numbers = partNumbers(proof);
  const g = new Givens(raw, units);
  const states = new Map(proof.duties.flatMap((d) => [...d.open.states]));
  return proof.parts
    .map((p): PartRow => {
      const slot = rig.layout?.slots.find((s) => s.id === p.item);
      const line = proof.bill.lines.find((l) => l.item === p.item);
      const { part, item } = rig.items.get(p.item)!;
      const short = line?.short ?? 0;
      return {
        item: p.item,
        number: numbers.get(p.item) ?? 0,
        slot: slot?.name ?? p.item,
        part: p.part,
        name: p.name,
        count: p.count,
        ...noteOf(part.note, p.figuresFrom),
        stock: short > 0 ? toGet(p.figuresFrom !== undefined, line!.leadTimeDays) : 'in stock',
        mass: displayParts(line?.mass ?? 0, 'mass', units, {
          unit: units === 'us' ? 'lb' : 'kg',
          decimals: 0,
        }).figure,
        price: priceText(line?.priceCents ?? 0).slice(1),
        givens: givensOf(g, rig, p.item, item.length, part.kind),
        optional: slot?.optional ?? false,
        own: p.figuresFrom !== undefined,
        does: DOES[part.kind],
        pin: {
          path: `items.${rig.document.items.findIndex((i) => i.id === p.item)}.pinned`,
          held: item.pinned === true,
        },
        ...(states.has(p.item) ? { state: states.get(p.item)! } : {}),
      };
    })
    .sort((a, b) => a.number - b.number);
}

function toGet(own: boolean, days: number): string {
  if (!own) return `to order, ${days} days`;
  return days === 0 ? 'at hand' : `here in ${days} days`;
}

function noteOf(note: string | undefined, figuresFrom: string | undefined): { note?: string } {
  const own = figuresFrom === undefined ? [] : [`In no catalogue: its figures are from ${figuresFrom}`];
  const all = [...own, ...(note === undefined ? [] : [note])];
  return all.length === 0 ? {} : { note: all.join('. ') };
}

function givensOf(
  g: Givens,
  rig: Rig,
  item: string,
  length: number | undefined,
  kind: string,
): PartRow['givens'] {
  const at = `items.${rig.document.items.findIndex((i) => i.id === item)}`;
  const { part } = rig.items.get(item)!;
  const out: { before: string; given: PartRow['givens'][number]['given']; after: string }[] = [];
  if (kind === 'hose' && length !== undefined)
    out.push({
      before: '',
      given: g.quantity(`${at}.length`, 'length', 'Cut length of the hose'),
      after: '',
    });
  if (part.kind === 'regulator')
    out.push({
      before: 'set ',
      given: g.quantity(`${at}.set`, 'pressure', 'Set pressure', part.setMin),
      after: '',
    });
  if (part.kind === 'engine')
    out.push({
      before: 'at ',
      given: g.quantity(`${at}.speed`, 'rotation', 'Working speed of the engine', part.ratedSpeed),
      after: '',
    });
  if (part.kind === 'nozzle')
    out.push({ before: '× ', given: g.number(`${at}.count`, 'Number of nozzles', '1'), after: '' });
  return out;
}

/** Slots of the layout that the rig leaves empty. */
export function emptySlots(rig: Rig): { slot: string; name: string; does: string }[] {
  return (rig.layout?.slots ?? [])
    .filter((s) => s.optional === true && !rig.items.has(s.id))
    .map((s) => ({ slot: s.id, name: s.name, does: s.kinds.map((kind) => DOES[kind]).join(' ') }));
}
