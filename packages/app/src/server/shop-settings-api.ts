import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { shopShape } from '@spraywright/engine/catalogue';
import { formatPath, read, type Path, type Problem } from '@spraywright/engine/quantity';
import { changeCatalogue } from '../store/index.ts';
import { differenceText } from './difference-text.ts';
import { tell } from './doings-book.ts';
import { byShape } from './job-shapes.ts';
import type { PartsApi } from './parts-api.ts';
import { refusals, refusedFields } from './problem.ts';
import { signedName } from './role-guard.ts';
import { SELLERS } from './role-table.ts';

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

/** What the shop says of itself: name, rates, prices, terms, capacity. Every change is the next edition of the catalogue. */
export function shopSettingsApi(
  app: OpenAPIHono,
  { records: { save }, shelf, reproofs, now }: PartsApi,
): void {
  const told = async () => {
    const { edition, files } = await shelf.current();
    return { edition, shop: files.shop as Record<string, unknown> };
  };
  app.openapi(shopRoute, async (c) => c.json(await told(), 200));
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
