import { describe, expect, it } from 'vitest';
import { outletsSaid } from './outlets-said.ts';

/** 1 US gal is 3.785411784 l, 1 psi 6894.757 Pa (NIST SP 811, appendix B.8). */
const GPM = 3.785411784e-3 / 60;
const PSI = 6894.757;
const outlet = (line: string, gpm: number, psi: number) => ({
  line,
  flow: gpm * GPM,
  tipPressure: psi * PSI,
});

describe('What comes out', () => {
  it('tells outlets that read alike together, and others apart', () => {
    const alike = ['boom', 'boom-2', 'boom-3'].map((line) => outlet(line, 2.7, 51));
    expect(outletsSaid([...alike, outlet('gun', 12, 300)], 'us')).toEqual([
      '2.7 gpm at 51 psi at the boom, the boom-2 and the boom-3',
      '12.0 gpm at 300 psi at the gun',
    ]);
    expect(outletsSaid([], 'us')).toEqual([]);
  });
});
