import {
  deckPlan,
  PALETTES,
  partNumbers,
  plumbingDiagram,
  plumbingGraph,
  wiringDiagram,
} from '@spraywright/engine/drawings';
import { display, type UnitSystem } from '@spraywright/engine/quantity';
import {
  asStocked,
  assemblySteps,
  fetchList,
  ordersToFetch,
  pickList,
  shutInDuty,
  slotsOf,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import type { ProvenMachine } from './proven-machine.ts';
import type { BuildSheet, CautionRow, LoadRow, Questions, StepRow } from './protocol.ts';

/** Width of a drawing, px; narrower screens scroll it. */
const WIDTH = 760;
/** Where the hands are while a rig is built. */
const PLACES: ReadonlySet<string> = new Set(['plumbing', 'drive', 'electrics', 'lifting']);

/** What one machine is built by: what to fetch, buy and cut, its drawings, its steps. */
export function buildSheet(
  machine: ProvenMachine,
  { moved, given = {}, sheet }: Questions['build']['asks'],
): BuildSheet {
  const { rig, proof, catalogue, inputs, asked } = machine;
  const { units } = asked;
  const numbers = partNumbers(proof);
  // What a part was when the machine was begun stands in its own catalogue; what the store has and who supplies it, in today's.
  const partOf = (id: string) =>
    asStocked(catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part, inputs.laidIn);
  const counts = moved ?? inputs.moved;
  const onHand = (id: string) => (inputs.laidIn.parts.get(id)?.stock ?? 0) + (counts[id] ?? 0);
  const list = fetchList(pickList(proof.bill, partOf), onHand, (id) => -(given[id] ?? 0));
  const count = (n: number, unit: string) => (unit === 'ft' ? `${n} ft` : String(n));
  const palette = PALETTES[sheet];
  const frame = deckPlan(proof, { width: WIDTH, units, palette });
  return {
    title: proof.title,
    customer: proof.customer,
    warnings: warningsOf(proof),
    fetch: list.map(({ items, ...row }) => ({
      ...row,
      inStore: onHand(row.part),
      numbers: items.flatMap((i) => numbers.get(i) ?? []).join(', '),
    })),
    orders: ordersToFetch(list, partOf).map((o) => ({
      supplier: o.supplier ?? 'Supplier not told in the catalogue',
      part: o.part,
      name: o.name,
      order: count(o.order, o.unit),
      days: o.leadTimeDays,
    })),
    cuts: proof.bill.cuts.map((c) => ({
      number: String(numbers.get(c.item) ?? ''),
      name: c.name,
      ends: c.ends,
      count: c.count,
      length: display(c.length, 'length', units),
    })),
    steps: assemblySteps(rig, proof, units).map(({ items, ...step }) => ({
      ...step,
      numbers: items.flatMap((i) => numbers.get(i) ?? []).sort((a, b) => a - b),
      parts: partsOfStep(rig, items),
    })),
    cautions: cautionsOf(proof),
    slots: slotsOf(rig).flatMap(({ id, name }) => {
      const part = rig.items.get(id)?.part;
      return part === undefined ? [] : [{ slot: id, name, part: part.id, partName: part.name }];
    }),
    ...(frame === undefined ? {} : { frame }),
    loads: loadsOf(proof, units),
    ...(proof.wiring === undefined
      ? {}
      : { wiring: wiringDiagram(proof.wiring, { width: WIDTH, units, palette, numbers }) }),
    plumbing: plumbingGraph(rig, 'right'),
  };
}

function loadsOf({ placement }: Proof, units: UnitSystem): LoadRow[] {
  const mass = (v: number) => display(v, 'mass', units);
  return (placement?.supports ?? []).map(({ name, full, half, empty, rating }) => ({
    support: name,
    full: mass(full),
    half: mass(half),
    empty: mass(empty),
    rating: rating === undefined ? 'not told' : mass(rating),
  }));
}

/** Each part of a step once. */
function partsOfStep(rig: Rig, items: readonly string[]): StepRow['parts'] {
  const parts = new Map(items.flatMap((i) => rig.items.get(i)?.part ?? []).map((p) => [p.id, p.name]));
  return [...parts].map(([part, name]) => ({ part, name }));
}

/** The plumbing in the first duty that has a steady state. */
export function plumbingDrawn(
  { rig, proof, asked }: ProvenMachine,
  { layout, sheet }: Questions['plumbing']['asks'],
): string {
  const duty = proof.duties.find((d) => d.open.status === 'converged') ?? proof.duties[0]!;
  return plumbingDiagram(proof, plumbingGraph(rig, 'right'), layout, duty.open, {
    width: WIDTH,
    units: asked.units,
    palette: PALETTES[sheet],
    shut: shutInDuty(rig, duty.duty),
    level: duty.duty.tankLevel,
  });
}

function warningsOf({ counts, bill }: Proof): string[] {
  return [
    ...(counts.broken > 0
      ? [
          `${counts.broken === 1 ? 'One promise of this rig is' : `${counts.broken} promises of this rig are`} broken: ask who designed it before anything is cut.`,
        ]
      : []),
    ...(counts.unknown > 0
      ? [
          `${counts.unknown === 1 ? 'One promise is' : `${counts.unknown} promises are`} unknown: the design record says what is missing.`,
        ]
      : []),
    ...[...bill.plumbing.gaps, ...bill.missing].map((text) => `Not in the catalogue: ${text}.`),
  ];
}

function cautionsOf({ cautions }: Proof): CautionRow[] {
  return cautions
    .filter(({ caution }) => PLACES.has(caution.place))
    .map(({ caution, state, because }) => ({
      id: caution.id,
      danger: state === 'unknown' ? `${caution.danger} (Not ruled out: ${because}.)` : caution.danger,
      act: caution.act,
      source: caution.origin.source,
    }));
}
