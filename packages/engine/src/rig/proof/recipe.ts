import {
  bleachStrengthOnDay,
  isLiquid,
  liquidOf,
  proportionerDelivered,
  recipe,
  type Portion,
  type Recipe,
} from '../../liquids/index.ts';
import type { Brief } from '../brief.ts';
import { looseFactor } from '../loose-inputs.ts';
import {
  compared,
  is,
  number,
  unknown,
  worked,
  type Figure,
  type RigPromise,
  type Step,
} from '../promise.ts';
import { first, type Rig } from '../rig-document.ts';
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
  const figure = strengthFigure(strength, unit);
  return orUnknown(
    told,
    () => {
      const stock = stockOnDay(asked, delivered, context.rig);
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
      const { stock: part, mix } = card.recipe;
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
            ...balanceSteps(card.recipe),
            ...dialSteps(context, asked, stock),
            ...byHand,
            ...card.recipe.cautions.map((text) => ({ text })),
            { text: 'the product label decides' },
          ],
        },
        figure,
        strengthFigure(stock, unit),
        'at-least',
      );
    },
    figure,
  );
}

/** A strength as people say it: the unit stands with it, since the percents differ by up to a fifth. */
function strengthFigure(strength: number, unit: NonNullable<Asked['strengthUnit']>): Figure {
  return unit === 'g/L'
    ? { value: strength, dimension: 'density', unit }
    : { value: strength / 100, dimension: 'ratio', unit };
}

/** Stock and water for a full tank, by volume or by mass, with the numbers put in. */
function balanceSteps({ by, stock, water, mix, strengthUnit: unit }: Recipe): Step[] {
  const [wanted, strong] = [number(mix.strength), number(stock.strength)];
  const names = `{mix} × {${unit} wanted} / {${unit} of the stock}`;
  const of = (portion: Portion) => (by === 'mass' ? is(portion.mass!, 'mass') : is(portion.volume, 'volume'));
  const steps = [
    worked(`stock for a full tank, by ${by}`, of(stock), names, {
      mix: of(mix),
      [`${unit} wanted`]: wanted,
      [`${unit} of the stock`]: strong,
    }),
    worked(`water for a full tank, by ${by}`, of(water), '{mix} − {stock}', {
      mix: of(mix),
      stock: of(stock),
    }),
  ];
  if (by === 'volume') return steps;
  return [
    { text: 'a full tank of mix', figure: is(mix.volume, 'volume') },
    worked('a full tank of mix weighs', of(mix), '{tank} × {density}', {
      tank: is(mix.volume, 'volume'),
      density: is(mix.mass! / mix.volume, 'density'),
    }),
    ...steps,
    ...[['stock', stock] as const, ['water', water] as const].map(([name, portion]) =>
      worked(`${name}, by volume`, is(portion.volume, 'volume'), '{mass} / {density}', {
        mass: of(portion),
        density: is(portion.volume > 0 ? portion.mass! / portion.volume : 1000, 'density'),
      }),
    ),
  ];
}

/** Bleach loses strength in store; other stocks are as they were delivered. */
export function stockOnDay(
  { liquid, store, strengthUnit }: Asked,
  leaflet: number,
  rig: Pick<Rig, 'loose'> = {},
): number {
  const delivered = leaflet * looseFactor(rig, 'stock-strength');
  const bleach = isLiquid(liquid) && liquidOf(liquid).model.kind === 'hypochlorite';
  if (!bleach || store === undefined || strengthUnit !== 'trade %') return delivered;
  const history = [
    { days: store.days * looseFactor(rig, 'bleach-loss'), temperatureC: store.temperature - 273.15 },
  ];
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
