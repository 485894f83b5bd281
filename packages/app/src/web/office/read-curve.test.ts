import { describe, expect, it } from 'vitest';
import { readCurve, type AxisPoint } from './read-curve.ts';

// A plot of 500 by 400 pixels: 0 gpm and 0 ft at (50, 350), 100 gpm and 150 ft at (450, 50). Worked by hand:
// 4 pixels a gallon per minute, 2 pixels a foot.
const ORIGIN: AxisPoint = { place: { x: 50, y: 350 }, flow: '0 gpm', head: '0 ft' };
const CORNER: AxisPoint = { place: { x: 450, y: 50 }, flow: '100 gpm', head: '150 ft' };
const at = (gpm: number, feet: number) => ({ x: 50 + 4 * gpm, y: 350 - 2 * feet });

describe('A curve read off a picture', () => {
  it('gives the values under the places, in the typed units and by rising flow', () => {
    expect(readCurve(ORIGIN, CORNER, [at(60, 90), at(0, 120), at(30, 110)])).toEqual({
      points: [
        { flow: '0 gpm', head: '120 ft' },
        { flow: '30 gpm', head: '110 ft' },
        { flow: '60 gpm', head: '90 ft' },
      ],
    });
  });

  it('takes axes that do not begin at nothing, and other units', () => {
    const first = { place: { x: 0, y: 100 }, flow: '10 l/min', head: '5 m' };
    const second = { place: { x: 100, y: 0 }, flow: '20 l/min', head: '10 m' };
    const read = readCurve(first, second, [
      { x: 0, y: 0 },
      { x: 50, y: 50 },
      { x: 100, y: 100 },
    ]);
    expect(read).toEqual({
      points: [
        { flow: '10 l/min', head: '10 m' },
        { flow: '15 l/min', head: '7.5 m' },
        { flow: '20 l/min', head: '5 m' },
      ],
    });
  });

  it('is refused where it droops, with both points', () => {
    expect(readCurve(ORIGIN, CORNER, [at(0, 100), at(20, 110), at(60, 80)])).toEqual({
      why: 'From 0 gpm, 100 ft to 20 gpm, 110 ft: head must fall as flow rises; a drooping curve has several duty points.',
    });
  });

  it.each([
    ['axes without places', { ...ORIGIN, place: undefined }, CORNER, /two points of the axes/],
    ['a flow that is none', { ...ORIGIN, flow: '3 ft' }, CORNER, /^The flow of the first point/],
    ['axes that do not differ', { ...ORIGIN, flow: '100 gpm' }, CORNER, /differ in flow/],
    [
      'a point outside',
      { ...ORIGIN, flow: '90 gpm' },
      { ...CORNER, flow: '80 gpm' },
      /head must fall|outside/,
    ],
  ])('is refused with %s', (_, first, second, words) => {
    const read = readCurve(first, second, [at(0, 120), at(30, 110), at(60, 90)]);
    expect('why' in read && read.why).toMatch(words);
  });

  it('is refused with fewer than three points', () => {
    expect(readCurve(ORIGIN, CORNER, [at(0, 120)])).toEqual({
      why: '1 points are on the curve; at least 3 are needed.',
    });
  });
});
