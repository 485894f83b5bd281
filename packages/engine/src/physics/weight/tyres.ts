import { inRange } from '../in-range.ts';
import { FIRST_LOAD_INDEX, LAST_LOAD_INDEX, TYRE_LOAD_KG } from './tyres.data.ts';
import { wholeInRange } from '../whole-in-range.ts';

/**
 * Load that a tyre carries by its load index.
 *
 * @formula table
 * @param loadIndex load index, a whole number [-] 60..150
 * @returns load at the marked pressure and speed [kg]
 * @valid the figure of an implement tyre at low speed may never be used on the road
 * @throws RangeError when the index is outside the table or not whole
 * @source Load index table, four stored copies compared
 */
export function tyreLoad(loadIndex: number): number {
  return loadOfIndex('loadIndex', loadIndex);
}

/**
 * Smooth law behind the load index table, to catch misprints in a table.
 *
 * @formula m = 45 × 10^(LI/80) kg
 * @param loadIndex load index [-] 60..150
 * @returns load by the law [kg]
 * @valid the table departs from it by up to 1.8 %: never use the law as a rating
 * @throws RangeError when a parameter is outside its range
 * @source R80 series of preferred numbers (ISO 3, from memory), fitted to the table
 */
export function tyreLoadLaw(loadIndex: number): number {
  inRange('loadIndex', loadIndex, FIRST_LOAD_INDEX, LAST_LOAD_INDEX, '-');
  return 45 * 10 ** (loadIndex / 80);
}

/**
 * Lowest load index whose tyres together carry an axle's rating.
 *
 * @formula least LI with n m(LI) ≥ axle rating
 * @param axleRating rating of the axle [kg] 1..6700
 * @param tyres number of tyres on the axle [-] 1..4
 * @result loadIndex lowest index that does [-]
 * @result tyreLoad load of one such tyre [kg]
 * @result axleByTyres load of the axle by these tyres [kg]
 * @valid single tyres at their marked pressure and speed; P-metric tyres on trailers count for 1/1.10 (from memory)
 * @throws RangeError when a parameter is outside its range or no index of the table carries the load
 * @source Load index table; sum of tyre ratings at least the axle rating: FMVSS 110 and 120
 */
export function tyreForAxle(axleRating: number, tyres: number): TyreForAxle {
  inRange('axleRating', axleRating, 1, 6700, 'kg');
  wholeInRange('tyres', tyres, 1, 4);
  const at = TYRE_LOAD_KG.findIndex((load) => load * tyres >= axleRating * (1 - 1e-9));
  const load = TYRE_LOAD_KG[at];
  if (load === undefined)
    throw new RangeError(
      `axleRating is ${axleRating} kg; with ${tyres} tyres it must be at most ${tyreLoad(LAST_LOAD_INDEX) * tyres} kg`,
    );
  return { loadIndex: at + FIRST_LOAD_INDEX, tyreLoad: load, axleByTyres: load * tyres };
}

export interface TyreForAxle {
  readonly loadIndex: number;
  readonly tyreLoad: number;
  readonly axleByTyres: number;
}

/**
 * Load of a trailer's tyres that are marked with two load indices.
 *
 * @formula one axle: 2 m(first); n axles: 2 n m(second)
 * @param singleIndex first index, single axle [-] 60..150
 * @param multiIndex second index, several axles [-] 60..150
 * @param axles number of axles with two tyres each [-] 1..4
 * @returns load of all tyres [kg]
 * @throws RangeError when a parameter is outside its range
 * @source Trailer tyre load index page: first index for one axle, second for several
 */
export function dualMarkedTyreCapacity(singleIndex: number, multiIndex: number, axles: number): number {
  const single = loadOfIndex('singleIndex', singleIndex);
  const multi = loadOfIndex('multiIndex', multiIndex);
  wholeInRange('axles', axles, 1, 4);
  return 2 * axles * (axles > 1 ? multi : single);
}

function loadOfIndex(name: string, index: number): number {
  wholeInRange(name, index, FIRST_LOAD_INDEX, LAST_LOAD_INDEX);
  return TYRE_LOAD_KG[index - FIRST_LOAD_INDEX]!;
}
