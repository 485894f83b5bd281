import { describe, expect, it } from 'vitest';
import { CAUTIONS, cautionsFor, type CautionFacts } from './index.ts';

const harmless: CautionFacts = {
  pressure: 3e5,
  mass: 20,
  coldest: 280,
  pto: false,
  engine: false,
  hypochlorite: false,
  acid: false,
  ammonium: false,
  pesticide: false,
  corrosive: false,
  towed: false,
  liftedOnHitch: false,
  leadAcid: false,
  roofWork: false,
  highJet: false,
  filledFromMains: false,
  sprayedOutdoors: false,
};
const caused = (facts: CautionFacts) =>
  cautionsFor(facts)
    .filter((c) => c.state === 'caused')
    .map((c) => c.caution.id);

describe('Cautions', () => {
  it('come from their cause and from nothing else', () => {
    expect(cautionsFor(harmless)).toEqual([]);
    expect(caused({ ...harmless, pto: true })).toEqual(['pto-shaft']);
    expect(caused({ ...harmless, hypochlorite: true })).toEqual(['bleach-alone']);
    expect(caused({ ...harmless, hypochlorite: true, acid: true })).toEqual(['chlorine-gas', 'bleach-alone']);
    expect(caused({ ...harmless, liftedOnHitch: true })).toEqual(['lifting']);
  });

  it('injection begins at 7 bar and is serious at 100 bar (HSE FOD 4-2014)', () => {
    expect(caused({ ...harmless, pressure: 6.9e5 })).toEqual([]);
    expect(caused({ ...harmless, pressure: 7e5 })).toEqual(['injection']);
    expect(caused({ ...harmless, pressure: 1.2e7 })).toEqual(['injection', 'injection-serious']);
  });

  it('a heavy rig is no towing matter unless it is towed', () => {
    expect(caused({ ...harmless, mass: 3000 })).toEqual(['sling']);
    expect(caused({ ...harmless, mass: 3000, towed: true })).toEqual(['towing', 'heavy-towing', 'sling']);
  });

  it('a missing fact is asked for and never taken as harmless', () => {
    const asked = cautionsFor({});
    expect(asked.length).toBe(CAUTIONS.length);
    expect(asked.every((c) => c.state === 'unknown' && c.because.startsWith('not stated: '))).toBe(true);
    const withoutTowed = Object.fromEntries(
      Object.entries({ ...harmless, mass: 3000 }).filter(([fact]) => fact !== 'towed'),
    );
    expect(cautionsFor(withoutTowed).find((c) => c.caution.id === 'heavy-towing')).toMatchObject({
      state: 'unknown',
    });
  });

  it('each appear once, with a source, a danger and something to do', () => {
    expect(new Set(CAUTIONS.map((c) => c.id)).size).toBe(CAUTIONS.length);
    for (const c of CAUTIONS)
      for (const text of [c.danger, c.act, c.origin.source, c.origin.place, c.origin.edition])
        expect(text.length).toBeGreaterThan(2);
  });

  it('frost is a matter of storage, below freezing only', () => {
    expect(caused({ ...harmless, coldest: 273 })).toEqual(['frost']);
  });

  it('refuse impossible facts by name', () => {
    expect(() => cautionsFor({ pressure: -1 })).toThrow(/pressure is -1 Pa/);
  });
});
