import { inRange } from '../in-range.ts';
import { CHARGING_COILS } from './battery.data.ts';

export interface ChargeBudgetInput {
  readonly rewindCurrent: number;
  readonly rewindTime: number;
  readonly rewindsPerHour: number;
  readonly controlCurrent: number;
  readonly coilCurrent: number;
  readonly coilUsefulFraction?: number;
  readonly chargeAcceptance?: number;
}

export interface ChargeBudget {
  readonly drawn: number;
  readonly returned: number;
  readonly net: number;
}

/**
 * Charge drawn and returned in an hour of work, as mean currents.
 *
 * @formula drawn = I_r t_r n + I_c; returned = I_coil f η
 * @param p.rewindCurrent current of the reel [A] 0..500
 * @param p.rewindTime time of one rewind [s] 0..3600
 * @param p.rewindsPerHour rewinds in an hour; together at most the whole hour [-] 0..1000
 * @param p.controlCurrent steady current of controls and valves [A] 0..200
 * @param p.coilCurrent rating of the engine's charging coil at full speed [A] 0..200
 * @param p.coilUsefulFraction share of the rating that comes out at working speed; default 0.8 [-] 0..1
 * @param p.chargeAcceptance share that the battery takes up; default 0.85 [-] 0..1
 * @result drawn mean current drawn: ampere-hours each hour [A]
 * @result returned mean current returned [A]
 * @result net returned less drawn; negative when the battery empties [A]
 * @valid the coil gives its rating at full engine speed only: idling between jobs charges little. Both fractions are from memory
 * @throws RangeError when a parameter is outside its range
 * @source Charge balance; coil sizes from a small-engine service manual
 */
export function chargeBudget(p: ChargeBudgetInput): ChargeBudget {
  const {
    coilUsefulFraction = CHARGING_COILS.usefulFraction,
    chargeAcceptance = CHARGING_COILS.chargeAcceptance,
  } = p;
  inRange('rewindCurrent', p.rewindCurrent, 0, 500, 'A');
  inRange('rewindTime', p.rewindTime, 0, 3600, 's');
  inRange('rewindsPerHour', p.rewindsPerHour, 0, 1000, '-');
  inRange('rewindTime × rewindsPerHour', p.rewindTime * p.rewindsPerHour, 0, 3600, 's');
  inRange('controlCurrent', p.controlCurrent, 0, 200, 'A');
  inRange('coilCurrent', p.coilCurrent, 0, 200, 'A');
  inRange('coilUsefulFraction', coilUsefulFraction, 0, 1, '-');
  inRange('chargeAcceptance', chargeAcceptance, 0, 1, '-');
  const drawn = (p.rewindCurrent * p.rewindTime * p.rewindsPerHour) / 3600 + p.controlCurrent;
  const returned = p.coilCurrent * coilUsefulFraction * chargeAcceptance;
  return { drawn, returned, net: returned - drawn };
}

/**
 * Hours of work until a battery reaches its planned depth of discharge.
 *
 * @formula t = depth C / (-net)
 * @param capacity capacity of the battery [Ah] 0.1..5000
 * @param depth depth of discharge planned with [-] 0.01..1
 * @param net mean current into the battery, negative when it empties [A] -1000..1000
 * @returns hours, or null for never: at least as much goes in as comes out [h]
 * @valid without Peukert: right for a mean current near the rated one, flattering when the reel draws hard
 * @throws RangeError when a parameter is outside its range
 * @source Charge balance
 */
export function hoursToDepth(capacity: number, depth: number, net: number): number | null {
  inRange('capacity', capacity, 0.1, 5000, 'Ah');
  inRange('depth', depth, 0.01, 1, '-');
  inRange('net', net, -1000, 1000, 'A');
  const hours = (depth * capacity) / -net;
  return net < 0 && Number.isFinite(hours) ? hours : null;
}

/**
 * State of charge of a battery after a number of hours of work.
 *
 * @formula s = clamp(s0 + net t / C, 0, 1)
 * @param capacity capacity of the battery [Ah] 0.1..5000
 * @param startCharge state of charge at the start [-] 0..1
 * @param net mean current into the battery [A] -1000..1000
 * @param hours hours of work [h] 0..1000
 * @returns state of charge, between empty and full [-]
 * @throws RangeError when a parameter is outside its range
 * @source Charge balance
 */
export function stateOfCharge(capacity: number, startCharge: number, net: number, hours: number): number {
  inRange('capacity', capacity, 0.1, 5000, 'Ah');
  inRange('startCharge', startCharge, 0, 1, '-');
  inRange('net', net, -1000, 1000, 'A');
  inRange('hours', hours, 0, 1000, 'h');
  return Math.min(1, Math.max(0, startCharge + (net * hours) / capacity));
}
