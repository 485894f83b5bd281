import { inRange } from '../in-range.ts';
import { frictionFactorCrane } from './crane.ts';
import { checkBore } from './limits.ts';

/**
 * Loss coefficient of a full-port ball valve, fully open.
 *
 * @formula K = 3 fT
 * @param bore bore of pipe and valve [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4; thick liquid and trickles cost more, see lossCoefficientAtReynolds
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-27
 */
export function lossCoefficientBallValve(bore: number): number {
  return 3 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a standard-port (reduced bore) ball valve, fully open.
 *
 * @formula K = (3 fT + 0.8 sin(θ1/2)(1 - β²) + 2.6 sin(θ2/2)(1 - β²)²) / β⁴, β = port over pipe bore
 * @param pipeBore bore of the pipe [m] 0.0002..0.5
 * @param portBore bore of the ball [m] 0.0002..0.5
 * @param inletAngle included angle of the cone into the ball [rad] 0..0.7854
 * @param outletAngle included angle of the cone out of the ball; default the inlet angle [rad] 0..0.7854
 * @returns loss coefficient on the pipe bore [-]
 * @valid port at most the pipe bore and at least 0.3 of it; Reynolds number above 1e4. A port of 3/4 of the bore costs some twelve times a full port
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 (2009), formula 5 and example 7-6
 */
export function lossCoefficientBallValveReduced(
  pipeBore: number,
  portBore: number,
  inletAngle: number,
  outletAngle: number = inletAngle,
): number {
  checkBore(pipeBore, 'pipeBore');
  inRange('portBore', portBore, 0.3 * pipeBore, pipeBore, 'm');
  inRange('inletAngle', inletAngle, 0, Math.PI / 4, 'rad');
  inRange('outletAngle', outletAngle, 0, Math.PI / 4, 'rad');
  const areaRatio = (portBore / pipeBore) ** 2;
  const step = 1 - areaRatio;
  const cones = 0.8 * Math.sin(inletAngle / 2) * step + 2.6 * Math.sin(outletAngle / 2) * step * step;
  return (3 * frictionFactorCrane(pipeBore) + cones) / (areaRatio * areaRatio);
}

/**
 * Loss coefficient of a three-way plug valve whose ports have the bore of the pipe, along the straight path.
 *
 * @formula K = 30 fT
 * @param bore bore of pipe and valve [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-28
 */
export function lossCoefficientThreeWayStraight(bore: number): number {
  return 30 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a three-way plug valve whose ports have the bore of the pipe, along the turned path.
 *
 * @formula K = 90 fT
 * @param bore bore of pipe and valve [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-28
 */
export function lossCoefficientThreeWayTurned(bore: number): number {
  return 90 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a gate valve of full bore, fully open.
 *
 * @formula K = 8 fT
 * @param bore bore of pipe and valve [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-27
 */
export function lossCoefficientGateValve(bore: number): number {
  return 8 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a swing check valve of full bore.
 *
 * @formula K = 100 fT
 * @param bore bore of pipe and valve [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid disc fully lifted and Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-27
 */
export function lossCoefficientSwingCheck(bore: number): number {
  return 100 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a straight lift check valve.
 *
 * @formula K = (600 fT + β (0.5 (1 - β²) + (1 - β²)²)) / β⁴, β = seat over pipe bore
 * @param pipeBore bore of the pipe [m] 0.0002..0.5
 * @param seatBore bore of the seat; default the pipe bore [m] 0.0002..0.5
 * @returns loss coefficient on the pipe bore [-]
 * @valid disc fully lifted, seat at least 0.3 of the pipe bore, Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-27
 */
export function lossCoefficientLiftCheck(pipeBore: number, seatBore: number = pipeBore): number {
  checkBore(pipeBore, 'pipeBore');
  inRange('seatBore', seatBore, 0.3 * pipeBore, pipeBore, 'm');
  const beta = seatBore / pipeBore;
  const step = 1 - beta * beta;
  return (600 * frictionFactorCrane(pipeBore) + beta * (0.5 * step + step * step)) / beta ** 4;
}
