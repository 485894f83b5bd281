import { inRange } from '../in-range.ts';
import { CAUTIONS, type Caution, type CautionFacts } from './cautions.data.ts';

/** A caution with what brought it up. */
export interface CaughtCaution {
  readonly caution: Caution;
  /** caused: the cause is there; unknown: a fact is missing, so it cannot be ruled out. */
  readonly state: 'caused' | 'unknown';
  readonly because: string;
}

type Told = Omit<CaughtCaution, 'caution'> | null;

function judged(caution: Caution, facts: CautionFacts): Told {
  const { cause } = caution;
  if ('all' in cause) {
    for (const fact of cause.all) if (facts[fact] === false) return null;
    const missing = cause.all.filter((fact) => facts[fact] === undefined);
    return missing.length > 0
      ? { state: 'unknown', because: `not stated: ${missing.join(', ')}` }
      : { state: 'caused', because: cause.all.join(' and ') };
  }
  const and = 'and' in cause ? cause.and : undefined;
  if (and !== undefined && facts[and] === false) return null;
  const value = facts[cause.fact];
  if (value === undefined) return { state: 'unknown', because: `not stated: ${cause.fact}` };
  const [caused, border] =
    'from' in cause
      ? [value >= cause.from, `from ${cause.from}`]
      : [value < cause.below, `below ${cause.below}`];
  if (caused && and !== undefined && facts[and] === undefined)
    return { state: 'unknown', because: `not stated: ${and}` };
  return caused
    ? { state: 'caused', because: `${cause.fact} ${value} ${cause.unit}, ${border} ${cause.unit}` }
    : null;
}

/**
 * Cautions that the facts of a rig bring up, each once, with its cause; unknown facts bring up a question.
 *
 * @formula cause met, or not ruled out
 * @param p.pressure highest pressure anywhere on the rig [Pa] 0..1e8
 * @param p.mass mass of the rig full [kg] 0..50000
 * @param p.coldest lowest temperature it is kept at [K] 200..340
 * @param p.pto driven by a power take-off [yes/no]
 * @param p.engine driven by an engine of its own [yes/no]
 * @param p.hypochlorite bleach is carried [yes/no]
 * @param p.acid an acid is carried [yes/no]
 * @param p.ammonium ammonium, urea, thiosulfate or ammonia is carried [yes/no]
 * @param p.pesticide a pesticide is carried [yes/no]
 * @param p.corrosive a liquid that burns the skin is carried [yes/no]
 * @param p.towed it is towed on a road [yes/no]
 * @param p.liftedOnHitch it hangs on a three-point hitch [yes/no]
 * @param p.leadAcid a lead-acid battery is aboard [yes/no]
 * @param p.roofWork roofs are treated [yes/no]
 * @param p.highJet a jet is thrown into trees [yes/no]
 * @param p.filledFromMains it is filled from a drinking-water main [yes/no]
 * @param p.sprayedOutdoors sprayed outdoors where others may come [yes/no]
 * @returns cautions with state, cause, danger, advice and source [list of text]
 * @valid Facts may be left out: the caution then comes as 'unknown'. These cautions never replace label, law or training.
 * @throws RangeError when a parameter is outside its range
 * @source Each caution carries its own.
 */
export function cautionsFor(p: CautionFacts): CaughtCaution[] {
  if (p.pressure !== undefined) inRange('pressure', p.pressure, 0, 1e8, 'Pa');
  if (p.mass !== undefined) inRange('mass', p.mass, 0, 50000, 'kg');
  if (p.coldest !== undefined) inRange('coldest', p.coldest, 200, 340, 'K');
  const caught: CaughtCaution[] = [];
  for (const caution of CAUTIONS) {
    const told = judged(caution, p);
    if (told !== null) caught.push({ caution, state: told.state, because: told.because });
  }
  return caught;
}
