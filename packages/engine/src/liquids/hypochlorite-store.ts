import { inRange } from '../physics/index.ts';
import {
  DECAY_MOLARITY_RANGE,
  DECAY_TEMPERATURE_RANGE,
  FIELD_FACTOR_BAND,
  USUAL_EXCESS_CAUSTIC,
  bleachIonicStrength,
  hypochloriteRateConstant,
} from './hypochlorite-decay.ts';
import { hypochloriteMolarity, tradePercentOfMolarity } from './hypochlorite-strength.ts';

const DAY = 86400;

/** Part of the time in store, at one temperature. */
export interface StorePeriod {
  readonly days: number;
  readonly temperatureC: number;
}

/** What bleach is worth on the day it is used. */
export interface StrengthOnDay {
  /** At the default field factor: what a recipe is worked with. */
  readonly tradePercent: number;
  /** At the field factors 1.3 and 1.0. */
  readonly low: number;
  readonly high: number;
  readonly days: number;
  /** Share of the delivered strength that is gone. */
  readonly lost: number;
  /** What a reader must know: periods colder than the published law, strengths below it. */
  readonly warnings: readonly string[];
}

/**
 * Strength of bleach on the day of use, from delivery to use through the temperatures of its store.
 *
 * Colder than 15 degC counts as 15: the loss is then no greater than shown. The temperature history adds up because
 * the ionic strength stays while the bleach decays.
 *
 * @formula 1/C = 1/C0 + f Σ k2(T_j) t_j
 * @param p.tradePercent strength when delivered, grams of available chlorine in 100 mL [-] 5..21
 * @param p.history days at each temperature, in any order [list of days and degC]
 * @param p.excessCaustic excess sodium hydroxide when fresh, usually 100 [mol/m3] 0..1000
 * @result tradePercent strength on the day at field factor 1.3 [-]
 * @result low strength at field factor 1.3 [-]
 * @result high strength at field factor 1.0 [-]
 * @result days time in store [-]
 * @result lost share of the strength that is gone [-]
 * @valid to 55 degC; warmer refuses. No metals, no sunlight
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6), 1999, integrated; field factor 1.0-1.3 from a published strength table
 */
export function bleachStrengthOnDay(p: {
  readonly tradePercent: number;
  readonly history: readonly StorePeriod[];
  readonly excessCaustic?: number;
}): StrengthOnDay {
  inRange('tradePercent', p.tradePercent, 5, 21, '%');
  const fresh = hypochloriteMolarity(p.tradePercent);
  const ionicStrength = bleachIonicStrength(fresh, p.excessCaustic ?? USUAL_EXCESS_CAUSTIC);
  const warnings: string[] = [];
  const [coldest, hottest] = DECAY_TEMPERATURE_RANGE;
  let days = 0;
  let exposure = 0;
  p.history.forEach((period, i) => {
    inRange(`history[${i}].days`, period.days, 0, 1000, 'days');
    inRange(`history[${i}].temperatureC`, period.temperatureC, -40, hottest, 'degC');
    if (period.temperatureC < coldest && period.days > 0)
      warnings.push(
        `${period.days} days at ${period.temperatureC} degC count as ${coldest} degC: it lost no more than this`,
      );
    days += period.days;
    exposure +=
      hypochloriteRateConstant(Math.max(coldest, period.temperatureC), ionicStrength) * period.days * DAY;
  });
  const after = (factor: number) => tradePercentOfMolarity(1 / (1 / fresh + factor * exposure));
  const low = after(FIELD_FACTOR_BAND[1]);
  if (hypochloriteMolarity(low) < DECAY_MOLARITY_RANGE[0])
    warnings.push(
      `it may fall to ${low.toPrecision(3)} trade %: below about 5 trade % the published rate law ends, so measure it before use`,
    );
  return {
    tradePercent: low,
    low,
    high: after(FIELD_FACTOR_BAND[0]),
    days,
    lost: 1 - low / p.tradePercent,
    warnings,
  };
}
