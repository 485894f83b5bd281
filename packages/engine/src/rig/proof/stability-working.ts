import { DYNAMIC_ROLL_SHARE, sideSlopeWheelLoads } from '../../physics/index.ts';
import { is, number, worked, type Figure, type Step } from '../promise.ts';

/** The slope at which a rig tips over sideways, at the fill that is worst. */
export interface TipAngle {
  /** [rad] */
  readonly angle: number;
  /** Share of the tank. */
  readonly fill: number;
  /** Centre of mass as it acts in roll, above the ground [m]. */
  readonly height: number;
  readonly track: number;
  readonly mass: number;
  /** What the height is made of: masses and the height each acts at [kg, m]. */
  readonly made: readonly { readonly name: string; readonly mass: number; readonly height: number }[];
  /** The single support in front, a ball or the pin of a swinging axle, when it has one [m]. */
  readonly support?: { readonly toAxle: number; readonly toCentre: number; readonly height: number };
}

/** How the slope at which a rig tips over follows from its masses, their heights and where it stands. */
export function tipSteps(tip: TipAngle, slope: number): Step[] {
  const wheels = sideSlopeWheelLoads(tip.mass, tip.height, tip.track, Math.min(1.2, slope));
  const angle = is(tip.angle, 'angle');
  return [
    ...heightSteps(tip),
    angleStep(tip, angle),
    worked(
      'tips in a manoeuvre, 25 % sooner (SAE 2003-01-3385, abstract)',
      is(Math.atan(DYNAMIC_ROLL_SHARE * Math.tan(tip.angle)), 'angle'),
      'atan(0.75 × {steepness at which it tips})',
      { 'steepness at which it tips': number(Math.tan(tip.angle)) },
    ),
    { text: 'downhill wheels carry', figure: is(wheels.lowSide, 'mass') },
  ];
}

/** Centre of mass as it acts in roll. */
function heightSteps({ made, height, mass }: TipAngle): Step[] {
  const parts = made.filter((m) => m.mass > 0);
  const terms: Record<string, Figure> = {};
  for (const { name, mass: own, height: at } of parts) {
    terms[name] = is(own, 'mass');
    terms[`height of the ${name}`] = is(at, 'length');
  }
  const names = Object.keys(terms);
  const moments = parts.map((_, i) => `{${names[2 * i]!}} × {${names[2 * i + 1]!}}`).join(' + ');
  const masses = parts.map((_, i) => `{${names[2 * i]!}}`).join(' + ');
  const exact = parts.reduce((sum, m) => sum + m.mass * m.height, 0) / mass;
  const text = 'centre of mass in roll, above the ground';
  // A centre held up at the least that the law takes is no longer the sum.
  if (Math.abs(exact - height) > 1e-9) return [{ text, figure: is(height, 'length') }];
  return [worked(text, is(height, 'length'), `(${moments}) / (${masses})`, terms)];
}

function angleStep({ track, height, support }: TipAngle, angle: Figure): Step {
  const text = 'slope at which it tips over';
  const terms = { track: is(track, 'length'), 'centre up': is(height, 'length') };
  if (angle.value >= Math.PI / 2) return { text, figure: angle };
  if (support === undefined) return worked(text, angle, 'atan({track} / (2 × {centre up}))', terms);
  const all = {
    ...terms,
    'centre behind the front support': is(support.toCentre, 'length'),
    'axle behind it': is(support.toAxle, 'length'),
    'support up': is(support.height, 'length'),
  };
  const lever =
    support.height === 0
      ? '({axle behind it} × {centre up})'
      : '({axle behind it} × ({centre up} − {support up}) + {support up} × {centre behind the front support})';
  return worked(text, angle, `atan({track} / 2 × {centre behind the front support} / ${lever})`, all);
}

/** On the road: the sideways pull that lifts the inner wheels. */
export function bendSteps(tip: TipAngle): Step[] {
  const slope = is(tip.angle, 'angle');
  return [
    ...heightSteps(tip),
    angleStep(tip, slope),
    worked(
      'sideways pull at which it rolls, in g',
      is(Math.tan(tip.angle), 'ratio'),
      'tan({slope} × π / 180)',
      {
        slope: number((tip.angle * 180) / Math.PI),
      },
    ),
  ];
}
