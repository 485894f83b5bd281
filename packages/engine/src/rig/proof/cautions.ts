import { isLiquid, liquidOf, type LiquidGroup } from '../../liquids/index.ts';
import { cautionsFor, type CaughtCaution, type CautionFacts } from '../../physics/index.ts';
import type { ProofContext, ProvenDuty } from './context.ts';

/** Above this a jet goes into trees or over roofs [m]; our judgement, no source. */
const HIGH = 6;

type SeenState = Pick<ProvenDuty['open'], 'status' | 'highestPressure'>;

/** What cautions follow from: a proof, or as much of one. */
export interface CautionContext extends Pick<ProofContext, 'rig' | 'tank'> {
  readonly bill: Pick<ProofContext['bill'], 'dryMass'>;
  readonly duties: readonly {
    readonly liquid: Pick<ProvenDuty['liquid'], 'density'>;
    readonly open: SeenState;
    readonly dirty: SeenState;
    readonly shut: SeenState;
  }[];
}

/** Cautions that a rig and its work bring up, each once, with its cause; a fact nobody stated leaves its caution as a question. */
export function cautionsOf(context: CautionContext): CaughtCaution[] {
  return cautionsFor(factsOf(context));
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** Field by field, not spread: every proof asks twice, before and after its hardware is billed. */
function factsOf(context: CautionContext): CautionFacts {
  const { rig, duties, bill, tank } = context;
  const { brief } = rig;
  const kinds = new Set<string>();
  for (const { part } of rig.items.values()) kinds.add(part.kind);
  const known = brief.liquids.flatMap((l) => (isLiquid(l.liquid) ? [liquidOf(l.liquid)] : []));
  const allKnown = known.length === brief.liquids.length;
  // A liquid that nobody knows leaves the question open.
  const carries = (...groups: LiquidGroup[]): boolean | undefined =>
    known.some((l) => l.groups.some((g) => groups.includes(g))) ? true : allKnown ? false : undefined;
  const corrosive = known.some((l) => l.hazards.includes('corrosive')) ? true : carries('acid', 'caustic');
  const pressure = highestPressure(duties);
  const heaviest = duties.reduce((most, d) => Math.max(most, d.liquid.density), 0);
  const { form } = brief.carrier;
  const targets = brief.duties.flatMap((d) => (d.target === undefined ? [] : [d.target]));
  const facts: Writable<CautionFacts> = {
    mass: Math.min(50_000, bill.dryMass + tank.volume * heaviest),
    pto: kinds.has('pto-drive'),
    engine: kinds.has('engine'),
    leadAcid: kinds.has('battery'),
    towed: form === 'cart' || form === 'wagon' || form === 'tandem-trailer',
    liftedOnHitch: form === 'three-point',
    roofWork: brief.work === 'roof-wash' || targets.some((t) => t.aim === 'roof'),
    highJet: targets.some((t) => t.aim !== 'distance' && t.height > HIGH),
    sprayedOutdoors: true,
  };
  const stated = <K extends keyof CautionFacts>(key: K, value: CautionFacts[K] | undefined) => {
    if (value !== undefined) facts[key] = value;
  };
  stated('pressure', pressure === undefined ? undefined : Math.min(1e8, pressure));
  stated('coldest', brief.site.coldest);
  stated('filledFromMains', brief.fill === undefined ? undefined : brief.fill.from === 'mains');
  stated('hypochlorite', carries('bleach'));
  stated('acid', carries('acid'));
  stated('ammonium', carries('ammonium'));
  stated('pesticide', carries('pesticide'));
  stated('corrosive', corrosive);
  return facts;
}

/** Anywhere in the rig, in any condition that could be solved [Pa]. */
function highestPressure(duties: CautionContext['duties']): number | undefined {
  let most: number | undefined;
  for (const { open, dirty, shut } of duties)
    for (const state of [open, dirty, shut]) {
      if (state.status !== 'converged') continue;
      if (most === undefined || state.highestPressure > most) most = state.highestPressure;
    }
  return most;
}
