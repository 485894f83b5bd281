import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';
import type { DayInput } from './day-input.ts';
import { workingDay } from './working-day.ts';

/** More output than this share of the best counts as the best: what a customer would not notice in a day. */
const AS_GOOD = 0.99;

/** First entry, in rising order of size, that does as well as the best. */
function firstAsGood(sizes: readonly number[], units: readonly number[]): number {
  const best = units.reduce((a, b) => Math.max(a, b), 0);
  const rising = sizes.map((size, i) => ({ size, units: units[i] ?? 0 })).sort((a, b) => a.size - b.size);
  return (rising.find((entry) => entry.units >= AS_GOOD * best) ?? { size: 0 }).size;
}

/**
 * Output of the same day with other tanks.
 *
 * @formula the working day, once for each tank
 * @param p.day the day as the working day takes it [working day]
 * @param p.tanks tanks to try [list of m3] 0.001..100
 * @result units units done with each [list of -]
 * @result areas ground done with each [list of m2]
 * @result fills fills with each [list of -]
 * @result sprayed mix sprayed with each [list of m3]
 * @result masses greatest mass with each, the empty rig unchanged [list of kg]
 * @result paying smallest tank within 1 % of the best [m3]
 * @result largerHelps whether the largest tank does more than 1 % better than the smallest [yes/no]
 * @valid The mass of a larger empty tank is not added: give the day its own emptyMass.
 * @throws RangeError when a parameter is outside its range
 * @source Balance of time and liquid.
 */
export function outputByTank(p: { readonly day: DayInput; readonly tanks: readonly number[] }): {
  units: number[];
  areas: number[];
  fills: number[];
  sprayed: number[];
  masses: number[];
  paying: number;
  largerHelps: boolean;
} {
  inRange('number of tanks', p.tanks.length, 1, 200);
  listInRange('tanks', p.tanks, 0.001, 100, 'm3');
  const days = p.tanks.map((tank) => workingDay({ ...p.day, tank, moments: false }));
  const units = days.map((d) => d.units);
  const rising = p.tanks.map((tank, i) => ({ tank, units: units[i] ?? 0 })).sort((a, b) => a.tank - b.tank);
  return {
    units,
    areas: days.map((d) => d.area),
    fills: days.map((d) => d.fills),
    sprayed: days.map((d) => d.sprayed),
    masses: days.map((d) => d.greatestMass),
    paying: firstAsGood(p.tanks, units),
    largerHelps: AS_GOOD * (rising.at(-1)?.units ?? 0) > (rising[0]?.units ?? 0),
  };
}

/**
 * Output of the same day with other lengths of hose, each with the flow that comes through it.
 *
 * @formula the working day, once for each length
 * @param p.day the day as the working day takes it [working day]
 * @param p.lengths lengths of hose to try [list of m] 1..500
 * @param p.flows flow at the gun through each, from the proof [list of m3/s] 1e-6..1
 * @result units units done with each [list of -]
 * @result areas ground done with each [list of m2]
 * @result stops places the rig stood at with each [list of -]
 * @result paying shortest hose within 1 % of the best [m]
 * @valid A longer hose loses flow: without the flow at each length the curve would praise length for nothing.
 * @throws RangeError when a parameter is outside its range
 * @source Balance of time and liquid.
 */
export function outputByHose(p: {
  readonly day: DayInput;
  readonly lengths: readonly number[];
  readonly flows: readonly number[];
}): { units: number[]; areas: number[]; stops: number[]; paying: number } {
  inRange('number of lengths', p.lengths.length, 1, 200);
  listInRange('lengths', p.lengths, 1, 500, 'm');
  listInRange('flows', p.flows, 1e-6, 1, 'm3/s');
  sameLength('lengths', p.lengths, 'flows', p.flows);
  const days = p.lengths.map((hoseLength, i) =>
    workingDay({ ...p.day, moments: false, hoseLength, flow: p.flows[i] ?? p.day.flow }),
  );
  const units = days.map((d) => d.units);
  return {
    units,
    areas: days.map((d) => d.area),
    stops: days.map((d) => d.stops),
    paying: firstAsGood(p.lengths, units),
  };
}
