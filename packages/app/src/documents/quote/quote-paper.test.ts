import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { catalogueOf, type Catalogue, type Shop } from '@spraywright/engine/catalogue';
import { moneyText } from '@spraywright/engine/quantity';
import { demoCatalogue, demoRig, demoShop } from '../../../test/demo.ts';
import { freezeQuote, type FrozenQuote, type QuoteContents } from './frozen-quote.ts';
import { quoteChanges } from './quote-changes.ts';
import { quotePaper } from './quote-paper.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const rigOf = (name: string) => demoRig(name, catalogue, shop).raw as Record<string, unknown>;
const heavy = rigOf('tall-elms');
const light = rigOf('light-cart');
const folder = mkdtempSync(join(tmpdir(), 'quote-paper-'));
afterAll(() => rmSync(folder, { recursive: true }));

function frozen(contents: Partial<QuoteContents> = {}, from: Catalogue = catalogue, of: Shop = shop) {
  const quote = freezeQuote(
    {
      date: '2026-03-03',
      units: 'us',
      note: '',
      readyDay: () => '2026-05-05',
      options: [{ name: 'As drawn', rig: heavy }],
      ...contents,
    },
    from,
    of,
  );
  if (!quote.ok) throw new Error(JSON.stringify(quote.problems));
  return quote.name({ number: 'Q-0412', revision: 'B' });
}

/** Text of a paper in reading order (pdftotext of poppler-utils), blanks alike. */
async function textOf(quote: FrozenQuote): Promise<string> {
  const file = join(folder, 'quote.pdf');
  writeFileSync(file, await quotePaper(quote));
  return execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).replace(/[\s\u00a0]+/g, ' ');
}

describe('A frozen quote', () => {
  it('prints the same bytes after it lay in the records, from its own parts alone', async () => {
    const quote = frozen();
    const kept = JSON.parse(JSON.stringify(quote)) as FrozenQuote;
    expect(Buffer.compare(await quotePaper(quote), await quotePaper(kept))).toBe(0);
    // A whole catalogue has far more: what the copy lacks was not needed.
    expect(kept.options[0]!.parts.length).toBeLessThan(catalogue.parts.size / 2);
  });

  it('does not follow the catalogue: a dearer pump changes a new quote and no old one', () => {
    const quote = frozen();
    const pump = quote.options[0]!.summary.parts.find((p) => p.kind === 'pump')!.part;
    const dearer = catalogueOf(
      catalogue.name,
      catalogue.version + 1,
      [...catalogue.parts.values()].map((p) =>
        p.id === pump ? { ...p, priceCents: p.priceCents + 10_000 } : p,
      ),
    );
    const later = frozen({}, dearer);
    expect(later.options[0]!.summary.totalCents - quote.options[0]!.summary.totalCents).toBe(10_000);
    expect(quoteChanges(quote, later).options[0]!.price[0]).toMatch(/, \$100 more\.$/);
    expect(quoteChanges(quote, later).terms).toContain(
      `Reckoned with catalogue ${catalogue.version + 1}, before with ${catalogue.version}.`,
    );
  });

  it('shows discount, tax and freight as lines of their own, and asks the deposit of what is to be paid', async () => {
    const taxed = { ...shop, pricing: { ...shop.pricing, tax: { percent: 6, on: 'everything' as const } } };
    const quote = frozen(
      { options: [{ name: 'As drawn', rig: heavy, pricing: { discountPercent: 4, freightCents: 45_000 } }] },
      catalogue,
      taxed,
    );
    // By hand from the sum of the lines: 4 % off, 6 % on, 450 dollars of freight, 40 % of that on order.
    const lines = frozen().options[0]!.summary.linesCents;
    const off = Math.round(lines * 0.04);
    const tax = Math.round((lines - off) * 0.06);
    const total = lines - off + tax + 45_000;
    const text = await textOf(quote);
    expect(text).toContain(moneyText(lines));
    expect(text.replace(/ /g, '')).toContain(`−${moneyText(off)}`);
    expect(text).toContain('Sales tax, 6 % on everything');
    expect(text).toContain(moneyText(tax));
    expect(text).toContain('Freight, no sales tax reckoned on it');
    expect(text).toContain('$450');
    expect(text).toContain(`Total, sales tax included`);
    expect(text).toContain(moneyText(total));
    expect(text).toContain(moneyText(Math.round(total * 0.4)));
    expect(text).toContain('Q-0412 B');
  });

  it('sets several options side by side before each by itself', async () => {
    const quote = frozen({
      note: 'Both can be had by spring.',
      options: [
        { name: 'Heavy cart', rig: heavy },
        { name: 'Light cart', rig: light },
      ],
    });
    const text = await textOf(quote);
    for (const { name, summary } of quote.options)
      expect(text).toContain(`${name}, ${moneyText(summary.totalCents)}`);
    expect(text).toContain('Both can be had by spring.');
    expect(text).toContain('Q-0412 B, 2');
    expect(text.match(/Accepted, name and date/g)).toHaveLength(2);
  });

  it('has its own deposit, validity and terms', async () => {
    const quote = frozen({ depositPercent: 25, validDays: 10, terms: ['Fetched from the yard.'] });
    const text = await textOf(quote);
    expect(quote.validUntil).toBe('2026-03-13');
    expect(text).toContain('Ordered today, ready by 5 May 2026. Holds until 13 March 2026.');
    expect(text).toContain('On order 25 %');
    expect(text).toContain('Fetched from the yard.');
    expect(text).not.toContain(shop.terms[1]);
  });
});

describe('What changed between two revisions', () => {
  it('is told of parts, price and promises', () => {
    const before = frozen({ options: [{ name: 'Cart', rig: light }] });
    const items = light.items as { id: string; length?: string }[];
    const longer = { ...light, items: items.map((i) => (i.id === 'hose' ? { ...i, length: '140 ft' } : i)) };
    const after = frozen({ options: [{ name: 'Cart', rig: longer }], validDays: 45 });
    const { terms, options } = quoteChanges(before, after);
    expect(terms).toEqual(['It holds until 17 April 2026, before until 2 April 2026.']);
    expect(options[0]!.parts).toHaveLength(1);
    expect(options[0]!.parts[0]).toMatch(/140 ft instead of .*100 ft\.$/);
    expect(options[0]!.price[0]).toMatch(
      /^The price goes from \$3,234\.62 to \$3,\d{3}(\.\d\d)?, \$[\d.]+ more\.$/,
    );
    expect(options[0]!.promises.some((s) => /, before /.test(s))).toBe(true);
  });

  it('is nothing between a revision and itself', () => {
    const quote = frozen();
    expect(quoteChanges(quote, quote)).toEqual({
      terms: [],
      options: [{ name: 'As drawn', price: [], parts: [], promises: [] }],
    });
  });
});
