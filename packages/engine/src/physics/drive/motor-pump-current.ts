import { inRange } from '../in-range.ts';
import { fluidPower } from './fluid-power.ts';

/** Fluid power above which a 12 V drive is the wrong drive: design judgement, no source [W]. */
export const MAX_SENSIBLE_12V_FLUID_POWER = 150;

/**
 * Current that an electric motor pump draws at a flow and pressure.
 *
 * @formula I = Q Δp / (η U)
 * @param flow volume flow [m3/s] 0..0.1
 * @param pressureRise pressure rise across the pump [Pa] 0..1e8
 * @param efficiency efficiency of motor and pump together [-] 0.05..1
 * @param voltage voltage at the motor [V] 1..1000
 * @result fluidPower power in the liquid [W]
 * @result current current drawn [A]
 * @result sensibleAt12V whether the fluid power is at most 150 W, above which 12 V is the wrong drive [yes/no]
 * @valid efficiency 0.3 to 0.5 for small diaphragm motor pumps (from memory); the 150 W is design judgement
 * @throws RangeError when a parameter is outside its range
 * @source Power balance
 */
export function motorPumpCurrent(
  flow: number,
  pressureRise: number,
  efficiency: number,
  voltage: number,
): MotorPumpCurrent {
  inRange('flow', flow, 0, 0.1, 'm3/s');
  inRange('pressureRise', pressureRise, 0, 1e8, 'Pa');
  inRange('efficiency', efficiency, 0.05, 1, '-');
  inRange('voltage', voltage, 1, 1000, 'V');
  const power = fluidPower(flow, pressureRise);
  return {
    fluidPower: power,
    current: power / (efficiency * voltage),
    sensibleAt12V: power <= MAX_SENSIBLE_12V_FLUID_POWER,
  };
}

export interface MotorPumpCurrent {
  readonly fluidPower: number;
  readonly current: number;
  readonly sensibleAt12V: boolean;
}
