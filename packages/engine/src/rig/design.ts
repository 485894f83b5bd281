import type { Catalogue, Layout, PartOf, Shop } from '../catalogue/index.ts';
import type { Problem, UnitSystem } from '../quantity/index.ts';
import { readBrief, type Brief } from './brief.ts';
import { contactsOf } from './contacts.ts';
import { assembleRig, type Chosen, type RawRig } from './design/assemble.ts';
import type { LineContext } from './design/line-context.ts';
import { lineOptions, type LineOption } from './design/line-options.ts';
import { outletDemands, partsOfLines, pumpDemands, usedOutlets } from './design/outlet-demands.ts';
import { pumpOptions, type PumpDemand, type PumpOption } from './design/pump-options.ts';
import { repair } from './design/repair.ts';
import { fillExtraSlots } from './design/extra-slots.ts';
import { agitationFor, inductionFor, sizePumpSide, tankAndCarrier, whyNoTank } from './design/rest-of-rig.ts';
import { familyProblem, layoutsFor } from './layouts-for.ts';
import { liquidOf } from './proof/liquid.ts';
import { proveRig, type Proof } from './proof/prove.ts';
import { siteOf } from './proof/site.ts';
import { readRig } from './rig-document.ts';
import { suitedCatalogue } from './suited.ts';

/** A rig chosen for a brief, with its proof and how many whole rigs were proven on the way. */
export type Design =
  | { readonly ok: true; readonly rig: RawRig; readonly proof: Proof; readonly looked: number }
  | { readonly ok: false; readonly problems: Problem[] };

export interface DesignOptions {
  readonly units?: UnitSystem;
}

/** Whole rigs proven before the best so far is taken. */
const MOST_PROOFS = 250;
/** Ways to build the outlet lines together for which a pump is sought: more only where a rig has several guns or booms. */
const MOST_TOGETHER = 1000;
/** Repairs tried on one rig before the next is looked at. */
const MOST_REPAIRS = 8;

/**
 * Chooses a rig for a brief: for each outlet the parts that ask least, for the pump and drive the cheapest that meets
 * them, then the rest by rules of size; whole rigs are proven from the cheapest up until one breaks no promise.
 *
 * It is a straightforward selection and does not prove that no better rig exists. When no rig keeps every promise
 * the one that breaks fewest is returned with its broken promises.
 */
export function designRig(
  rawBrief: unknown,
  catalogue: Catalogue,
  shop: Shop,
  options: DesignOptions = {},
): Design {
  const read = readBrief(rawBrief);
  if (!read.ok) return read;
  const { brief } = read;
  const stranger = familyProblem(brief, catalogue);
  if (stranger !== undefined) return { ok: false, problems: [stranger] };
  const layouts = layoutsFor(brief, catalogue);
  const suited = suitedCatalogue(catalogue, contactsOf(brief, siteOf(brief)).unsuited);
  const prove = (rig: RawRig): Proof | undefined => {
    const bound = readRig(rig, catalogue);
    return bound.ok ? proveRig(bound.rig, catalogue, shop, { ...options, notes: false }) : undefined;
  };
  let best: { rig: RawRig; proof: Proof } | undefined;
  let looked = 0;
  // With spare and without; from parts that stand the liquids, and only if there is no such rig from all parts.
  for (const shelf of [suited, catalogue])
    for (const spare of [1.06, 1]) {
      if (best !== undefined && shelf === catalogue) break;
      for (const layout of layouts)
        for (const chosen of choices({ catalogue: shelf, layout, brief, spare })) {
          if (looked >= MOST_PROOFS) break;
          for (let attempt = 0; attempt < MOST_REPAIRS; attempt++) {
            const rig = assembleRig(layout, { raw: rawBrief, id: brief.id, title: brief.title }, chosen);
            const proof = prove(rig);
            if (proof === undefined) break;
            looked++;
            if (best === undefined || better(proof, best.proof)) best = { rig, proof };
            if (proof.counts.broken === 0 || !repair(proof, layout, chosen, shelf)) break;
          }
          if (best !== undefined && best.proof.counts.broken === 0)
            return finished(best.rig, catalogue, shop, options, looked);
        }
    }
  if (best !== undefined) return finished(best.rig, catalogue, shop, options, looked);
  return {
    ok: false,
    problems: [
      { path: ['duties'], code: 'no-rig', message: whyNone(suited, layouts, brief, options.units ?? 'us') },
    ],
  };
}

/** The chosen rig proven once more, with the solver's notes. */
function finished(
  rig: RawRig,
  catalogue: Catalogue,
  shop: Shop,
  options: DesignOptions,
  looked: number,
): Design {
  const bound = readRig(rig, catalogue);
  if (!bound.ok) return bound;
  return { ok: true, rig, proof: proveRig(bound.rig, catalogue, shop, options), looked };
}

function better(a: Proof, b: Proof): boolean {
  return (
    a.counts.broken < b.counts.broken ||
    (a.counts.broken === b.counts.broken && a.bill.priceCents < b.bill.priceCents)
  );
}

interface Shelf {
  readonly catalogue: Catalogue;
  readonly layout: Layout;
  readonly brief: Brief;
  readonly spare: number;
}

