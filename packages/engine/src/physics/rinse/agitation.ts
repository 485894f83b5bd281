import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { AGITATION_RULES, JETS_BY_TANK } from './agitation.data.ts';

/**
 * Flow that must stir a tank, as a share of its volume in a time.
 *
 * @formula Q_a = s V
 * @param tank nominal volume of the tank [m3] 0..100
 * @param share share of the tank in a second; 5 % a minute is 8.33e-4 [1/s] 0..0.01
 * @returns agitation flow [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source GRDC Spray Application Manual 2025; Dutch PT regulation 2009, Annex 1-2.
 */
export function agitationFlow(tank: number, share: number): number {
  inRange('tank', tank, 0, 100, 'm3');
  inRange('share', share, 0, 0.01, '1/s');
  return tank * share;
}

/**
 * Flow that a named rule wants stirring a tank.
 *
 * @formula Q_a = s V, s of the rule
 * @param rule which rule [one of netherlands-return-only, netherlands-with-jets, solution, suspension]
 * @param tank nominal volume of the tank [m3] 0..100
 * @returns agitation flow [m3/s]
 * @valid The Dutch limits are acceptance limits; solution and suspension are design advice. Take the larger.
 * @throws RangeError when a parameter is outside its range
 * @source The rule's own origin, kept with it as data.
 */
export function agitationByRule(rule: string, tank: number): number {
  oneOfChoices(
    'rule',
    rule,
    AGITATION_RULES.map((r) => r.id),
  );
  return agitationFlow(tank, AGITATION_RULES.find((r) => r.id === rule)?.share ?? 0);
}

/**
 * Jets that a tank wants at least.
 *
 * @formula table, next larger tank; above the largest in proportion to the volume
 * @param tank nominal volume of the tank [m3] 0.001..100
 * @returns number of jets [-]
 * @valid Above 200 gal in proportion: judgement, no published figure.
 * @throws RangeError when a parameter is outside its range
 * @source Extension pesticide safety handbook: 55 gal 1, 100 gal 3, 200 gal 5.
 */
export function jetsForTank(tank: number): number {
  inRange('tank', tank, 0.001, 100, 'm3');
  const row = JETS_BY_TANK.rows.find((r) => tank <= r.upTo);
  if (row !== undefined) return row.jets;
  const last = JETS_BY_TANK.rows.at(-1);
  return last === undefined ? 1 : Math.ceil((last.jets * tank) / last.upTo);
}

/**
 * How much of the agitation flow asked for is there.
 *
 * @formula r = (Q_return + G n Q_jet) / Q_a
 * @param returnFlow flow that comes back to the tank besides the jets [m3/s] 0..1
 * @param jetFlow flow through one jet, fed from the pressure side [m3/s] 0..1
 * @param jets number of jets [-] 0..100
 * @param demand agitation flow asked for [m3/s] 1e-9..1
 * @param gain liquid moved per liquid fed to a jet [-] 1..10
 * @returns supply over demand; below 1 is too little [-]
 * @valid The gain defaults to 1: entrainment counts only where the jet's own data gives it.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; the rules count flow into the tank.
 */
export function agitationSupply(
  returnFlow: number,
  jetFlow: number,
  jets: number,
  demand: number,
  gain = 1,
): number {
  inRange('returnFlow', returnFlow, 0, 1, 'm3/s');
  inRange('jetFlow', jetFlow, 0, 1, 'm3/s');
  wholeInRange('jets', jets, 0, 100);
  inRange('demand', demand, 1e-9, 1, 'm3/s');
  inRange('gain', gain, 1, 10);
  return (returnFlow + gain * jets * jetFlow) / demand;
}
