import { expect, it } from 'vitest';
import type { PartOf } from '../../catalogue/index.ts';
import type { Supply } from '../plumbing/index.ts';
import { NOTHING, type Money } from './money.ts';
import { Pieces } from './pieces.ts';
import type { SmallThings } from './small-things.ts';
import { Owns } from './trims.ts';

const clamp = (maxPressure: number, priceCents: number) =>
  ({
    kind: 'hardware',
    priceCents,
    purpose: { form: 'hose-clamp', maxPressure, smallest: 0.01, largest: 0.05 },
  }) as PartOf<'hardware'>;

/** A hose of which the clamps alone are told apart by the pressure: fittings stand 10 bar or 20. */
it('reckons a hose with a clamp that stands its own pressure, whatever it was asked before', () => {
  const supply = {
    hardware: [clamp(12e5, 100), clamp(20e5, 900)],
    level: (pressure: number) => [10e5, 20e5].find((r) => r >= pressure) ?? Infinity,
  } as Pick<Supply, 'hardware' | 'level'> as Supply;
  const money = {
    bought: (part: { readonly priceCents: number }, count: number) => ({
      ...NOTHING,
      cents: part.priceCents * count,
    }),
    per: () => 0,
  } as unknown as Money;
  const small = { own: () => NOTHING } as unknown as SmallThings;
  const hose = {
    kind: 'hose',
    id: 'hose',
    priceCents: 0,
    longestPiece: 100,
    outsideDiameter: 0.02,
    ports: [
      { id: 'in', joint: 'hose' },
      { id: 'out', joint: 'hose' },
    ],
  } as unknown as PartOf<'hose'>;
  const owns = new Owns(money, new Pieces(supply, money, 20e5), small);
  const cents = (pressure: number) => owns.of('hose', hose, 10, 1, pressure).cents;
  expect(cents(15e5)).toBe(2 * 900);
  // Between the same ratings of fittings, but within what the weaker clamp stands.
  expect(cents(11e5)).toBe(2 * 100);
});
