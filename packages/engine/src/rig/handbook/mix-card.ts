import { isLiquid, recipe } from '../../liquids/index.ts';
import type { Brief } from '../brief.ts';
import { mixOrderOf } from '../proof/mix-order.ts';
import { stockOnDay } from '../proof/recipe.ts';
import { liquidOf } from '../proof/liquid.ts';
import type { Site } from '../proof/site.ts';
import { first, type Rig } from '../rig-document.ts';

/** How one liquid of a rig is made up, for several fills of its tank. */
export interface MixCard {
  readonly name: string;
  /** Strength in the tank, in words: "3.5 trade %". */
  readonly strength: string | undefined;
  /** Finished mix in the tank for each row [m3]. */
  readonly rows: readonly {
    readonly mix: number;
    /** Of the stock or product: by volume [m3] or by mass [kg]; absent when only the label knows. */
    readonly stockVolume?: number;
    readonly stockMass?: number;
    readonly water?: number;
    readonly waterMass?: number;
  }[];
  /** What is poured in: "12.5 trade % stock". */
  readonly stock: string;
  /** In the order of the work. */
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  /** What is not known and whom to ask. */
  readonly unknown?: string;
  readonly source: string;
}

/** Fills of the tank that a card tells. */
const FILLS = [0.25, 0.5, 0.75, 1] as const;

/** A card for each liquid that the rig sprays. */
export function mixCards(rig: Rig, site: Site): MixCard[] {
  return rig.brief.liquids
    .filter((l) => l.use === 'spray' && l.liquid !== 'water')
    .map((l) => withOrder(cardOf(rig, site, l), l));
}

/** Where several products go in, the order of them, what the sources dispute with it. */
function withOrder(card: MixCard, asked: Brief['liquids'][number]): MixCard {
  const order = mixOrderOf(asked);
  if (order === undefined) return card;
  return {
    ...card,
    steps: [...card.steps, ...order.texts],
    cautions: [...card.cautions, ...order.notes],
  };
}

function cardOf(rig: Rig, site: Site, asked: Brief['liquids'][number]): MixCard {
  const { name, liquid, strength, strengthUnit: unit } = asked;
  const tank = first(rig, 'tank')!.part.volume;
  const mixes = FILLS.map((share) => ({ mix: share * tank }));
  const told = { name, strength: strength === undefined ? undefined : `${strength} ${unit!}` };
  const byLabel = (unknown: string, stock = 'product'): MixCard => ({
    ...told,
    rows: mixes,
    stock,
    steps: [],
    cautions: [],
    unknown,
    source: 'the product label',
  });
  if (!isLiquid(liquid)) return byLabel(`${name} is in no table: mix it by its label`);
  if (strength === undefined || unit === undefined)
    return byLabel('how much product goes in is not told to us: the label of the product says it');
  const delivered = asked.stock ?? asked.store?.delivered;
  if (delivered === undefined) return withoutStock(rig, site, asked, mixes, told);
  const stock = stockOnDay(asked, delivered);
  const temperatureC = (asked.temperature ?? site.temperature) - 273.15;
  const cards = mixes.map(({ mix }) =>
    recipe({
      liquid,
      stockStrength: stock,
      wantedStrength: Math.min(strength, stock),
      strengthUnit: unit,
      finalVolume: mix,
      temperatureC,
    }),
  );
  const failed = cards.find((c) => !c.ok);
  if (failed !== undefined && !failed.ok) return byLabel(failed.reason);
  const recipes = cards.flatMap((c) => (c.ok ? [c.recipe] : []));
  const shown = Number(stock.toPrecision(3));
  const weaker =
    strength > stock * (1 + 1e-6)
      ? [`stock of ${shown} ${unit} makes no mix of ${strength} ${unit}: this one is as strong as the stock`]
      : [];
  const byMass = recipes[0]!.by === 'mass';
  return {
    ...told,
    stock: `stock of ${shown} ${unit}`,
    rows: recipes.map((r) => ({
      mix: r.mix.volume,
      stockVolume: r.stock.volume,
      water: r.water.volume,
      ...(byMass && r.stock.mass !== undefined ? { stockMass: r.stock.mass } : {}),
      ...(byMass && r.water.mass !== undefined ? { waterMass: r.water.mass } : {}),
    })),
    steps: recipes[0]!.steps.map((s) => s.underTable ?? s.text),
    cautions: [...weaker, ...recipes[0]!.cautions],
    source: `balance of stock and water, ${recipes[0]!.formula}`,
  };
}

/** By definition of weight %, the mass of what is dissolved or stirred in; a liquid as it is delivered needs no mixing. */
function withoutStock(
  rig: Rig,
  site: Site,
  asked: Brief['liquids'][number],
  mixes: readonly { readonly mix: number }[],
  told: Pick<MixCard, 'name' | 'strength'>,
): MixCard {
  const { density, missing } = liquidOf(rig.brief, asked.id, site);
  const dry = asked.strengthUnit === 'weight %' && asked.suspension && missing.length === 0;
  const share = asked.strength! / 100;
  return {
    ...told,
    stock: dry ? 'powder' : 'as it is delivered',
    rows: mixes.map(({ mix }) =>
      dry ? { mix, stockMass: share * density * mix, waterMass: (1 - share) * density * mix } : { mix },
    ),
    steps: [],
    cautions: [],
    unknown: dry
      ? 'the label says how much of the product that is, and in which order it is put in'
      : `the brief names no stock: it is filled as ${told.strength!}; ask the supplier if it comes stronger`,
    source: dry ? 'definition of weight %' : 'the brief',
  };
}
