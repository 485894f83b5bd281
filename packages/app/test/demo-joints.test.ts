import { describe, expect, it } from 'vitest';
import {
  jointFinder,
  LAYOUTS,
  mates,
  type Layout,
  type LayoutLine,
  type Part,
  type Port,
} from '@spraywright/engine/catalogue';
import { demoCatalogue } from './demo.ts';

const catalogue = demoCatalogue();
const find = jointFinder(catalogue);
const TEES: readonly Part[] = catalogue.byKind.fitting.filter((f) => f.form === 'tee');
/** More than the head of liquid in any tank: what parts without a rating see. */
const AT_REST = 1e5;

const rated = (part: Part) => ('maxPressure' in part ? part.maxPressure : AT_REST);
const port = (part: Part, id: string) => part.ports.find((p) => p.id === id);

/** Parts that a slot of a layout takes. */
function partsOf(layout: Layout, id: string): Part[] {
  const slot = layout.slots.find((s) => s.id === id)!;
  const field = (part: Part, path: string) =>
    path
      .split('.')
      .reduce<unknown>((value, step) => (value as Record<string, unknown> | undefined)?.[step], part);
  return slot.kinds
    .flatMap((kind): readonly Part[] => catalogue.byKind[kind])
    .filter((part) =>
      Object.entries(slot.only ?? {}).every(([path, allowed]) =>
        allowed.includes(field(part, path) as string),
      ),
    );
}

interface Pair {
  readonly a: Part;
  readonly from: Port | undefined;
  readonly b: Part;
  readonly to: Port | undefined;
}

function* between(as: readonly Part[], out: string, bs: readonly Part[], into: string): Generator<Pair> {
  for (const a of as) for (const b of bs) yield { a, from: port(a, out), b, to: port(b, into) };
}

/** Every pair of ports that can meet along one line of a layout, ends included. */
function* pairsOf(layout: Layout, line: LayoutLine): Generator<Pair> {
  const slots = line.run.map((id) => partsOf(layout, id));
  // An optional slot may be empty, so what stands behind it can be first too.
  const optional = (k: number) => layout.slots.find((s) => s.id === line.run[k])?.optional === true;
  for (let k = 0; k + 1 < slots.length; k++)
    yield* between(slots[k]!, line.run[k] === 'regulator' ? 'bypass' : 'out', slots[k + 1]!, 'in');
  const firsts = slots.filter((_, k) => line.run.slice(0, k).every((__, j) => optional(j))).flat();
  const last = slots[slots.length - 1]!;
  if (line.from === 'tank') yield* between(partsOf(layout, 'tank'), 'outlet', firsts, 'in');
  if (line.from === 'manifold') yield* between(TEES, 'in', firsts, 'in');
  if (line.to === 'manifold') yield* between(last, 'out', TEES, 'in');
  if (line.to === 'pump-in') yield* between(last, 'out', partsOf(layout, 'pump'), 'in');
  if (line.to === 'tank' && last.every((p) => port(p, 'out') !== undefined))
    yield* between(last, 'out', partsOf(layout, 'tank'), 'return');
}

describe('the fittings of the demo catalogue', () => {
  it.each(LAYOUTS.map((l) => [l.id, l] as const))(
    'join any two neighbours of the layout %s with three pieces at most',
    (_, layout) => {
      const gaps: string[] = [];
      const asked = new Set<string>();
      for (const line of layout.lines)
        for (const { a, from, b, to } of pairsOf(layout, line)) {
          if (from === undefined || to === undefined) {
            gaps.push(`${a.id} to ${b.id}: a port is missing`);
            continue;
          }
          const pressure = Math.min(rated(a), rated(b));
          const key =
            [from, to].map((p) => `${p.joint} ${p.size} ${p.gender}`).join(' > ') + ` @ ${pressure}`;
          if (asked.has(key) || mates(from, to)) continue;
          asked.add(key);
          const joint = find(from, to, pressure);
          if (!joint.ok) gaps.push(`${a.id} to ${b.id}: ${joint.gap}`);
          else if (joint.pieces.length > 3)
            gaps.push(`${a.id} to ${b.id}: ${joint.pieces.map((p) => p.id).join(', ')}`);
        }
      expect(asked.size).toBeGreaterThan(0);
      expect(gaps).toEqual([]);
    },
  );
});