/** Whole sets of parts in order of price, as far as the demands decide them. */
function* choices(shelf: Shelf): Generator<Map<string, Chosen>> {
  const { catalogue, layout, brief } = shelf;
  const context = lineContext(shelf);
  const perLine = usedOutlets(layout, brief).map((line) => lineOptions(context, line));
  const base = tankAndCarrier(catalogue, layout, brief);
  if (perLine.length === 0 || perLine.some((list) => list.length === 0) || base === undefined) return;
  const tank = base.get('tank')!.part as PartOf<'tank'>;

  const candidates: { chosen: Map<string, Chosen>; demands: PumpDemand[]; priceCents: number }[] = [];
  for (const lines of cheapestTogether(perLine)) {
    const { demands, extras } = demandsOf(context, lines, tank);
    for (const pump of pumpOptions(catalogue, layout, brief, context.site, demands).slice(0, 4)) {
      const chosen = new Map([
        ...base,
        ...extras,
        ...inductionFor(catalogue, layout),
        ...partsOfLines(lines),
        ...partsOfPump(pump),
      ]);
      const priceCents = [...chosen.values()].reduce((sum, c) => sum + priceOf(c), 0);
      candidates.push({ chosen, demands, priceCents });
    }
  }
  candidates.sort((a, b) => a.priceCents - b.priceCents);
  for (const { chosen, demands } of candidates)
    if (sizePumpSide(catalogue, layout, chosen, demands) && fillExtras(shelf, chosen, demands)) yield chosen;
}

/** Slots that a shop's own layout adds, sized for the hardest duty. */
function fillExtras(
  { catalogue, layout }: Shelf,
  chosen: Map<string, Chosen>,
  demands: readonly PumpDemand[],
): boolean {
  const flow = Math.max(...demands.map((d) => d.flow));
  const pressure = Math.max(...demands.map((d) => d.pressure));
  return fillExtraSlots(catalogue, layout, chosen, flow, pressure);
}

function lineContext({ catalogue, layout, brief, spare }: Shelf): LineContext {
  const site = siteOf(brief);
  const liquids = new Map(brief.liquids.map((l) => [l.id, liquidOf(brief, l.id, site)]));
  return { catalogue, layout, brief, site, liquids, spare, tipPressures: new Map() };
}

/** What the outlets and the agitation ask of the pump in each duty, and the agitator that follows. */
function demandsOf(
  context: LineContext,
  lines: readonly LineOption[],
  tank: PartOf<'tank'>,
): { demands: PumpDemand[]; extras: Map<string, Chosen> } {
  const outlets = outletDemands(context, lines);
  const { catalogue, layout } = context;
  const stirred = outlets.filter((o) => o.duty.agitate && o.liquid.agitationShare > 0);
  const hardest = stirred.reduce<(typeof stirred)[number] | undefined>(
    (a, b) =>
      a === undefined ||
      b.liquid.agitationShare / Math.sqrt(b.pressure) > a.liquid.agitationShare / Math.sqrt(a.pressure)
        ? b
        : a,
    undefined,
  );
  const extras =
    hardest === undefined
      ? new Map<string, Chosen>()
      : agitationFor(
          catalogue,
          layout,
          tank,
          hardest.liquid.agitationShare,
          hardest.pressure,
          hardest.liquid.density,
        );
  const agitator = extras.get('agitator')?.part as PartOf<'agitator'> | undefined;
  return { demands: pumpDemands(outlets, agitator), extras };
}

function partsOfPump(pump: PumpOption): [string, Chosen][] {
  return [...pump.parts].map(([slot, part]) => [
    slot,
    slot === 'engine' && pump.engineSpeed !== undefined ? { part, speed: pump.engineSpeed } : { part },
  ]);
}

function priceOf({ part, length, count = 1 }: Chosen): number {
  return part.priceCents * (part.kind === 'hose' ? Math.ceil((length ?? 0) / 0.3048) : count);
}

function whyNone(catalogue: Catalogue, layouts: readonly Layout[], brief: Brief, units: UnitSystem): string {
  if (layouts.length === 0) return `no layout serves the work '${brief.work}'`;
  for (const layout of layouts) {
    if (tankAndCarrier(catalogue, layout, brief) === undefined)
      return whyNoTank(catalogue, layout, brief, units);
    const context = lineContext({ catalogue, layout, brief, spare: 1 });
    for (const line of usedOutlets(layout, brief)) {
      const duty = brief.duties.find((d) => (d.open as readonly string[]).includes(line.opens))!;
      if (lineOptions(context, line).length === 0)
        return `no hose, gun and tip in the catalogue does what "${duty.name}" asks of ${line.name.toLowerCase()}`;
    }
  }
  const known = new Set(layouts.flatMap((l) => l.lines.map((x) => x.opens as string)));
  const stranger = brief.duties.flatMap((d) => d.open as readonly string[]).find((o) => !known.has(o));
  return stranger === undefined
    ? 'no pump and drive in the catalogue gives the flow and pressure that the outlets ask'
    : `no layout for '${brief.work}' has an outlet '${stranger}'`;
}

/** Ways to build all outlet lines together, the cheapest when there are more than are worth a look. */
function cheapestTogether(perLine: readonly (readonly LineOption[])[]): readonly (readonly LineOption[])[] {
  const all = [...combinations(perLine)];
  if (all.length <= MOST_TOGETHER) return all;
  const cents = (lines: readonly LineOption[]) => lines.reduce((sum, l) => sum + l.priceCents, 0);
  return all.sort((a, b) => cents(a) - cents(b)).slice(0, MOST_TOGETHER);
}

/** Every way to take one of each list. */
function* combinations<T>(lists: readonly (readonly T[])[]): Generator<readonly T[]> {
  const [head, ...rest] = lists;
  if (head === undefined) {
    yield [];
    return;
  }
  for (const first of head) for (const others of combinations(rest)) yield [first, ...others];
}
