import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boreForLoss,
  bypassWarming,
  flowAtOneBarFromOrifice,
  hoseLoss,
  orificeForFlow,
  pressureTankDrawdown,
  reelHoseLength,
  reelPackDiameter,
  tipFlow,
} from '../index.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spread = (min: number, max: number) => number(Math.log(min), Math.log(max)).map(Math.exp);

describe('what is sized for a flow gives that flow back', () => {
  it('a drilled hole', () => {
    fc.assert(
      fc.property(
        spread(1e-6, 0.01),
        spread(5e4, 2e7),
        number(800, 1400),
        number(0.5, 1),
        (flow, pressure, density, coefficient) => {
          const diameter = orificeForFlow(flow, pressure, density, coefficient);
          fc.pre(diameter >= 0.0002 && diameter <= 0.5);
          const back = tipFlow(flowAtOneBarFromOrifice(diameter, coefficient), pressure, density);
          expect(back / flow).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('a hose: its loss is what was allowed, and any narrower one loses more', () => {
    fc.assert(
      fc.property(spread(1e-5, 0.02), spread(1e4, 2e6), number(1, 200), (flow, allowed, length) => {
        const hose = { flow, length, roughness: 1e-5, density: 1000, viscosity: 1e-3 };
        const bore = boreForLoss(flow, allowed, length, 1e-5, 1000, 1e-3);
        const loss = hoseLoss({ ...hose, bore }).pressureLoss;
        expect(loss).toBeLessThanOrEqual(allowed);
        if (hoseLoss({ ...hose, bore: bore * 0.9999 }).velocity > 199) return;
        expect(hoseLoss({ ...hose, bore: bore * 0.9999 }).pressureLoss).toBeGreaterThan(loss);
        expect(loss / allowed).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe('a reel', () => {
  it('filled with its length of hose is full to the flange', () => {
    const [hub, flange, width, hose] = [0.2, 0.5, 0.45, 0.021];
    expect(reelPackDiameter(hub, width, hose, reelHoseLength(flange, hub, width, hose))).toBeCloseTo(
      flange,
      12,
    );
    expect(reelPackDiameter(hub, width, hose, 0)).toBe(hub);
  });

  it('holds what its turns add up to, counted layer by layer', () => {
    const [hub, width, hose, layers, turns] = [0.2, 0.46, 0.02, 7, 23];
    let length = 0;
    for (let layer = 0; layer < layers; layer++) length += turns * Math.PI * (hub + (2 * layer + 1) * hose);
    expect(reelHoseLength(hub + 2 * layers * hose, hub, width, hose)).toBeCloseTo(length, 9);
  });
});

describe('a pressure tank', () => {
  const air = 101325;

  it('gives the difference of what it holds at both pressures (gas at constant temperature)', () => {
    const [volume, charge, on, off] = [0.004, 2e5, 2.8e5, 4.1e5];
    const held = (pressure: number) => volume - (volume * (charge + air)) / (pressure + air);
    expect(pressureTankDrawdown(volume, charge, on, off)).toBeCloseTo(held(off) - held(on), 12);
  });

  it('gives nothing without a difference, more the wider it is, and is refused when charged too high', () => {
    expect(pressureTankDrawdown(0.004, 1e5, 2e5, 2e5)).toBe(0);
    expect(pressureTankDrawdown(0.004, 1e5, 2e5, 4e5)).toBeGreaterThan(
      pressureTankDrawdown(0.004, 1e5, 2e5, 3e5),
    );
    expect(() => pressureTankDrawdown(0.004, 3e5, 2e5, 4e5)).toThrow(
      'charge is 300000 Pa; it must be at most 200000 Pa',
    );
  });
});

describe('liquid that goes round through a bypass', () => {
  it('warms each time by the pressure it loses over its heat capacity (energy of one pass)', () => {
    const [flow, pressure, volume] = [5e-4, 3e6, 0.02];
    const once = pressure / (1000 * 4180);
    const passes = (flow * 60) / volume;
    expect(bypassWarming(flow * pressure, 60, volume, 1000)).toBeCloseTo(once * passes, 12);
  });
});
