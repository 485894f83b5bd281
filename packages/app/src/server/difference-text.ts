type Document = Readonly<Record<string, unknown>>;

const LONGEST = 60;

/** Which fields of a document differ, for the book of who did what: "pricing.mostDiscountPercent 12 becomes 8". */
export function differenceText(before: Document, after: Document): string {
  return differences(before, after, '').join('; ');
}

function differences(before: Document, after: Document, at: string): string[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return names.flatMap((name) => {
    const [was, is] = [before[name], after[name]];
    if (text(was) === text(is)) return [];
    return isDocument(was) && isDocument(is)
      ? differences(was, is, `${at}${name}.`)
      : [`${at}${name} ${short(was)} becomes ${short(is)}`];
  });
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
