import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { readPart, type Kind } from '@spraywright/engine/catalogue';
import type { Problem } from '@spraywright/engine/quantity';
import type { RawPart } from '../documents/part-cells.ts';
import { partsCsv } from '../documents/parts-csv.ts';
import {
  catalogueOn,
  changeCatalogue,
  listParts,
  openPart,
  usesOfPart,
  type CatalogueChange,
  type Records,
} from '../store/index.ts';
import { differenceText } from './difference-text.ts';
import { tell } from './doings-book.ts';
import {
  csvRoute,
  listPartsRoute,
  makePartRoute,
  openPartRoute,
  partUsesRoute,
  putPartRoute,
  standingRoute,
} from './parts-routes.ts';
import { wordsOf } from './found-list.ts';
import { RefusedFields, refusedFields } from './problem.ts';
import type { Reproofs } from './reproof/reproofs.ts';
import { signedName } from './role-guard.ts';
import type { Shelf } from './shelf.ts';
import { seesCosts, withoutCosts } from './without-costs.ts';

export interface PartsApi {
  readonly records: Records;
  readonly shelf: Shelf;
  /** Proves the open quotes again after a change. */
  readonly reproofs: Pick<Reproofs, 'afterChange'>;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

/** The catalogue's parts one by one: find, open, add, change, retire. */
export function partsApi(app: OpenAPIHono, api: PartsApi): void {
  readingParts(app, api);
  changingParts(app, api);
}

function readingParts(app: OpenAPIHono, { records: { db }, shelf, now }: PartsApi): void {
  app.openapi(listPartsRoute, async (c) => {
    const { find, kind, standing, limit, after } = c.req.valid('query');
    const { edition } = await shelf.current();
    const query = {
      words: wordsOf(find),
      standing,
      limit,
      ...(kind === undefined ? {} : { kind }),
      ...(after === undefined ? {} : { after }),
    };
    const parts = await listParts(db, query, today(now));
    const last = parts.at(-1);
    const more = parts.length === limit && last !== undefined ? { next: last.id } : {};
    return c.json({ edition, parts, ...more }, 200);
  });

  app.openapi(csvRoute, async (c) => {
    const { kind, day = today(now) } = c.req.valid('query');
    await shelf.current();
    const kept = await catalogueOn(db, day);
    const parts = kept!.parts.filter((p) => p.kind === kind).map((p) => p.document);
    const csv = partsCsv(seesCosts(c) ? parts : withoutCosts(parts));
    return c.body(csv, 200, {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename="${kind}-${day}.csv"`,
    });
  });

  app.openapi(openPartRoute, async (c) => {
    await shelf.current();
    const { day = today(now) } = c.req.valid('query');
    return c.json(await openPart(db, c.req.valid('param').id, day), 200);
  });

  app.openapi(partUsesRoute, async (c) => {
    await shelf.current();
    const { id } = c.req.valid('param');
    await openPart(db, id, today(now));
    return c.json(await usesOfPart(db, id), 200);
  });
}

function changingParts(app: OpenAPIHono, { records: { db, save }, shelf, reproofs, now }: PartsApi): void {
  const changed = async (c: Context, by: string, change: CatalogueChange, id: string) => {
    const who = signedName(c) ?? by;
    const done = await save((t) => changeCatalogue(t, change, { by: who, at: now() }));
    if (done.added.length + done.changed.length > 0) await reproofs.afterChange(who);
    return openPart(db, id, today(now));
  };

  app.openapi(makePartRoute, async (c) => {
    const { kind, part, by } = c.req.valid('json');
    await shelf.current();
    const id = idOf(kind, part);
    tell(c, `${kind} ${id}`);
    const made = await changed(c, by, { parts: [{ id, kind, document: part, madeOn: 0 }] }, id);
    return c.json(made, 201, { Location: `/api/parts/${id}` });
  });

  app.openapi(putPartRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { madeOn, part, pricesFrom, by } = c.req.valid('json');
    const before = await openPart(db, id, pricesFrom ?? today(now));
    if (idOf(before.kind, part) !== id)
      throw new RefusedFields('unreadable-part', [
        { field: 'id', code: 'fixed', message: `id is '${String(part.id)}'; a part keeps its id '${id}'` },
      ]);
    tell(c, differenceText(before.document, part));
    const parts = [{ id, kind: before.kind, document: part, madeOn }];
    return c.json(
      await changed(c, by, { parts, ...(pricesFrom === undefined ? {} : { pricesFrom }) }, id),
      200,
    );
  });

  app.openapi(standingRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { retired, by } = c.req.valid('json');
    const { kind } = await openPart(db, id, today(now));
    tell(c, retired ? 'retired' : 'taken back');
    return c.json(await changed(c, by, { parts: [{ id, kind, retired }] }, id), 200);
  });
}

/** @throws RefusedFields when the part cannot be read */
function idOf(kind: Kind, raw: RawPart): string {
  const problems: Problem[] = [];
  const part = readPart(kind, raw, [], problems);
  if (part === undefined || problems.length > 0) throw refusedFields('unreadable-part', problems);
  return part.id;
}

export const today = (now: () => string): string => now().slice(0, 10);
