import { engineContinuousPower, siteDerate } from '../../physics/index.ts';
import { pumpSpeed } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Head of the tank over the pump that helps it: never more [Pa]. */
export const TANK_HEAD = 0.3e5;

/** Power at the pump's shaft that the drive of a rig gives all day and carries [W]. */
export function drivePower(space: SearchSpace, partAt: PartAt): number {
  const { site } = space.contexts[0]!;
  const [pump, engine, reduction, pto] = ['pump', 'engine', 'reduction', 'pto'].map(partAt);
  if (pto?.kind === 'pto-drive')
    return Math.min(pto.maxPower, space.brief.carrier.ptoPower ?? Infinity) * pto.efficiency;
  if (engine?.kind !== 'engine' || reduction?.kind !== 'reduction' || pump?.kind !== 'pump') return Infinity;
  const { factor } = siteDerate(site.derating, site.altitude, site.temperature - 273.15, site.humidity);
  const creep = reduction.type === 'belt' ? 0.99 : 1;
  const speed = pumpSpeed(space, pump, partAt) / (reduction.ratio * creep);
  const power =
    engineContinuousPower(engine.power, Math.min(1, factor)) * Math.min(1, speed / engine.ratedSpeed);
  return Math.min(power, reduction.maxPower) * reduction.efficiency;
}
