import { unknown, compared, type RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { loadedOf } from './loaded.ts';
import { fitPromises } from './structure-fit.ts';
import { holdPromises } from './structure-hold.ts';
import { liftingPromises } from './structure-lifting.ts';
import { railPromises } from './structure-rails.ts';

/** Everything fits the deck, the frame carries it, straps and bolts hold it, the tank is made for the liquid's weight. */
export function structurePromises(context: ProofContext): RigPromise[] {
  const loaded = loadedOf(context);
  return [
    tankPromise(context),
    ...(loaded === undefined
      ? []
      : [
          ...fitPromises(context, loaded),
          ...railPromises(context, loaded),
          ...holdPromises(context, loaded),
          ...liftingPromises(context, loaded),
        ]),
  ];
}

/** Specific gravity is reckoned against water of 1000 kg/m3. */
const WATER = 1000;

/** A poly tank is rated for a heaviest liquid: a heavier one bulges and splits it. */
function tankPromise(context: ProofContext): RigPromise {
  const { tank, duties } = context;
  const heaviest = duties.reduce((a, b) => (b.liquid.density > a.liquid.density ? b : a)).liquid;
  const item = [...context.rig.items.values()].find((e) => e.part === tank)!.item.id;
  const told = {
    id: 'structure:tank',
    kind: 'structure' as const,
    sentence: 'Tank is made for a liquid this heavy',
    items: [item],
    method: 'density of the heaviest liquid against the rating of the tank',
    source: 'rating of the catalogue; density of the liquid',
  };
  const asked = { value: tank.ratedSpecificGravity * WATER, dimension: 'density' as const };
  const unknownDensity = duties.filter((d) => d.liquid.missing.some((m) => m.startsWith('density')));
  if (unknownDensity.length > 0)
    return unknown(
      {
        ...told,
        cause: `the density of ${unknownDensity[0]!.liquid.name} is unknown: ask its supplier`,
      },
      asked,
      'at-most',
    );
  return compared(
    { ...told, cause: `${heaviest.name} is the heaviest that the duties spray` },
    asked,
    { value: heaviest.density, dimension: 'density' },
    'at-most',
  );
}
