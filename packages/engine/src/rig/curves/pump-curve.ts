import { compileNetwork, type ElementLaw, type NetworkLiquid } from '../../hydraulics/index.ts';
import { STANDARD_GRAVITY } from '../../physics/index.ts';
import { dutyNetwork } from '../duty-network.ts';
import type { DutyProof } from '../proof/prove.ts';
import { liquidOf } from '../proof/liquid.ts';
import { siteOf } from '../proof/site.ts';
import type { Rig } from '../rig-document.ts';

/** Flow through the pump [m3/s] and the pressure it adds [Pa]. */
export interface CurvePoint {
  readonly flow: number;
  readonly rise: number;
}

/** What a pump gives and what its rig asks; they cross where the rig works. */
export interface PumpCurve {
  readonly item: string;
  /** What the pump gives at the speed its drive turns it, from no pressure to its highest. */
  readonly pump: readonly CurvePoint[];
  /** What the rig asks of it in this duty, whichever pump gives the flow; regulators open along it. */
  readonly rig: readonly CurvePoint[];
  /** Where it works in each duty, in the order of the brief; absent where a duty has no steady state. */
  readonly duties: readonly (CurvePoint & { readonly duty: string })[];
  /** Highest pressure the pump is rated for [Pa]. */
  readonly rated?: number;
}

/** Flows of the rig's own curve, as shares of the most the pump gives. */
const SHARES = Array.from({ length: 46 }, (_, i) => (i === 0 ? 0.004 : i / 40));
/** Leakage of the pump that stands in for any pump: none worth the name [m3/(s.Pa)]. */
const NO_SLIP = 1e-16;

/**
 * The pump's curve and the rig's own in one duty; undefined when the rig has no pump.
 *
 * The rig's own curve is solved point by point with a pump that gives a fixed flow in the place of its own.
 */
export function pumpCurve(rig: Rig, duties: readonly DutyProof[], shown: DutyProof): PumpCurve | undefined {
  const liquid = liquidOf(rig.brief, shown.duty.liquid, siteOf(rig.brief));
  const { model } = dutyNetwork(rig, shown.duty, liquid);
  const at = model.elements.findIndex((e) => PUMPS.has(e.law.kind));
  const element = model.elements[at];
  if (element === undefined) return undefined;
  const pump = pumpPoints(element.law, liquid);
  const most = Math.max(...pump.map((p) => p.flow));
  const stand: ElementLaw = {
    kind: 'positive-displacement-pump',
    displacement: most,
    speed: 1,
    slip: NO_SLIP,
  };
  const compiled = compileNetwork({
    ...model,
    elements: model.elements.map((e, i) => (i === at ? { ...e, law: stand } : e)),
  });
  const height = heightBetween(model.nodes, element) * liquid.density * STANDARD_GRAVITY;
  const own: CurvePoint[] = [];
  if (compiled.ok) {
    const { network } = compiled;
    const [inlet, outlet] = [network.nodeIndex(element.from), network.nodeIndex(element.to)];
    for (const share of SHARES) {
      network.set(at, 'displacement', share * most);
      if (network.solve().status === 'failed') continue;
      const [before, after] = [network.pressure(inlet), network.pressure(outlet)];
      if (before !== null && after !== null)
        own.push({ flow: network.flow(at), rise: after - before + height });
    }
  }
  const rated = 'ratedPressure' in element.law ? element.law.ratedPressure : undefined;
  return {
    item: element.id,
    pump,
    rig: own,
    duties: duties.flatMap(({ id, open, duty }) => {
      const p = open.pump;
      if (p === undefined || p.inlet === null || p.outlet === null) return [];
      const weight = liquidOf(rig.brief, duty.liquid, siteOf(rig.brief)).density * STANDARD_GRAVITY;
      return [
        {
          duty: id,
          flow: p.flow,
          rise: p.outlet - p.inlet + heightBetween(model.nodes, element) * weight,
        },
      ];
    }),
    ...(rated === undefined ? {} : { rated }),
  };
}

const PUMPS: ReadonlySet<ElementLaw['kind']> = new Set([
  'positive-displacement-pump',
  'centrifugal-pump',
  'demand-pump',
] as const);

/** Points of a pump's curve at its speed, joined by straight lines. */
function pumpPoints(law: ElementLaw, liquid: NetworkLiquid): CurvePoint[] {
  switch (law.kind) {
    case 'positive-displacement-pump': {
      const free = law.displacement * law.speed * (1 - (law.constantSlip ?? 0));
      const thinner = (law.referenceViscosity ?? 0.001) / liquid.viscosity;
      const slip = law.slip * thinner ** (law.viscosityExponent ?? 0);
      const top = Math.min(law.ratedPressure ?? Infinity, free / slip);
      return [
        { flow: free, rise: 0 },
        { flow: free - slip * top, rise: top },
      ];
    }
    case 'centrifugal-pump': {
      if (!('length' in law.curve)) return [];
      const speed = law.speed ?? 1;
      const weight = liquid.density * STANDARD_GRAVITY;
      return law.curve.map(({ flow, head }) => ({ flow: flow * speed, rise: head * speed ** 2 * weight }));
    }
    case 'demand-pump':
      return law.curve.map(({ flow, pressure }) => ({ flow: flow * (law.speed ?? 1), rise: pressure }));
    default:
      return [];
  }
}

function heightBetween(
  nodes: readonly { id: string; elevation: number }[],
  { from, to }: { from: string; to: string },
): number {
  const of = (id: string) => nodes.find((n) => n.id === id)?.elevation ?? 0;
  return of(to) - of(from);
}
