import { bleachStrengthOnDay, isLiquid, liquidOf } from '../../liquids/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import { compared, unknown, type Figure, type RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { orUnknown } from './out-of-range.ts';
import { decaySteps } from './strength-working.ts';

const METHOD = 'decay of hypochlorite through the temperatures of its store';
const SOURCE = 'Adam and Gordon 1999, integrated; field factor 1.0 to 1.3 from a published strength table';
/** What bleach loses is told for this long when nobody said how old it is. */
const MONTH = 30;

/** Bleach is still strong enough on the day it is used. */
export function strengthPromises(context: ProofContext): RigPromise[] {
  return context.rig.brief.liquids.flatMap((l): RigPromise[] => {
    if (!isLiquid(l.liquid) || liquidOf(l.liquid).model.kind !== 'hypochlorite') return [];
    if (l.use !== 'spray') return [];
    const delivered = l.store?.delivered ?? (l.strengthUnit === 'trade %' ? l.strength : undefined);
    const told = {
      id: `liquid:strength:${l.id}`,
      kind: 'liquid' as const,
      sentence: `${l.name} is strong enough on the day of use`,
      method: METHOD,
      source: SOURCE,
    };
    // A wash mix without a stock named is made on the day from what arrives.
    if (l.store === undefined && delivered !== undefined && delivered < 5) return [];
    if (delivered === undefined)
      return [unknown({ ...told, cause: `say how strong ${l.name} is when delivered, in trade %` })];
    if (l.store === undefined)
      return [orUnknown(told, () => unknown({ ...told, cause: afterMonth(context, delivered) }))];
    const { days, temperature, least = l.strength } = l.store;
    if (least === undefined)
      return [unknown({ ...told, cause: `say how strong ${l.name} must be, in trade %` })];
    const asked = tradePercent(least);
    return [
      orUnknown(
        told,
        () => {
          const { rig } = context;
          const history = [
            { days: days * looseFactor(rig, 'bleach-loss'), temperatureC: temperature - 273.15 },
          ];
          const fresh = delivered * looseFactor(rig, 'stock-strength');
          const then = bleachStrengthOnDay({ tradePercent: fresh, history });
          return compared(
            {
              ...told,
              cause: `${delivered} trade % loses ${percent(then.lost)} in ${days} days in store${then.warnings.length === 0 ? '' : `; ${then.warnings[0]}`}`,
              band: [then.low / 100, then.high / 100],
              working: decaySteps(delivered, days, temperature - 273.15),
            },
            asked,
            tradePercent(then.tradePercent),
            'at-least',
          );
        },
        asked,
      ),
    ];
  });
}

function afterMonth(context: ProofContext, delivered: number): string {
  const temperatureC = Math.min(55, Math.max(15, context.site.temperature - 273.15));
  const then = bleachStrengthOnDay({ tradePercent: delivered, history: [{ days: MONTH, temperatureC }] });
  return `say how old the bleach is and how warm it stands: ${MONTH} days at the temperature of the site take ${percent(then.lost)} of it`;
}

/** Grams of chlorine in 100 mL: a share of its own, told as such. */
function tradePercent(value: number): Figure {
  return { value: value / 100, dimension: 'ratio', unit: 'trade %' };
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
