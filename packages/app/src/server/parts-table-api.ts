import type { OpenAPIHono } from '@hono/zod-openapi';
import { planPartsTable, type PartsPlan } from '../documents/parts-import.ts';
import type { RawPart } from '../documents/part-cells.ts';
import { catalogueOn, changeCatalogue, Refusal } from '../store/index.ts';
import { filesOfCatalogue } from './catalogue-files.ts';
import { tell } from './doings-book.ts';
import { today, type PartsApi } from './parts-api.ts';
import { tableRoute } from './parts-routes.ts';
import { problem } from './problem.ts';
import { signedName } from './role-guard.ts';

/** A table from a spreadsheet: a preview of every cell that changes, then all of it or nothing. */
export function partsTableApi(
  app: OpenAPIHono,
  { records: { db, save }, shelf, reproofs, now }: PartsApi,
): void {
  app.openapi(tableRoute, async (c) => {
    const { csv, name, kind: asked, pricesFrom = today(now), write, edition: seen, by } = c.req.valid('json');
    await shelf.current();
    // Prices are compared with those of the day from which the table's hold.
    const kept = (await catalogueOn(db, pricesFrom))!;
    if (seen !== undefined && seen !== kept.edition)
      throw new Refusal(
        'stale-part',
        `the catalogue is at edition ${kept.edition}, the preview was of ${seen}: look at it again`,
        { edition: kept.edition },
      );
    const { head, files } = filesOfCatalogue(kept);
    const standing = files.map(({ file, raw }) => ({
      name: file,
      kind: (raw as { kind: string }).kind,
      raw,
    }));
    const planned = planPartsTable(
      name,
      csv,
      { head: { name: 'catalogue.json', raw: head }, files: standing },
      asked,
    );
    if (!planned.ok) {
      const { problems, more = 0 } = planned;
      const first = problems[0]!;
      const others = problems.length - 1 + more;
      const detail = `line ${first.line}, column ${first.column}: ${first.message}${others > 0 ? `; and ${others} more` : ''}`;
      return problem(c, 'unreadable-table', detail, { problems, ...(more > 0 ? { more } : {}) }) as never;
    }
    const { plan } = planned;
    const { kind, added, changes, unchanged } = plan;
    const told = { kind, added, changes, unchanged };
    if (!write || changes.length === 0)
      return c.json({ ...told, edition: kept.edition, written: false }, 200);
    tell(c, `${changes.length} cells of ${kind}, prices from ${pricesFrom}`);
    const { edition } = await save((t) =>
      changeCatalogue(
        t,
        { parts: touched(plan), pricesFrom, madeOn: kept.edition },
        { by: signedName(c) ?? by, at: now() },
      ),
    );
    await reproofs.afterChange(signedName(c) ?? by);
    return c.json({ ...told, edition, written: true }, 200);
  });
}

function touched({ kind, changes, parts }: PartsPlan) {
  const ids = new Set(changes.map(({ part }) => part));
  return parts
    .filter((part: RawPart) => ids.has(part.id as string))
    .map((document) => ({ id: document.id as string, kind, document }));
}
