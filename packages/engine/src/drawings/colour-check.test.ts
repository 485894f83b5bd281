import { describe, expect, it } from 'vitest';
import { contrast, seenBy, SIGHTS } from './colour-check.ts';
import { PALETTES, type Palette } from './palette.ts';

/** WCAG 2.2, 1.4.3: text of any size. */
const TEXT = 4.5;
const SHEETS = Object.entries(PALETTES) as [string, Palette][];
/** What is set as text, and what it may stand on. */
const ON_PAPERS = ['ink', 'ink2', 'liquid', 'broken', 'thin'] as const;

describe('Contrast', () => {
  it('is 21 of black on white and 1 of a colour on itself (WCAG 2.2)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#0b6678', '#0b6678')).toBe(1);
  });

  it('of grey #767676 on white is just over 4.5 and of #777777 just under, as WCAG technique G18 is commonly shown', () => {
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(TEXT);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(TEXT);
  });

  it('refuses what is no colour', () => {
    expect(() => contrast('teal', '#ffffff')).toThrow(/colour is 'teal'/);
  });

  it.each(SHEETS)('of every text on the papers of the %s sheet is enough to read', (_, p) => {
    for (const token of ON_PAPERS)
      for (const paper of ['paper', 'paper2'] as const)
        expect(contrast(p[token], p[paper]), `${token} on ${paper}`).toBeGreaterThanOrEqual(TEXT);
  });

  it.each(SHEETS)('of a signal on its own tint on the %s sheet is enough to read', (_, p) => {
    expect(contrast(p.broken, p.brokenTint), 'broken').toBeGreaterThanOrEqual(TEXT);
    expect(contrast(p.thin, p.thinTint), 'thin').toBeGreaterThanOrEqual(TEXT);
    expect(contrast(p.liquid, p.liquidTint), 'liquid').toBeGreaterThanOrEqual(TEXT);
    expect(contrast(p.ink, p.liquidTint), 'ink on liquid').toBeGreaterThanOrEqual(TEXT);
  });
});

describe('Readers with a deficiency of colour vision', () => {
  it('see grey as the same grey', () => {
    for (const sight of SIGHTS) expect(seenBy(sight, '#808080')).toBe('#808080');
  });

  it.each(SHEETS)('can read every text on the paper of the %s sheet', (_, p) => {
    for (const sight of SIGHTS)
      for (const token of ON_PAPERS)
        expect(
          contrast(seenBy(sight, p[token]), seenBy(sight, p.paper)),
          `${token} by ${sight}`,
        ).toBeGreaterThanOrEqual(TEXT);
  });
});
