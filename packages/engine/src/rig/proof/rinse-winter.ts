import { densityMelinder, freezingPointMelinder, glycolVolumeForCold } from '../../liquids/index.ts';
import { waterDensity } from '../../physics/index.ts';
import type { Brief } from '../brief.ts';
import { is, judge, unknown, worked, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { decisionOn } from './decision.ts';
import { orUnknown } from './out-of-range.ts';
import type { Residual } from './rinse-residual.ts';

const GLYCOL = 'propylene glycol';
/** Temperature at which antifreeze and water are poured together [degC]. */
const POURING_C = 20;
const FROST = 273.15;
/** Decision that the rig is drained and blown out instead. */
const DRAINED = 'rinse:drained-dry';

/** The rig outlasts the winter: what is left inside does not freeze after the water in it has thinned the antifreeze. */
export function winterPromises(context: ProofContext, residual: Residual): RigPromise[] {
  const { brief } = context.rig;
  const { coldest } = brief.site;
  const antifreeze = brief.liquids.find((l) => l.use === 'winterise');
  if (coldest !== undefined && coldest >= FROST) return [];
  const told = {
    id: 'rinse:winter',
    kind: 'rinse' as const,
    sentence: 'Nothing inside freezes over the winter',
    method: 'freezing point after the water left inside has thinned it',
    source: 'conservation of mass; curves of Melinder, IIR 2010; Purdue PPP-121',
  };
  if (coldest === undefined)
    return antifreeze === undefined
      ? []
      : [unknown({ ...told, cause: 'say how cold it gets where the rig is stored' })];
  const asked = { value: coldest, dimension: 'temperature' as const };
  const drained = decisionOn(brief, DRAINED);
  if (antifreeze === undefined)
    return [
      drained === undefined
        ? {
            ...unknown(
              { ...told, cause: 'name an antifreeze, or decide that it is drained and blown out' },
              asked,
              'at-most',
            ),
            decisions: [DRAINED],
          }
        : {
            ...told,
            state: 'thin',
            sense: 'at-most',
            asked,
            cause: `drained and blown out: ${drained.who}, ${drained.when}: ${drained.why}`,
            items: [],
            working: [{ text: 'low points of pump, strainer and reel hold water: open every drain' }],
          },
    ];
  return [orUnknown(told, () => frozen(context, residual, antifreeze, told, coldest), asked, 'at-most')];
}

/** Strength by mass of antifreeze poured into a rig that holds water, and where that begins to freeze. */
export function thinnedAntifreeze(
  volume: number,
  share: number,
  { total }: Residual,
): { fluid: number; water: number; after: number; freezing: number } {
  const fluid = volume * densityMelinder(GLYCOL, share, POURING_C);
  const water = total * waterDensity(POURING_C);
  const after = (share * fluid) / (fluid + water);
  return { fluid, water, after, freezing: freezingPointMelinder(GLYCOL, after) + FROST };
}

function frozen(
  context: ProofContext,
  residual: Residual,
  antifreeze: Brief['liquids'][number],
  told: Omit<Parameters<typeof unknown>[0], 'cause'>,
  coldest: number,
): RigPromise {
  const asked = { value: coldest, dimension: 'temperature' as const };
  if (
    antifreeze.liquid !== 'pg' ||
    antifreeze.strength === undefined ||
    antifreeze.strengthUnit !== 'weight %'
  )
    return unknown(
      {
        ...told,
        cause: `no freezing curve for ${antifreeze.name}: give propylene glycol with its strength in weight %`,
      },
      asked,
      'at-most',
    );
  const share = antifreeze.strength / 100;
  const needed = glycolVolumeForCold(residual.total, share, coldest - 273.15);
  const volume = context.rig.brief.rinse?.antifreeze;
  if (volume === undefined)
    return unknown(
      { ...told, cause: `say how much antifreeze is put in: it takes ${say(context, needed, 'volume')}` },
      asked,
      'at-most',
    );
  const { fluid, water, after, freezing } = thinnedAntifreeze(volume, share, residual);
  // Spare is counted in degrees below the freezing point of water; a share of absolute temperature says nothing.
  const { state, margin } = judge(FROST - coldest, FROST - freezing, 'at-least');
  return {
    ...told,
    state,
    margin,
    asked,
    has: { value: freezing, dimension: 'temperature' },
    sense: 'at-most',
    items: [],
    cause: `${say(context, volume, 'volume')} of ${antifreeze.name}, thinned from ${antifreeze.strength} to ${Math.round(after * 100)} weight % by ${say(context, residual.total, 'volume')} of water`,
    working: [
      { text: 'water left in the rig', figure: { value: residual.total, dimension: 'volume' } },
      { text: 'antifreeze that would just do', figure: { value: needed, dimension: 'volume' } },
      worked(
        'strength by mass after thinning',
        is(after, 'ratio'),
        '{strength} × {antifreeze} / ({antifreeze} + {water})',
        { strength: is(share, 'ratio'), antifreeze: is(fluid, 'mass'), water: is(water, 'mass') },
      ),
      { text: 'first ice, not the burst point; drain it off until it runs in colour' },
    ],
  };
}
