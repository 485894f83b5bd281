import {
  HIGHEST_MEASURED_PRESSURE,
  jetExitSpeed,
  jetState,
  REACH_DOUBT,
  STANDARD_GRAVITY,
  THROW_DEFAULTS,
  type ThrowStream,
} from '../../physics/index.ts';
import { streamAt, streamOf } from '../gun-throw.ts';
import { is, number, worked, type Step } from '../promise.ts';
import type { Thrower } from './thrower.ts';

/** No drop larger than this holds together in the throw model [m]. */
const LARGEST_DROP = 0.006;

/** What a duty's throw came to [m, rad]. */
interface ReachFigures {
  readonly meaning: 'wetted' | 'touched';
  readonly farthest: number;
  readonly bulk: number;
  readonly goodStream: number;
  readonly promised: number;
  readonly sigma: number;
  readonly elevation: number;
}

/** What the throw follows from, from the pressure at the tip to the reach that is promised. */
export function reachSteps(thrower: Thrower, reach: ReachFigures, hose: string): Step[] {
  const { conditions, pressure } = thrower;
  const stream = streamAt(conditions, pressure)!;
  const quality = streamOf(conditions.gun, conditions.tip);
  const touched = reach.meaning === 'touched';
  const speaksOf = touched ? 'the farthest drops' : 'half the water';
  return [
    { text: `pressure in front of the tip${hose}`, figure: is(pressure, 'pressure') },
    { text: 'flow of the gun', figure: is(thrower.flow, 'flow') },
    { text: `stream quality: ${quality}`, figure: number(stream.quality) },
    ...jetSteps(stream),
    { text: 'gun held at', figure: is(reach.elevation, 'angle') },
    { text: 'farthest drops, followed step by step through the air', figure: is(reach.farthest, 'length') },
    { text: 'half the water, followed the same way', figure: is(reach.bulk, 'length') },
    { text: 'good stream', figure: is(reach.goodStream, 'length') },
    ...doubtSteps(stream, reach.sigma),
    worked(
      `9 in 10 of ${speaksOf}`,
      is(reach.promised, 'length'),
      `{${speaksOf}} × exp(−1.2816 × {spread})`,
      {
        [speaksOf]: is(touched ? reach.farthest : reach.bulk, 'length'),
        spread: is(reach.sigma, 'ratio'),
      },
    ),
    { text: 'a water test of the built rig would narrow the doubt' },
  ];
}

/** The jet as it leaves the tip, and what it breaks into. */
function jetSteps(stream: ThrowStream): Step[] {
  const { velocityCoefficient = 0.97, density = 998.2, airDensity = 1.204, jetDiameter, pressure } = stream;
  const { surfaceTension } = THROW_DEFAULTS;
  const { exitSpeed, weber, cohesionLength, farthestDropDiameter } = jetState(stream);
  if (exitSpeed === 0) return [];
  const [speed, jet, air] = [
    is(exitSpeed, 'speed', 'liquid-speed'),
    is(jetDiameter, 'length'),
    is(airDensity, 'density'),
  ];
  const tension = is(surfaceTension, 'surfaceTension');
  const spray = (stream.pattern ?? 'stream') !== 'stream';
  const [held, share] = spray ? [0.02, 0.5] : [stream.quality, 1];
  return [
    exitStep(pressure, density, velocityCoefficient),
    worked('thickness of the jet', jet, '√(4 × {flow} / (π × {exit speed}))', {
      flow: is((Math.PI / 4) * jetDiameter ** 2 * exitSpeed, 'flow'),
      'exit speed': speed,
    }),
    worked(
      'straight up it would rise without air, above the gun',
      is(exitSpeed ** 2 / (2 * STANDARD_GRAVITY), 'length'),
      '{exit speed} ^ 2 / (2 × {gravity})',
      { 'exit speed': speed, gravity: is(STANDARD_GRAVITY, 'acceleration') },
    ),
    worked(
      'pull of the air against surface tension (Weber number)',
      number(weber),
      '{air} × {exit speed} ^ 2 × {jet} / {surface tension}',
      { air, 'exit speed': speed, jet, 'surface tension': tension },
    ),
    worked(
      'length over which it holds together',
      is(cohesionLength, 'length'),
      '200 × {quality} × {jet} × {Weber number} ^ 0.4',
      { quality: number(held), jet, 'Weber number': number(weber) },
    ),
    ...dropStep(farthestDropDiameter, share, { air, speed, jet, tension }),
  ];
}

