import { sent } from '../frame/ask.ts';
import { got, type Got } from './got.ts';

export interface ShopKept {
  /** Of the whole catalogue, with which the settings change. */
  readonly edition: number;
  readonly shop: Readonly<Record<string, unknown>>;
}

export const shopKept = () => got<ShopKept>('api/shop');

/** A change of the settings, with what stood before. */
export interface ShopEdition {
  readonly edition: number;
  readonly at: string;
  readonly by: string;
  readonly changes: readonly {
    readonly field: string;
    readonly before?: unknown;
    readonly after?: unknown;
  }[];
}

export const shopEditions = (before?: number) =>
  got<{ editions: readonly ShopEdition[] }>(
    `api/shop/editions?limit=${EDITIONS}${before === undefined ? '' : `&before=${before}`}`,
  );

/** Editions asked for at a time. */
export const EDITIONS = 20;

const MEANWHILE =
  'Somebody changed the settings since they were opened here. Load the page again to see them; nothing was changed.';

/** Keeps settings unless somebody else changed them since; changes of parts in between do no harm. */
export async function keepShop(opened: ShopKept, shop: unknown): Promise<Got<ShopKept>> {
  const now = await shopKept();
  if ('why' in now) return now;
  if (JSON.stringify(now.value.shop) !== JSON.stringify(opened.shop)) return { why: MEANWHILE, problems: [] };
  return got<ShopKept>('api/shop', sent({ madeOn: now.value.edition, shop }, 'PUT'));
}
