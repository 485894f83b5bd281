import {
  bleachStrengthOnDay,
  isLiquid,
  liquidOf,
  proportionerDelivered,
  recipe,
} from '../../liquids/index.ts';
import type { Brief } from '../brief.ts';
import { compared, unknown, type RigPromise, type Step } from '../promise.ts';
import { first } from '../rig-document.ts';
import type { ProofContext } from './context.ts';
import { orUnknown } from './out-of-range.ts';

type Asked = Brief['liquids'][number];

/** A mix that is made from a stronger stock can be made, and this is how a tank of it is made. */
export function recipePromises(context: ProofContext): RigPromise[] {
  return context.rig.brief.liquids.flatMap((l) => {
    const stock = l.stock ?? l.store?.delivered;
    return stock === undefined || l.use !== 'spray' ? [] : [recipePromise(context, l, stock)];
  });
}

function recipePromise(context: ProofContext, asked: Asked, delivered: number): RigPromise {
  const { liquid, name, strength, strengthUnit: unit } = asked;
  const told = {
    id: `liquid:recipe:${asked.id}`,
    kind: 'liquid' as const,
    sentence: `A tank of ${name} is mixed from its stock`,
    method: 'balance of stock and water by mass for weight %, else by volume',
    source: 'conservation of mass',
  };
  if (!isLiquid(liquid)) return unknown({ ...told, cause: `${name} is in no table: mix it by its label` });
  if (strength === undefined || unit === undefined)
    return unknown({ ...told, cause: `say how strong ${name} must be, and in which unit` });
  const figure = { value: strength / PER[unit], dimension: DIMENSION[unit] };
  return orUnknown(
    told,
    () => {
      const stock = stockOnDay(asked, delivered);
      const temperatureC = (asked.temperature ?? context.site.temperature) - 273.15;
      const card = recipe({
        liquid,
        stockStrength: stock,
        wantedStrength: Math.min(strength, stock),
        strengthUnit: unit,
        finalVolume: context.tank.volume,
        temperatureC,
      });
      if (!card.ok) return unknown({ ...told, cause: card.reason }, figure);
      const { stock: part, water, mix } = card.recipe;
      const byHand: Step[] = card.recipe.steps.map(({ text, volume, mass }) => ({
        text,
        ...(volume === undefined ? {} : { figure: { value: volume, dimension: 'volume' as const } }),
        ...(volume !== undefined || mass === undefined
          ? {}
          : { figure: { value: mass, dimension: 'mass' as const } }),
      }));
      return compared(
        {
          ...told,
          cause: `${round(stock)} ${unit} stock on the day of use: one part of it in ${round(mix.volume / part.volume)} parts of mix`,
          items: [],
          working: [
            { text: 'stock for a full tank', figure: { value: part.volume, dimension: 'volume' } },
            { text: 'water for a full tank', figure: { value: water.volume, dimension: 'volume' } },
            ...dialSteps(context, asked, stock),
            ...byHand,
            ...card.recipe.cautions.map((text) => ({ text })),
            { text: 'the product label decides' },
          ],
        },
        figure,
        { value: stock / PER[unit], dimension: DIMENSION[unit] },
        'at-least',
      );
    },
    figure,
  );
}

/** Strengths as figures: % as a ratio, g/L as a density. */
const PER = { 'trade %': 100, 'weight %': 100, 'volume %': 100, 'g/L': 1 } as const;
const DIMENSION = {
  'trade %': 'ratio',
  'weight %': 'ratio',
  'volume %': 'ratio',
  'g/L': 'density',
} as const;

/** Bleach loses strength in store; other stocks are as they were delivered. */
export function stockOnDay({ liquid, store, strengthUnit }: Asked, delivered: number): number {
  const bleach = isLiquid(liquid) && liquidOf(liquid).model.kind === 'hypochlorite';
  if (!bleach || store === undefined || strengthUnit !== 'trade %') return delivered;
  const history = [{ days: store.days, temperatureC: store.temperature - 273.15 }];
  return bleachStrengthOnDay({ tradePercent: delivered, history }).tradePercent;
}

/** What each setting of the rig's proportioner gives, by what its maker means with 1:N. */
function dialSteps(context: ProofContext, { strengthUnit }: Asked, stock: number): Step[] {
  const dial = first(context.rig, 'eductor')?.part.dial;
  if (dial === undefined) return [];
  return dial.settings.map((n) => ({
    text: `proportioner at 1:${n} (${dial.means}) gives ${round(proportionerDelivered(stock, n, dial.means))} ${strengthUnit}`,
  }));
}

const round = (value: number) => `${Number(value.toPrecision(3))}`;
