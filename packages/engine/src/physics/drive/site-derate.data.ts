import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** A rule that says what altitude and heat leave of an engine's rated power. */
export interface DerateRule {
  readonly name: string;
  readonly origin: TableOrigin;
  /** Linear rules: loss per metre above an altitude and per kelvin above a temperature; absent for the laws with a formula. */
  readonly linear?: {
    readonly lossPerMetre: number;
    readonly aboveAltitude: number;
    readonly lossPerKelvin: number;
    readonly aboveTemperatureC: number;
  };
}

const THOUSAND_FEET = 304.8;
/** Ten degrees Fahrenheit as a difference. */
const TEN_F = 50 / 9;

const origin = (
  source: string,
  evidence: TableOrigin['evidence'],
  edition = 'unknown',
  note?: string,
): TableOrigin => ({
  place: 'any',
  edition,
  date: 'unknown',
  source,
  evidence,
  checkedBy: NOT_CHECKED,
  ...(note === undefined ? {} : { note }),
});

export const DERATE_RULES = {
  'sae-j1349': {
    name: 'SAE J1349 correction',
    origin: origin(
      'SAE J1349 as printed in open references: CA = 1.180 (990/Pd)((T+273)/298)^0.5 - 0.18',
      'seen',
      'June 1990 form',
      'A test correction: valid to about 7 % either way (from memory); beyond that an estimate.',
    ),
  },
  'extension-3pct': {
    name: '3 % per 1000 ft above 500 ft',
    origin: origin('University agricultural engineering text, naturally aspirated engines', 'seen'),
    linear: {
      lossPerMetre: 0.03 / THOUSAND_FEET,
      aboveAltitude: 152.4,
      lossPerKelvin: 0,
      aboveTemperatureC: 0,
    },
  },
  'gas-engine': {
    name: '3 % per 1000 ft, 1 % per 10 °F above 60 °F',
    origin: origin('General rule for gas and petrol engines in an engineering reference', 'seen'),
    linear: {
      lossPerMetre: 0.03 / THOUSAND_FEET,
      aboveAltitude: 0,
      lossPerKelvin: 0.01 / TEN_F,
      aboveTemperatureC: 140 / 9,
    },
  },
  'small-engine': {
    name: '3.5 % per 1000 ft, 1 % per 10 °F above 77 °F',
    origin: origin('Common rule of owner manuals of small air-cooled petrol engines', 'memory'),
    linear: {
      lossPerMetre: 0.035 / THOUSAND_FEET,
      aboveAltitude: 0,
      lossPerKelvin: 0.01 / TEN_F,
      aboveTemperatureC: 25,
    },
  },
  'generator-set': {
    name: '3 % per 500 m above 1000 m, 3 % per 5 °C above 40 °C',
    origin: origin(
      'A generator manual',
      'seen',
      'unknown',
      'For a rating that is already lowered: too kind for a bare engine.',
    ),
    linear: { lossPerMetre: 0.03 / 500, aboveAltitude: 1000, lossPerKelvin: 0.03 / 5, aboveTemperatureC: 40 },
  },
  'msha-diesel': {
    name: '1 % per 100 m above 305 m',
    origin: origin('Mine safety rule for naturally aspirated diesel engines', 'seen'),
    linear: { lossPerMetre: 0.01 / 100, aboveAltitude: 305, lossPerKelvin: 0, aboveTemperatureC: 0 },
  },
  'iso-3046': {
    name: 'ISO 3046-1 power adjustment',
    origin: origin('ISO 3046-1 form and exponents', 'memory'),
  },
} as const satisfies Record<string, DerateRule>;

export type DerateRuleId = keyof typeof DERATE_RULES;
