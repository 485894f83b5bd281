import { isLiquid, liquidOf as tableLiquid } from '../../liquids/index.ts';
import {
  basicDrift,
  driftBuffer,
  driftCurveFor,
  exclusionDistance,
  type DriftWork,
} from '../../physics/index.ts';
import { compared, unknown, type RigPromise, type Step } from '../promise.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { orUnknown } from './out-of-range.ts';
import { classOf, NO_GUN_CLASS } from './pattern-evenness.ts';
import { flowOf, sprayersOf, workPressure, type Sprayer } from './sprayer.ts';

/** Height above which a gun throws a high jet [m]: the trials end there. */
const HIGH = 5;
/** Crop under a spot gun: weeds and turf; judgement [m]. */
const LOW_CROP = 0.3;
const NEIGHBOUR_WORDS = 'the nearest water, garden or beehive downwind';

/** What drifts harms somebody: pesticides and bleach; a liquid nobody knows counts as one. */
export function driftMatters(context: ProofContext, { duty }: ProvenDuty): boolean {
  const liquid = context.rig.brief.liquids.find((l) => l.id === duty.liquid);
  if (liquid === undefined || liquid.use !== 'spray') return false;
  if (!isLiquid(liquid.liquid)) return true;
  const { groups } = tableLiquid(liquid.liquid);
  return groups.includes('pesticide') || groups.includes('bleach');
}

interface Drifting {
  readonly proven: ProvenDuty;
  readonly sprayer: Sprayer;
  /** Pressure it works at [Pa]. */
  readonly pressure: number;
  readonly work: DriftWork;
  readonly crop: number;
}

/** Drift stays away from the neighbours, or the plain word that no published curve covers the work. */
export function driftPromises(context: ProofContext): RigPromise[] {
  const all = context.duties
    .filter((d) => driftMatters(context, d))
    .flatMap((proven) => {
      const sprayers = sprayersOf(context, proven);
      return sprayers.map((s) => drifting(proven, s, workPressure(proven.duty, s, flowOf(sprayers))));
    });
  // One promise for each way of spraying: its highest crop drifts farthest.
  return [...new Set(all.map((d) => d.work))].map((work) => {
    const same = all.filter((d) => d.work === work);
    return driftPromise(
      context,
      same.reduce((a, b) => (b.crop > a.crop ? b : a)),
      same,
    );
  });
}

function drifting(proven: ProvenDuty, sprayer: Sprayer, pressure: number): Drifting {
  const { target } = proven.duty;
  const made = { proven, sprayer, pressure };
  if (sprayer.end.kind === 'nozzle')
    return { ...made, work: sprayer.end.pattern === 'boomless' ? 'boomless' : 'boom', crop: LOW_CROP };
  const height = target === undefined || target.aim === 'distance' ? LOW_CROP : Math.min(60, target.height);
  return { ...made, work: target?.aim === 'height' && height > HIGH ? 'high-jet' : 'hand-gun', crop: height };
}

function driftPromise(context: ProofContext, worst: Drifting, same: readonly Drifting[]): RigPromise {
  const { site } = context.rig.brief;
  const { curve, statement } = driftCurveFor(worst.work, worst.crop);
  const told = {
    id: `pattern:drift:${worst.work}`,
    kind: 'pattern' as const,
    duty: worst.proven.duty.id,
    sentence: `No more than ${Math.round(site.driftAllowed * 1000) / 10} % of the rate drifts to ${NEIGHBOUR_WORDS}`,
    items: [worst.sprayer.item],
    method: 'basic drift curve, inverted',
    source: 'FOCUS SWS Appendix B, Table B.1 (Rautmann et al. 2001); JKI note for hand-held gear',
  };
  const working: Step[] = [
    { text: `in ${same.map((d) => `"${d.proven.duty.name}"`).join(', ')}` },
    { text: statement },
    ...keepOut(worst),
  ];
  if (curve === 'none')
    return unknown({ ...told, cause: statement, working, method: 'none: no published curve covers this' });
  return orUnknown(told, () => {
    const buffer = driftBuffer(curve, 1, site.driftAllowed, 0);
    if (buffer === null)
      return unknown({ ...told, cause: 'even 250 m is not enough for the share allowed', working });
    const asked = { value: buffer, dimension: 'length' as const };
    if (site.neighbour === undefined)
      return unknown(
        {
          ...told,
          cause: `say how far ${NEIGHBOUR_WORDS} is: this share falls ${say(context, buffer, 'length')} off`,
          working,
        },
        asked,
      );
    const there = basicDrift(curve, 1, Math.min(250, Math.max(site.neighbour, 3)));
    return compared(
      {
        ...told,
        cause: statement,
        working: [
          ...working,
          { text: 'share of the rate that falls there', figure: { value: there, dimension: 'ratio' } },
          { text: '90th percentile of trials in wind up to 5 m/s at up to 8 km/h; the label decides' },
        ],
      },
      asked,
      { value: site.neighbour, dimension: 'length' },
      'at-least',
    );
  });
}

/** Distance people must be kept out of while spraying. */
function keepOut({ sprayer, proven, pressure }: Drifting): Step[] {
  const source = '40 CFR 170.405(a)(1) as amended 2024';
  if (sprayer.end.kind === 'tip')
    return [
      {
        text: `${NO_GUN_CLASS}: nobody within 100 ft of the outlet, or 25 ft where a test shows that the tip makes medium or coarser drops (${source})`,
      },
    ];
  const data = [...sprayer.end.droplets].sort((a, b) => a.pressure - b.pressure);
  const droplets = classOf(data, pressure);
  if (droplets === 'unknown')
    return [{ text: `droplet class unknown: keep everyone 100 ft off (${source})` }];
  const height = Math.min(60, Math.max(0, proven.duty.boomHeight ?? 0.5));
  return [
    {
      text: `keep everyone out of (${source})`,
      figure: { value: exclusionDistance('us-2024', 'spray', droplets, height), dimension: 'length' },
    },
  ];
}
