import { centreAt, FILLS, wheelLoads, type Fill } from '../placement/index.ts';
import { compared, is, worked, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** Nearer than this to the middle line nobody would find a centre of mass off it [m]. */
const IN_THE_MIDDLE = 0.01;

interface Side {
  readonly axle: string;
  readonly side: 'left' | 'right';
  readonly fill: Fill;
  readonly load: number;
  readonly rating: number;
  /** Load of the whole axle [kg], and its track [m]. */
  readonly whole: number;
  readonly track: number;
}

/** Parts that stand off the middle line load the wheels of one side more: the worst side of all axles and fills is judged. */
export function wheelPromises(context: ProofContext, { rig, supports }: Loaded): RigPromise[] {
  const sides: Side[] = [];
  for (const support of supports) {
    const { wheels, name: axle } = support;
    if (wheels === undefined) continue;
    const { track, sideRating: rating } = wheels;
    for (const fill of ['full', 'half', 'empty'] as const) {
      const whole = support[fill];
      const { left, right } = wheelLoads(whole, centreAt(rig, FILLS[fill]).y, track);
      sides.push({ axle, side: 'left', fill, load: left, rating, whole, track });
      sides.push({ axle, side: 'right', fill, load: right, rating, whole, track });
    }
  }
  if (sides.length === 0) return [];
  const worst = sides.reduce((a, b) => (b.load / b.rating > a.load / a.rating ? b : a));
  const off = centreAt(rig, FILLS[worst.fill]).y;
  return [
    compared(
      {
        id: 'weight:wheels',
        kind: 'weight',
        sentence: 'No wheel carries more than its tyres may',
        cause: `${worst.axle.toLowerCase()}, ${worst.side} wheels when ${worst.fill}; the centre of mass lies ${Math.abs(off) < IN_THE_MIDDLE ? 'in' : `${say(context, Math.abs(off), 'length')} ${off < 0 ? 'right' : 'left'} of`} the middle line`,
        items: [carrierItem(context), rig.tankAt.item],
        method: 'axle loads shared by the place of the centre of mass across the rig',
        source: 'statics; tyre ratings of the catalogue; the frame taken as stiff',
        working: sides
          .filter((s) => s.axle === worst.axle && s.fill === worst.fill)
          .map((s) =>
            worked(
              `${s.side} wheels of ${s.axle.toLowerCase()}`,
              is(s.load, 'mass'),
              `{load of the axle} × (0.5 ${s.side === 'left' ? '+' : '−'} {to the left of the middle} / {track})`,
              {
                'load of the axle': is(s.whole, 'mass'),
                'to the left of the middle': is(off, 'length'),
                track: is(s.track, 'length'),
              },
            ),
          ),
      },
      { value: worst.rating, dimension: 'mass' },
      { value: worst.load, dimension: 'mass' },
      'at-most',
    ),
  ];
}
