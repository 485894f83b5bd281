export { pumpCurve, type CurvePoint, type PumpCurve } from './pump-curve.ts';
export { hoseReach, type HoseReach } from './hose-reach.ts';
export { tankCurve, type TankCurve } from './tank-curve.ts';