/** Size of the farthest drops: what the air tears off, never more than a drop can be. */
function dropStep(
  size: number,
  share: number,
  { air, speed, jet, tension }: Record<'air' | 'speed' | 'jet' | 'tension', ReturnType<typeof is>>,
): Step[] {
  const free = (share * 4.5 * Math.sqrt((jet.value * tension.value) / air.value)) / speed.value;
  return [
    worked(
      'drops that the air would tear from it',
      is(free, 'length'),
      `${share === 1 ? '' : `${share} × `}4.5 × √({jet} × {surface tension} / {air}) / {exit speed}`,
      { jet, 'surface tension': tension, air, 'exit speed': speed },
    ),
    worked(
      'farthest drops are this large, since none outlives the largest',
      is(size, 'length'),
      '{torn} × {largest} / ({torn} ^ 4 + {largest} ^ 4) ^ 0.25',
      { torn: is(free, 'length'), largest: is(LARGEST_DROP, 'length') },
    ),
  ];
}

/** How far real throws lie from the model. */
function doubtSteps(stream: ThrowStream, sigma: number): Step[] {
  if ((stream.pattern ?? 'stream') !== 'stream')
    return [{ text: 'spread of cones and fans: nine in ten within 30 %', figure: number(sigma) }];
  const { qualityUnknown, extrapolation, extrapolationRatio, smallBore, smallBoreDoubt } = REACH_DOUBT;
  const measured = is(HIGHEST_MEASURED_PRESSURE, 'pressure');
  const above =
    extrapolation *
    Math.min(1, Math.max(0, Math.log(stream.pressure / measured.value) / Math.log(extrapolationRatio)));
  return [
    worked(
      'spread for a pressure above all that was measured',
      number(above),
      `${extrapolation} × min(1, max(0, ln({pressure} / {highest measured}) / ln(${extrapolationRatio})))`,
      { pressure: is(stream.pressure, 'pressure'), 'highest measured': measured },
    ),
    worked(
      'spread of real throws about the model',
      number(sigma),
      '√({stream not measured} ^ 2 + {above measured} ^ 2 + {small bore} ^ 2)',
      {
        'stream not measured': number(qualityUnknown),
        'above measured': number(above),
        'small bore': number(stream.jetDiameter < smallBore ? smallBoreDoubt : 0),
      },
    ),
  ];
}

function exitStep(pressure: number, density: number, velocityCoefficient: number): Step {
  return worked(
    'exit speed',
    is(jetExitSpeed(pressure, density, velocityCoefficient), 'speed', 'liquid-speed'),
    '{speed of the tip against free flow} × √(2 × {pressure} / {density})',
    {
      'speed of the tip against free flow': number(velocityCoefficient),
      pressure: is(pressure, 'pressure'),
      density: is(density, 'density'),
    },
  );
}

/** Push of the jet on the gun. */
export function pushSteps({ conditions, pressure, flow }: Thrower, force: number): Step[] {
  const { density, tip } = conditions;
  const exit = exitStep(pressure, density, tip.velocityCoefficient);
  return [
    exit,
    worked('push of the jet', is(force, 'force'), '{density} × {flow} × {exit speed}', {
      density: is(density, 'density'),
      flow: is(flow, 'flow'),
      'exit speed': exit.figure!,
    }),
  ];
}
