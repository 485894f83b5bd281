import type { PartOf } from '../../catalogue/index.ts';
import { isAsCoarseAs } from '../../physics/index.ts';
import { groundDose } from '../application.ts';
import type { Brief, Duty } from '../brief.ts';
import { classOf } from '../proof/pattern-evenness.ts';
import { speedsOf } from '../proof/pattern-dose.ts';
import { WORK_STARTS } from '../start-values.data.ts';

const BAR = 1e5;

/**
 * Whether a nozzle lays down the rate of a duty with coarse enough droplets, at its slowest and its fastest speed too.
 *
 * @param share part of the flow that one nozzle of the boom carries
 */
export function nozzleSuits(
  nozzle: PartOf<'nozzle'>,
  { work }: Pick<Brief, 'work'>,
  duty: Duty,
  share: number,
  density: number,
): boolean {
  const a = duty.application;
  if (a === undefined) return true;
  const pressureAt = (speed: number) =>
    ((share * groundDose(a) * speed * a.width) / nozzle.flowAtOneBar) ** 2 * BAR * (density / 1000);
  const { slowest, fastest } = speedsOf(a);
  if (pressureAt(slowest) < nozzle.minPressure || pressureAt(fastest) > nozzle.maxPressure) return false;
  const data = [...nozzle.droplets].sort((p, q) => p.pressure - q.pressure);
  const has = classOf(data, pressureAt(a.speed));
  return has !== 'unknown' && isAsCoarseAs(has, duty.droplets ?? WORK_STARTS[work].droplets.value);
}
