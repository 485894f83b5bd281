import { isLiquid, liquidOf, type LiquidGroup } from '@spraywright/engine/liquids';
import { cautionsFor, type CautionFacts, type CautionPlace } from '@spraywright/engine/physics';
import type { Proof, Rig } from '@spraywright/engine/rig';
import type { CautionNote } from '../protocol.ts';

/** Where on the sheet the work of a caution is. */
const PLACES: Readonly<Record<CautionPlace, CautionNote['place']>> = {
  mixing: 'brief',
  filling: 'brief',
  roof: 'scene',
  spraying: 'scene',
  plumbing: 'line',
  drive: 'parts',
  electrics: 'parts',
  towing: 'parts',
  lifting: 'parts',
  storage: 'parts',
};

/** Above this height a jet goes into trees or over roofs [m]; our judgement, no source. */
const HIGH = 6;

/** Cautions that the rig brings up, each once, where its work is on the sheet. Facts nobody has stated bring up nothing here. */
export function cautionNotes(rig: Rig, proof: Proof): CautionNote[] {
  return cautionsFor(factsOf(rig, proof))
    .filter((c) => c.state === 'caused')
    .map(({ caution }) => ({
      id: caution.id,
      place: PLACES[caution.place],
      danger: caution.danger,
      act: caution.act,
      source: caution.origin.source,
    }));
}

function factsOf(rig: Rig, proof: Proof): CautionFacts {
  const has = (kind: string) => proof.parts.some((p) => p.kind === kind);
  const { brief } = rig;
  const known = brief.liquids.flatMap((l) => (isLiquid(l.liquid) ? [liquidOf(l.liquid)] : []));
  const all = known.length === brief.liquids.length;
  // A liquid nobody knows leaves the question open.
  const group = (...groups: LiquidGroup[]): boolean | undefined =>
    known.some((l) => l.groups.some((g) => groups.includes(g))) ? true : all ? false : undefined;
  const stated = <K extends keyof CautionFacts>(key: K, value: CautionFacts[K] | undefined) =>
    value === undefined ? {} : { [key]: value };
  const targets = brief.duties.flatMap((d) => (d.target === undefined ? [] : [d.target]));
  const pressures = proof.duties.flatMap((d) =>
    [d.open, d.dirty, d.shut].flatMap((s) => [...s.pressureAt.values()]),
  );
  const { form } = brief.carrier;
  return {
    ...(pressures.length === 0 ? {} : { pressure: Math.max(0, ...pressures) }),
    mass: proof.bill.dryMass,
    pto: has('pto-drive'),
    engine: has('engine'),
    leadAcid: has('battery'),
    towed: form === 'cart' || form === 'wagon' || form === 'tandem-trailer',
    liftedOnHitch: form === 'three-point',
    roofWork: targets.some((t) => t.aim === 'roof'),
    highJet: targets.some((t) => t.aim !== 'distance' && t.height > HIGH),
    sprayedOutdoors: true,
    ...stated('hypochlorite', group('bleach')),
    ...stated('acid', group('acid')),
    ...stated('ammonium', group('ammonium')),
    ...stated('pesticide', group('pesticide')),
    ...stated('corrosive', group('acid', 'caustic')),
  };
}
