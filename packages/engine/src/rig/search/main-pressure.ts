import { engineContinuousPower, siteDerate } from '../../physics/index.ts';
import { pumpSpeed } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Head of the tank over the pump that helps it: never more [Pa]. */
export const TANK_HEAD = 0.3e5;
const BAR = 1e5;

/**
 * Least pressure at the manifold with the outlets shut: the regulator holds its set pressure and rises with what goes
 * through it, which is what the pump gives less what the jets in the tank take [Pa].
 */
export function mainShut(set: number, gradient: number, flow: number, jets: number, density: number): number {
  const taken = (pressure: number) => jets * Math.sqrt(pressure / BAR / (density / 1000));
  if (jets > 0 && taken(set) >= flow)
    return Math.min(set, (flow / jets) ** 2 * BAR * (density / 1000)) * 0.999;
  let [low, high] = [set, set + gradient * flow];
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (set + gradient * Math.max(0, flow - taken(middle)) > middle) low = middle;
    else high = middle;
  }
  return low * 0.999;
}

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
