import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { jetFlow } from './jet-exit.ts';
import { promiseFactor, REACH_AIMS, type ReachAim, reachSigma } from './promise.ts';
import { bestHeightAtStandoff } from './standoff.ts';
import { THROW_DEFAULTS } from './stream.ts';

export interface HeightDemand {
  readonly height: number;
  readonly standoff: number;
  readonly nozzleHeight: number;
  readonly pressure: number;
  readonly quality: number;
  readonly aim: ReachAim;
  /** Whether the height is to be kept nine times in ten, rather than to be likely. */
  readonly promised: boolean;
  readonly qualityKnown?: boolean;
}

export interface FlowForHeight {
  readonly flow: number;
  readonly jetDiameter: number;
}

const SMALLEST = 0.0005;
const LARGEST = 0.1;
const HALVINGS = 24;

/**
 * Flow of water that a solid stream needs to wet or touch a height: flow buys height, pressure hardly does.
 *
 * @formula the flow whose height at the standoff, times the promise factor when it is promised, is the height asked for
 * @param p.height height above ground to be reached [m] 0..60
 * @param p.standoff horizontal distance from the nozzle to the target [m] 0..100
 * @param p.nozzleHeight height of the nozzle above ground [m] 0..50
 * @param p.pressure pressure at the gun while it flows, gauge [Pa] 5e4..1e7
 * @param p.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param p.aim whether the target must be wetted or only touched [one of wetted, touched]
 * @param p.promised whether the height is to be kept nine times in ten [yes/no]
 * @param p.qualityKnown whether the stream quality is known rather than assumed; default yes [yes/no]
 * @result flow volume flow of the gun; Infinity when no jet up to 100 mm reaches it [m3/s]
 * @result jetDiameter diameter of the jet; Infinity when no jet up to 100 mm reaches it [m]
 * @valid as bestHeightAtStandoff; still air
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function flowForHeight(p: HeightDemand): FlowForHeight {
  inRange('height', p.height, 0, 60, 'm');
  inRange('standoff', p.standoff, 0, 100, 'm');
  inRange('pressure', p.pressure, 5e4, 1e7, 'Pa');
  oneOfChoices('aim', p.aim, REACH_AIMS);
  const known = p.qualityKnown ?? true;
  const reaches = (jetDiameter: number): boolean => {
    const stream = { jetDiameter, pressure: p.pressure, quality: p.quality };
    const best = bestHeightAtStandoff(stream, p.standoff, p.nozzleHeight);
    const factor = p.promised ? promiseFactor(reachSigma(p.pressure, jetDiameter, known)) : 1;
    return factor * (p.aim === 'wetted' ? best.bulk : best.farthest) >= p.height;
  };
  if (!reaches(LARGEST)) return { flow: Infinity, jetDiameter: Infinity };
  let short = SMALLEST;
  let enough = LARGEST;
  for (let i = 0; i < HALVINGS && !(enough < short * 1.0005); i++) {
    const middle = Math.sqrt(short * enough);
    if (reaches(middle)) enough = middle;
    else short = middle;
  }
  return { flow: jetFlow(enough, p.pressure, THROW_DEFAULTS.density), jetDiameter: enough };
}
