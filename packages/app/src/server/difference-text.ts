type Document = Readonly<Record<string, unknown>>;

/** A field that differs: `pricing.mostDiscountPercent`, `operations[weld].hours`; one of the values may be absent. */
export interface Difference {
  readonly field: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

const LONGEST = 60;

/** Which fields of a document differ, for the book of who did what: "pricing.mostDiscountPercent 12 becomes 8". */
export function differenceText(before: Document, after: Document): string {
  return differencesOf(before, after)
    .map(({ field, before: was, after: is }) => `${field} ${short(was)} becomes ${short(is)}`)
    .join('; ');
}

/** Which fields of a document differ, one by one; entries of a list are told apart by their id or role, not by their place. */
export function differencesOf(before: Document, after: Document): Difference[] {
  return differences(before, after, (name) => name);
}

function differences(before: Document, after: Document, at: (name: string) => string): Difference[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return names.flatMap((name): Difference[] => {
    const [was, is] = [before[name], after[name]];
    if (text(was) === text(is)) return [];
    const field = at(name);
    if (isDocument(was) && isDocument(is)) return differences(was, is, (inner) => `${field}.${inner}`);
    const [listWas, listIs] = [named(was), named(is)];
    if (listWas !== undefined && listIs !== undefined) {
      const entries = differences(listWas, listIs, (entry) => `${field}[${entry}]`);
      if (entries.length > 0) return entries;
    }
    return [{ field, before: was, after: is }];
  });
}

/** A list as a document of its entries; undefined where something in it has no name of its own. */
function named(list: unknown): Document | undefined {
  if (!Array.isArray(list)) return undefined;
  const entries = (list as unknown[]).map((entry): [unknown, unknown] => {
    const { id, role } = (isDocument(entry) ? entry : {}) as { id?: unknown; role?: unknown };
    return [id ?? role, entry];
  });
  const names = new Set(entries.map(([name]) => name));
  const apart = names.size === entries.length && [...names].every((name) => typeof name === 'string');
  return apart ? (Object.fromEntries(entries) as Document) : undefined;
}

function isDocument(value: unknown): value is Document {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function text(value: unknown): string {
  return JSON.stringify(value) ?? '';
}

function short(value: unknown): string {
  if (value === undefined) return 'nothing';
  const said = typeof value === 'string' ? value : text(value);
  return said.length > LONGEST ? `${said.slice(0, LONGEST - 3)}...` : said;
}
