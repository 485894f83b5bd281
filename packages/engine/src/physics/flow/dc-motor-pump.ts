import { inRange } from '../in-range.ts';
import { checkPressure } from './limits.ts';

/** A permanent-magnet motor on a displacement pump. */
export interface DcMotorPump {
  readonly voltage: number;
  readonly resistance: number;
  readonly motorConstant: number;
  readonly noLoadCurrent: number;
  readonly displacement: number;
  readonly mechanicalEfficiency: number;
  readonly pressureRise: number;
}

export interface DcMotorPumpDuty {
  readonly torque: number;
  readonly current: number;
  readonly speed: number;
  readonly displacedFlow: number;
  readonly inputPower: number;
}

/**
 * Speed, flow and current of a DC motor pump at a pressure and a terminal voltage.
 *
 * @formula T = D Δp/(2π η); I = I0 + T/k; ω = (U - I R)/k; Q = D ω/(2π); P = U I
 * @param p.voltage voltage at the motor's terminals, after the drop in the wire [V] 1..100
 * @param p.resistance resistance of the winding [ohm] 1e-4..100
 * @param p.motorConstant motor constant, V.s/rad and N.m/A alike [V.s] 1e-4..10
 * @param p.noLoadCurrent current without load [A] 0..100
 * @param p.displacement volume displaced per turn [m3] 1e-9..0.001
 * @param p.mechanicalEfficiency mechanical efficiency of the pump [-] 0.05..1
 * @param p.pressureRise pressure rise across the pump [Pa] 0..1e8
 * @result torque shaft torque [N.m]
 * @result current current drawn [A]
 * @result speed shaft speed, 0 when stalled [rad/s]
 * @result displacedFlow flow displaced, before slip [m3/s]
 * @result inputPower electric power [W]
 * @valid current depends on pressure only, flow on voltage; from the stall pressure up the pump stands and draws the stall current U/R
 * @throws RangeError when a parameter is outside its range
 * @source Equations of the permanent-magnet machine, textbook, from memory
 */
export function dcMotorPump(p: DcMotorPump): DcMotorPumpDuty {
  inRange('voltage', p.voltage, 1, 100, 'V');
  inRange('resistance', p.resistance, 1e-4, 100, 'ohm');
  inRange('motorConstant', p.motorConstant, 1e-4, 10, 'V.s');
  inRange('noLoadCurrent', p.noLoadCurrent, 0, 100, 'A');
  inRange('displacement', p.displacement, 1e-9, 0.001, 'm3');
  inRange('mechanicalEfficiency', p.mechanicalEfficiency, 0.05, 1, '-');
  checkPressure(p.pressureRise, 'pressureRise');
  const torque = (p.displacement * p.pressureRise) / (2 * Math.PI * p.mechanicalEfficiency);
  const stallCurrent = p.voltage / p.resistance;
  const current = Math.min(p.noLoadCurrent + torque / p.motorConstant, stallCurrent);
  const speed = current === stallCurrent ? 0 : (p.voltage - current * p.resistance) / p.motorConstant;
  return {
    torque,
    current,
    speed,
    displacedFlow: (p.displacement * speed) / (2 * Math.PI),
    inputPower: p.voltage * current,
  };
}
