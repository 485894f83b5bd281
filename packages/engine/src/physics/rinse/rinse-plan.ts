import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { RINSE_TANK_RULE } from './rinse-targets.data.ts';

const residualRange = (residual: number) => inRange('residual', residual, 1e-6, 10, 'm3');

/**
 * How far equal rinses thin what is left in a rig.
 *
 * @formula F = (1 + V / (n R))^n
 * @param residual liquid that stays each time [m3] 1e-6..10
 * @param water rinse water in all [m3] 0..100
 * @param rinses number of equal rinses [-] 1..20
 * @returns dilution: old over new concentration [-]
 * @valid Perfect mixing, each rinse sprayed out to the same residual.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance; ISO 16119-3 and -4 excerpts for its use.
 */
export function rinseDilution(residual: number, water: number, rinses: number): number {
  residualRange(residual);
  inRange('water', water, 0, 100, 'm3');
  wholeInRange('rinses', rinses, 1, 20);
  return (1 + water / (rinses * residual)) ** rinses;
}

/**
 * Rinse water that reaches a dilution in equal rinses.
 *
 * @formula V = n R (F^(1/n) - 1)
 * @param residual liquid that stays each time [m3] 1e-6..10
 * @param dilution dilution wanted [-] 1..1e7
 * @param rinses number of equal rinses [-] 1..20
 * @returns rinse water in all [m3]
 * @valid Perfect mixing.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance; ISO 16119-4:2014 excerpt: factor 300.
 */
export function rinseWaterForDilution(residual: number, dilution: number, rinses: number): number {
  residualRange(residual);
  inRange('dilution', dilution, 1, 1e7);
  wholeInRange('rinses', rinses, 1, 20);
  return rinses * residual * (dilution ** (1 / rinses) - 1);
}

/**
 * How far a continuous rinse thins what is left while water runs in as fast as it is sprayed out.
 *
 * @formula F = exp(V / R)
 * @param residual liquid held while rinsing [m3] 1e-6..10
 * @param water rinse water in all [m3] 0..100
 * @returns dilution: old over new concentration [-]
 * @valid Perfect mixing: the limit of very many small rinses. Refuses results beyond e^100.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance.
 */
export function continuousRinseDilution(residual: number, water: number): number {
  residualRange(residual);
  inRange('water', water, 0, 100, 'm3');
  inRange('water over residual', water / residual, 0, 100);
  return Math.exp(water / residual);
}

/**
 * Water that a continuous rinse needs for a dilution.
 *
 * @formula V = R ln F
 * @param residual liquid held while rinsing [m3] 1e-6..10
 * @param dilution dilution wanted [-] 1..1e7
 * @returns rinse water [m3]
 * @valid Perfect mixing.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance.
 */
export function continuousRinseWater(residual: number, dilution: number): number {
  residualRange(residual);
  inRange('dilution', dilution, 1, 1e7);
  return residual * Math.log(dilution);
}

/**
 * A rinse that a person can follow, to a target dilution and with a hose that is flushed besides.
 *
 * @formula V = n R (F^(1/n) - 1) + m V_hose; t = V / Q
 * @param p.residual liquid that stays in tank, pump and fittings [m3] 1e-6..10
 * @param p.hose contents of hose and lines that are flushed through [m3] 0..10
 * @param p.hoseChanges times the contents of the hose are passed through it [-] 1..10
 * @param p.dilution dilution wanted [-] 1..1e7
 * @param p.rinses number of equal rinses [-] 1..20
 * @param p.carried clean water the rig carries [m3] 0..100
 * @param p.flow flow at which it is sprayed out [m3/s] 1e-6..1
 * @result each water of each rinse [m3]
 * @result water water in all, with the flush of the hose where the rinses do not cover it [m3]
 * @result reached dilution reached by these rinses [-]
 * @result missing water that is not on board [m3]
 * @result time time to spray it out [s]
 * @valid Rinses that pass through the hose count as its flush. Two to three contents clear a line (common practice, no source).
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance; ISO 16119-4:2014 excerpt for the targets.
 */
export function rinsePlan(p: {
  readonly residual: number;
  readonly hose: number;
  readonly hoseChanges: number;
  readonly dilution: number;
  readonly rinses: number;
  readonly carried: number;
  readonly flow: number;
}): { each: number; water: number; reached: number; missing: number; time: number } {
  inRange('hose', p.hose, 0, 10, 'm3');
  inRange('hoseChanges', p.hoseChanges, 1, 10);
  inRange('carried', p.carried, 0, 100, 'm3');
  inRange('flow', p.flow, 1e-6, 1, 'm3/s');
  const thinning = rinseWaterForDilution(p.residual, p.dilution, p.rinses);
  const water = Math.max(thinning, p.hose * p.hoseChanges);
  return {
    each: water / p.rinses,
    water,
    reached: (1 + water / (p.rinses * p.residual)) ** p.rinses,
    missing: Math.max(0, water - p.carried),
    time: water / p.flow,
  };
}

/**
 * Rinse water a rig must carry by either rule; meeting one is enough.
 *
 * @formula V = 0.1 V_tank or 10 R
 * @param tank nominal volume of the tank [m3] 0..100
 * @param residual liquid that can be thinned [m3] 0..10
 * @result byTank by the share of the tank [m3]
 * @result byResidual by the residual [m3]
 * @result least the smaller of the two [m3]
 * @throws RangeError when a parameter is outside its range
 * @source ISO 16119-3:2013 (excerpt), kept as data with its edition.
 */
export function rinseTankVolume(
  tank: number,
  residual: number,
): { byTank: number; byResidual: number; least: number } {
  inRange('tank', tank, 0, 100, 'm3');
  inRange('residual', residual, 0, 10, 'm3');
  const byTank = RINSE_TANK_RULE.shareOfTank * tank;
  const byResidual = RINSE_TANK_RULE.timesResidual * residual;
  return { byTank, byResidual, least: Math.min(byTank, byResidual) };
}
