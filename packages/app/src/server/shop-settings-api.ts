import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { shopShape } from '@spraywright/engine/catalogue';
import { formatPath, read, type Path, type Problem } from '@spraywright/engine/quantity';
import { changeCatalogue, shopEditions } from '../store/index.ts';
import { differencesOf, differenceText } from './difference-text.ts';
import { tell } from './doings-book.ts';
import { byShape, moment, MOST_COUNTED } from './job-shapes.ts';
import type { PartsApi } from './parts-api.ts';
import { refusals, refusedFields } from './problem.ts';
import { signedName } from './role-guard.ts';
import { SELLERS } from './role-table.ts';

type Settings = Readonly<Record<string, unknown>>;

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const edition = z.int().min(0);
const settings = z.object({ edition, shop: z.looseObject({}) }).openapi('ShopSettings');
const changed = z
  .object({ madeOn: edition, shop: z.looseObject({}), by: byShape })
  .openapi('ChangedShopSettings');

const shopRoute = createRoute({
  method: 'get',
  path: '/api/shop',
  summary: "The shop's settings: rates, operations, terms",
  responses: {
    200: { description: 'As a shop file has them', content: json(settings) },
    ...refusals('sign-in-first'),
  },
});

const putShopRoute = createRoute({
  method: 'put',
  path: '/api/shop',
  summary: "Change the shop's settings",
  request: { body: { required: true, content: json(changed) } },
  responses: {
    200: { description: 'As they are now', content: json(settings) },
    ...refusals(
      'not-json',
      'foreign-page',
      'too-large',
      'wrong-type',
      'bad-request',
      'stale-part',
      'unreadable-shop',
    ),
  },
});

const editionsRoute = createRoute({
  method: 'get',
  path: '/api/shop/editions',
  summary: "The shop's settings as they stood: who changed what, the newest change first",
  request: {
    query: z.object({
      limit: z.coerce.number().int().min(1).max(200).default(50),
      before: z.coerce
        .number()
        .int()
        .min(0)
        .max(MOST_COUNTED)
        .optional()
        .openapi({ description: 'Only editions under this one.' }),
    }),
  },
  responses: {
    200: {
      description: 'Each change with what stood before; the first settings have no changes',
      content: json(
        z
          .object({
            editions: z.array(
              z.object({
                edition,
                at: moment,
                by: z.string(),
                changes: z.array(
                  z.object({
                    field: z.string().openapi({ example: 'pricing.mostDiscountPercent' }),
                    before: z.unknown().optional(),
                    after: z.unknown().optional(),
                  }),
                ),
              }),
            ),
          })
          .openapi('ShopEditions'),
      ),
    },
    ...refusals('bad-request'),
  },
});

/** What the shop says of itself: name, rates, prices, terms, capacity. Every change is the next edition of the catalogue. */
export function shopSettingsApi(
  app: OpenAPIHono,
  { records: { db, save }, shelf, reproofs, now }: PartsApi,
): void {
  const told = async () => {
    const { edition, files } = await shelf.current();
    return { edition, shop: files.shop as Record<string, unknown> };
  };
  app.openapi(shopRoute, async (c) => c.json(await told(), 200));
  app.openapi(editionsRoute, async (c) => {
    const { limit, before } = c.req.valid('query');
    const found = await shopEditions(db, limit, before);
    const editions = found.map(({ edition: of, at, by, shop, before: was }) => ({
      edition: of,
      at,
      by,
      changes: was === undefined ? [] : differencesOf(was as Settings, shop as Settings),
    }));
    return c.json({ editions }, 200);
  });
  app.openapi(putShopRoute, async (c) => {
    const { madeOn, shop, by } = c.req.valid('json');
    const before = await told();
    const problems = problemsOf(shop);
    if (problems.length > 0) throw refusedFields('unreadable-shop', problems);
    const who = signedName(c) ?? by;
    tell(c, differenceText(before.shop, shop));
    const { edition } = await save((t) => changeCatalogue(t, { shop, madeOn }, { by: who, at: now() }));
    if (edition !== madeOn) await reproofs.afterChange(who);
    return c.json(await told(), 200);
  });
}

/** What the engine refuses, and floors of a role that quotes nothing or that has some already. */
function problemsOf(raw: unknown): readonly (Omit<Problem, 'code'> & { readonly code: string })[] {
  const checked = read(shopShape, raw);
  if (!checked.ok) return checked.problems;
  const { floorsByRole } = checked.value.pricing;
  return floorsByRole.flatMap(({ role }, place) => {
    const path: Path = ['pricing', 'floorsByRole', place, 'role'];
    if (!SELLERS.some((one) => one === role)) {
      const message = `${formatPath(path)} is '${role}'; one of ${SELLERS.join(', ')} was expected`;
      return [{ path, code: 'not-a-choice', message }];
    }
    if (floorsByRole.findIndex((other) => other.role === role) === place) return [];
    return [{ path, code: 'twice', message: `'${role}' has floors already; say them once` }];
  });
}
