import { PALETTES } from '@spraywright/engine/drawings';
import { display, moneyText, priceText, type UnitSystem } from '@spraywright/engine/quantity';
import {
  outletsAmiss,
  type DutyProof,
  type PromiseState,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import type { DeskBody, DutyTab, View } from '../protocol.ts';
import { billGroups } from './bill-groups.ts';
import { briefProse } from './brief-prose.ts';
import { cautionNotes } from './caution-notes.ts';
import { Givens } from './given.ts';
import type { Inputs } from './inputs.ts';
import { OUTLET_WORDS } from './outlet-words.ts';
import { outletsSaid } from './outlets-said.ts';
import { emptySlots, partRows } from './part-rows.ts';
import { pricingTold } from './pricing-told.ts';
import { promiseRows } from './promise-rows.ts';

/** Everything on the desk that is words and figures, ready to be read. */
export function deskBody(
  raw: unknown,
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  view: View,
  { shop, costsTold }: Pick<Inputs, 'shop' | 'costsTold'>,
): DeskBody {
  const { units } = view;
  return {
    id: proof.id,
    title: proof.title,
    customer: proof.customer,
    layout: rig.document.layout,
    counts: proof.counts,
    price: priceText(Math.round(proof.bill.priceCents / 100) * 100),
    dry: massText(proof.bill.dryMass, units),
    full: fullText(proof, units),
    ready: `${proof.bill.readyInDays} days`,
    catalogue: `${proof.catalogue.name} ${proof.catalogue.version}`,
    engine: proof.engineVersion,
    massUnit: units === 'us' ? 'lb' : 'kg',
    duties: proof.duties.map((d): DutyTab => ({ id: d.id, name: d.name, state: dutyStateOf(proof, d.id) })),
    duty: duty.id,
    outletsAmiss: amissWords(rig),
    prose: briefProse(raw, rig, duty.duty, proof.site, units),
    headline: headline(duty, units),
    promises: promiseRows(proof, {
      units,
      palette: PALETTES[view.sheet],
      working: view.working,
      scaleWidth: view.scaleWidth,
      scaleHeight: view.scaleHeight,
    }),
    parts: partRows(raw, rig, proof, units),
    notFitted: emptySlots(rig),
    bill: billGroups(proof, units),
    toPay: moneyText(proof.bill.totalCents),
    ...(costsTold ? { pricing: pricingTold(new Givens(raw, units), rig, proof, shop) } : {}),
    cautions: cautionNotes(proof),
  };
}

function amissWords(rig: Rig): string[] {
  const { missing, idle } = outletsAmiss(rig);
  return [
    ...missing.map((outlet) => {
      const duties = rig.brief.duties.filter((d) => d.open.includes(outlet)).map((d) => `“${d.name}”`);
      return `This rig has no ${OUTLET_WORDS[outlet]} for ${duties.join(' and ')}`;
    }),
    ...idle.map((line) => `No duty uses the ${line.toLowerCase()} any more`),
  ];
}

const SEVERITY: readonly PromiseState[] = ['broken', 'thin', 'unknown', 'kept'];

function dutyStateOf(proof: Proof, duty: string): PromiseState {
  if (proof.duties.find((d) => d.id === duty)?.open.status === 'failed') return 'broken';
  const states = proof.promises.filter((p) => p.duty === duty).map((p) => p.state);
  return SEVERITY.find((s) => states.includes(s)) ?? 'unknown';
}

function headline(duty: DutyProof, units: UnitSystem): string {
  const { open } = duty;
  if (open.status === 'failed') return `No steady state: ${open.reason ?? 'no reason is known'}`;
  const outlets = outletsSaid(open.outlets, units);
  const { pump } = open;
  if (pump?.outlet !== undefined && pump.outlet !== null)
    outlets.push(
      `${display(pump.flow, 'flow', units)} at ${display(pump.outlet, 'pressure', units)} at the pump`,
    );
  return outlets.join(', ');
}

/** Weight of the rig full, as the promises of axles and hitch reckon it. */
function fullText({ placement }: Proof, units: UnitSystem): string {
  return placement === undefined ? 'unknown' : massText(placement.centre.full.mass, units);
}

function massText(mass: number, units: UnitSystem): string {
  return display(mass, 'mass', units, { unit: units === 'us' ? 'lb' : 'kg', decimals: 0 });
}
