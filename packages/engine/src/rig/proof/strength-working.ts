import {
  bleachIonicStrength,
  DECAY_TEMPERATURE_RANGE,
  FIELD_FACTOR_BAND,
  hypochloriteMolarity,
  hypochloriteRateConstant,
} from '../../liquids/index.ts';
import { is, number, worked, type Figure, type Step } from '../promise.ts';

const DAY = 86400;
const MOL = 'mol/L';

/** How much of its strength bleach loses in store: the published law integrated, the sum with the numbers put in. */
export function decaySteps(delivered: number, days: number, temperatureC: number): Step[] {
  const counted = Math.max(DECAY_TEMPERATURE_RANGE[0], temperatureC);
  const fresh = hypochloriteMolarity(delivered);
  const ionic = bleachIonicStrength(fresh);
  // For mol/L and days, as people read it; mol/m3 and seconds inside.
  const rate = hypochloriteRateConstant(counted, ionic) * 1000 * DAY;
  const strength = number(delivered, 'trade %');
  const [start, salts] = [number(fresh / 1000, MOL), number(ionic / 1000, MOL)];
  return [
    { text: 'when delivered', figure: strength },
    { text: 'temperature of the store', figure: is(temperatureC + 273.15, 'temperature') },
    ...(counted === temperatureC
      ? []
      : [{ text: 'counted as', figure: is(counted + 273.15, 'temperature') }]),
    { text: 'time in store', figure: is(days * DAY, 'time') },
    worked('hypochlorite when delivered', start, '10 × {trade %} / 70.906', { 'trade %': strength }),
    worked('all salts in it (ionic strength), with 0.1 mol/L of caustic', salts, '2 × {hypochlorite} + 0.1', {
      hypochlorite: start,
    }),
    worked(
      'rate of decay, law of Adam and Gordon 1999',
      number(rate, 'L/mol in a day'),
      '86400 × 10 ^ (0.149 × {salts}) × 2.083 × 10 ^ 10 × {kelvin} × exp(−101800 / (8.314 × {kelvin})) × exp(−56.5 / 8.314)',
      { salts, kelvin: number(counted + 273.15) },
    ),
    ...[...FIELD_FACTOR_BAND].flatMap((factor) => leftSteps(start, rate, days, factor)),
    { text: 'sunlight and dissolved metals take more: measure it before use' },
  ];
}

/** What is left, by the law alone and as field tables have it. */
function leftSteps(start: Figure, rate: number, days: number, factor: number): Step[] {
  const left = number(1 / (1 / start.value + factor * rate * days), MOL);
  const by = factor === 1 ? 'by the published law alone' : 'as field tables have it';
  return [
    worked(`hypochlorite left ${by}`, left, '1 / (1 / {when delivered} + {field factor} × {rate} × {days})', {
      'when delivered': start,
      'field factor': number(factor),
      rate: number(rate),
      days: number(days),
    }),
    worked(`strength ${by}`, number((left.value * 70.906) / 10, 'trade %'), '70.906 × {hypochlorite} / 10', {
      hypochlorite: left,
    }),
  ];
}
