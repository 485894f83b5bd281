import { inRange } from '../in-range.ts';

/**
 * Flow that a pump must give so that tips, stirring and wear are all served.
 *
 * @formula Q_p = (1 + r) (Q_n + Q_a + Q_e)
 * @param outlets flow of all open outlets [m3/s] 0..1
 * @param agitation flow that stirs the tank [m3/s] 0..1
 * @param reserve share kept for wear [-] 0..2
 * @param motive flow of an eductor that runs at the same time [m3/s] 0..1
 * @returns pump flow [m3/s]
 * @valid The reserve defaults to 0.2 and the motive flow to 0.
 * @throws RangeError when a parameter is outside its range
 * @source Grisso, Virginia Cooperative Extension 442-452: 20 % for wear.
 */
export function pumpDemand(outlets: number, agitation: number, reserve = 0.2, motive = 0): number {
  inRange('outlets', outlets, 0, 1, 'm3/s');
  inRange('agitation', agitation, 0, 1, 'm3/s');
  inRange('reserve', reserve, 0, 2);
  inRange('motive', motive, 0, 1, 'm3/s');
  return (1 + reserve) * (outlets + agitation + motive);
}

/**
 * Flow a pump falls short of what is asked.
 *
 * @formula Q_short = max(0, Q_wanted - Q_p)
 * @param demand flow asked for [m3/s] 0..2
 * @param supply flow the pump gives at that pressure [m3/s] 0..2
 * @returns shortfall, 0 when there is enough [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; GRDC Spray Application Manual 2025, pumps.
 */
export function pumpShortfall(demand: number, supply: number): number {
  inRange('demand', demand, 0, 2, 'm3/s');
  inRange('supply', supply, 0, 2, 'm3/s');
  return Math.max(0, demand - supply);
}

/**
 * Flow left of a pump that loses a share of its capacity each year.
 *
 * @formula Q = Q_0 (1 - a)^n
 * @param flow flow when new [m3/s] 0..1
 * @param years age in years [-] 0..50
 * @param loss share lost a year [-] 0..0.5
 * @returns flow now [m3/s]
 * @valid The loss defaults to 0.03, for diaphragm pumps.
 * @throws RangeError when a parameter is outside its range
 * @source GRDC Spray Application Manual 2025: diaphragm pumps lose about 3 % of capacity a year.
 */
export function agedPumpFlow(flow: number, years: number, loss = 0.03): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('years', years, 0, 50);
  inRange('loss', loss, 0, 0.5);
  return flow * (1 - loss) ** years;
}
