import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  agitationFlow,
  continuousRinseDilution,
  tipDensityFactor,
  fluidPower,
  liquidMass,
  pumpDemand,
  rinseDilution,
  rinseTankVolume,
  stockForBatch,
  waterDensity,
  waterDoseForLiquid,
  waterPartsForStrength,
  waterViscosity,
} from '../physics/index.ts';
import * as liquids from './index.ts';

interface Quantity {
  readonly value: number | string;
  readonly unit: string;
}
interface Entry {
  readonly id: string;
  readonly what: string;
  readonly inputs: Readonly<Record<string, Quantity>>;
  readonly expected: Readonly<Record<string, Quantity>>;
  readonly tolerance: string;
  readonly source: string;
}
type Outputs = Readonly<Record<string, number | string>>;
/** Input in SI (degC for temperatures), by name. */
type Input = (name: string) => number;

const entries = JSON.parse(
  readFileSync(new URL('../../reference/chemistry/values.json', import.meta.url), 'utf8'),
) as Entry[];

/** Entries that no function of ours can meet, with the reason. */
export const CANNOT_MEET: Readonly<Record<string, string>> = {};

const LB = 0.45359237;
const IN = 0.0254;
const GAL = 231 * IN ** 3;
const ACRE = 4046.8564224;
const DAY = 86400;
/** SI value of one unit; what has no factor is dimensionless. */
const FACTORS: Readonly<Record<string, number>> = {
  'kg/m3': 1,
  'mPa.s': 1e-3,
  'lb/gal': LB / GAL,
  degC: 1,
  K: 1,
  'kg/kg': 1,
  'wt%': 0.01,
  '1': 1,
  count: 1,
  kg: 1,
  lb: LB,
  gal: GAL,
  L: 1e-3,
  'fl oz': GAL / 128,
  qt: GAL / 4,
  'gal/acre': GAL / ACRE,
  gpm: GAL / 60,
  'L/min': 1e-3 / 60,
  '1/min': 1 / 60,
  min: 60,
  day: DAY,
  psi: (LB * 9.80665) / IN ** 2,
  W: 1,
  hp: 745.6998715822702,
  in2: IN ** 2,
  um: 1e-6,
  'm/s': 1,
  'cm/h': 0.01 / 3600,
  'g per 100 mL': 1,
  '%': 0.01,
  '% v/v': 0.01,
  '% N': 0.01,
  'g/L': 1,
  'mg/L': 1e-3,
  // mg/L from one fluid ounce in a gallon: 128 ounces to the gallon.
  'mg/L per (fl oz/gal)': 1e-3 * 128,
  'mol/L': 1000,
  'L/(mol.s)': 1e-3,
  'L/(mol.day)': 1e-3 / DAY,
  'mol/(L.day)': 1000 / DAY,
  'mL/(L.day)': 1e-3 / DAY,
  V: 1,
  'V SCE': 1,
  SG: 1,
  'index (1=a,2=b)': 1,
};

function toSi({ value, unit }: Quantity): number {
  if (typeof value === 'string') throw new Error(`'${value}' is a word`);
  if (unit === 'degF') return (value - 32) / 1.8;
  const factor = FACTORS[unit];
  if (factor === undefined) throw new Error(`the test has no factor for '${unit}'`);
  return value * factor;
}

const water = (i: Input): Outputs => {
  const density = waterDensity(i('temperature'));
  return { density, viscosity: waterViscosity(i('temperature')), weight_per_gallon: density };
};
const salt =
  (name: liquids.Salt) =>
  (i: Input): Outputs => ({
    density: liquids.saltSolutionDensity(name, i('mass_fraction'), i('temperature')),
    viscosity: liquids.saltSolutionViscosity(name, i('mass_fraction'), i('temperature')),
  });
const freezing =
  (name: liquids.SecondaryFluidName) =>
  (i: Input): Outputs => ({ freezing_temperature: liquids.freezingPointMelinder(name, i('mass_fraction')) });
const glycol = (i: Input): Outputs => ({
  density: liquids.densityMelinder('propylene glycol', i('mass_fraction'), i('temperature')),
  viscosity: liquids.viscosityMelinder('propylene glycol', i('mass_fraction'), i('temperature')),
});
const nitrogen = (i: Input): Outputs => {
  const density = liquids.ureaAmmoniumNitrateDensity(i('grade'), i('temperature'));
  return { density, density_si: density };
};
const flowFactor = (i: Input): Outputs => ({ factor: tipDensityFactor(i('density')) });
const hypochlorite = (i: Input): Outputs => {
  const [trade, gravity] = [i('trade_percent'), i('specific_gravity')];
  return {
    available_chlorine: liquids.availableChlorine(trade),
    wt_available_chlorine: liquids.chlorineMassFraction(trade, gravity),
    wt_naocl: liquids.hypochloriteMassFraction(trade, gravity),
    molarity: liquids.hypochloriteMolarity(trade),
  };
};
const rateConstant = (i: Input): Outputs => {
  const k2 = liquids.hypochloriteRateConstant(i('temperature'), i('ionic_strength'));
  return { k2, k2_day: k2 };
};
const galvanic = (i: Input): Outputs => ({
  difference: liquids.galvanicDifference(i('a'), i('b')),
  anode: liquids.galvanicAnode(i('a'), i('b')),
});
const cell = (_: Input, e: Entry): Outputs => ({
  rating: liquids
    .materialResistance({
      liquid: String(e.inputs['liquid']?.value),
      material: String(e.inputs['material']?.value),
      temperatureC: 20,
    })
    .rating.replace('-', '_'),
});

/** From each entry to a public function: a name, or the first words of names. */
const FUNCTIONS: readonly (readonly [string, (i: Input, e: Entry) => Outputs])[] = [
  ['water-props-', water],
  ['cacl2-', salt('CaCl2')],
  ['mgcl2-', salt('MgCl2')],
  ['nacl-', salt('NaCl')],
  ['naoh-', salt('NaOH')],
  ['cuso4-', salt('CuSO4')],
  ['freeze-cacl2-', freezing('CaCl2')],
  ['freeze-mgcl2-', freezing('MgCl2')],
  ['freeze-pg-', freezing('propylene glycol')],
  ['pg-', glycol],
  [
    'eutectics',
    () => {
      const { CaCl2, MgCl2, NaCl } = liquids.EUTECTICS;
      return {
        CaCl2_temperature: CaCl2.temperatureC,
        CaCl2_strength: CaCl2.massFraction,
        MgCl2_temperature: MgCl2.temperatureC,
        MgCl2_strength: MgCl2.massFraction,
        NaCl_temperature: NaCl.temperatureC,
        NaCl_strength: NaCl.massFraction,
      };
    },
  ],
  ['uan28-density-', nitrogen],
  ['uan30-density-', nitrogen],
  ['app-density-', (i) => ({ density: liquids.ammoniumPolyphosphateDensity(i('temperature')) })],
  ['uan28-n-content', (i) => ({ nitrogen: liquids.nutrientPerVolume(i('density'), i('n_mass_fraction')) })],
  [
    'uan28-rate-for-75lbN',
    (i) => ({ volume: liquids.volumeForNutrient(i('nitrogen'), i('density'), i('n_mass_fraction')) }),
  ],
  ['sg-factor-', flowFactor],
  ['sg-rate-20gpa-28', (i) => ({ water_rate: waterDoseForLiquid(i('rate'), i('density')) })],
  [
    'weight-300gal-uan28',
    (i) => {
      const mass = liquidMass(i('volume'), i('density'));
      return { mass, weight: mass };
    },
  ],
  ['weight-mixed-load', (i) => ({ weight: liquidMass(i('v1'), i('d1')) + liquidMass(i('v2'), i('d2')) })],
  ['tank-sg-check', (i) => ({ minimum_rating: liquids.tankRating(i('density'), 'fertiliser') })],
  [
    'dilute-brine-32',
    (i) => {
      const { thinned } = accepted(
        liquids.thinnedWithWater({
          liquid: 'cacl2_brine',
          strength: 100 * i('mass_fraction'),
          strengthUnit: 'weight %',
          volume: i('v1'),
          waterVolume: i('v2'),
          temperatureC: i('temperature'),
        }),
      );
      return {
        final_mass_fraction: thinned.massFraction,
        final_density: thinned.density,
        final_volume: thinned.volume,
      };
    },
  ],
  [
    'suspension-density',
    (i) => {
      const whole = i('powder') + i('water');
      return {
        density: liquids.idealMixDensity(
          [i('powder') / whole, i('water') / whole],
          [i('powder_density'), waterDensity(20)],
        ),
      };
    },
  ],
  ['hypo-spec-142gpl', hypochlorite],
  ['hypo-12.5-sg1.17', hypochlorite],
  ['hypo-10-sg1.14', hypochlorite],
  ['hypo-sg-estimate', (i) => ({ specific_gravity: liquids.bleachSpecificGravity(i('trade_percent')) })],
  ['hypo-k2-', rateConstant],
  [
    'hypo-decay-80F-30d',
    (i) => {
      const after = (f: number) =>
        liquids.bleachStrengthAfter(i('trade_percent'), i('temperature'), i('time'), f);
      return { trade_percent_model: after(i('field_factor')), 'trade_percent_factor_1.3': after(1.3) };
    },
  ],
  [
    'hypo-halflife-10-25C',
    (i) => ({ half_life: liquids.bleachHalfLife(i('trade_percent'), i('temperature'), 1) }),
  ],
  // Both ends of the band must lie within the tolerance: the worse one is handed over.
  [
    'hypo-decay-table-100F-14d',
    (i, e) => {
      const wanted = toSi(e.expected['trade_percent'] ?? { value: NaN, unit: '1' });
      const ends = [1, 1.3].map((f) =>
        liquids.bleachStrengthAfter(i('trade_percent'), i('temperature'), i('time'), f),
      );
      const worse = ends.sort((a, b) => Math.abs(b - wanted) - Math.abs(a - wanted))[0];
      return { trade_percent: worse ?? NaN };
    },
  ],
  [
    'hypo-halving-effect',
    (i) => {
      const rate = (trade: number) => liquids.bleachLossRate(trade, i('temperature'), 1);
      // At one ionic strength the loss goes with the square of the strength.
      const molarity = liquids.hypochloriteMolarity;
      return {
        rate_ratio: rate(i('trade_percent') / 2) / rate(i('trade_percent')),
        rate_ratio_without_ionic_term: (molarity(i('trade_percent') / 2) / molarity(i('trade_percent'))) ** 2,
      };
    },
  ],
  [
    'hypo-o2-25C',
    (i) => {
      const o2 = liquids.bleachOxygenRate(i('trade_percent'), i('temperature'));
      const molarVolume = (8.314462618 * (273.15 + i('temperature'))) / 101325;
      return { o2, o2_gas: o2 * molarVolume };
    },
  ],
  ['parts-3.5-to-0.5', (i) => ({ water_parts: waterPartsForStrength(i('strength'), i('wanted')) })],
  [
    'kdhe-1000gal-50mgl',
    (i) => {
      const bleach = liquids.productVolumeForDose(i('volume'), i('dose'), i('factor'));
      return { bleach, bleach_qt: bleach };
    },
  ],
  [
    'wash-1pct-100gal',
    (i, e) => {
      const { recipe } = accepted(
        liquids.recipe({
          liquid: 'naocl_12',
          stockStrength: Number(e.inputs['strength']?.value),
          wantedStrength: Number(e.inputs['wanted']?.value),
          strengthUnit: 'trade %',
          finalVolume: i('volume'),
          temperatureC: 20,
        }),
      );
      // The plain law must say the same as the card.
      expect(stockForBatch(i('volume'), i('strength') / 100, i('wanted') / 100)).toBeCloseTo(
        recipe.stock.volume,
        12,
      );
      return { bleach: recipe.stock.volume, water: recipe.water.volume };
    },
  ],
  [
    'glyphosate-density',
    (i) => {
      const density = liquids.densityFromLabel(i('mass_concentration'), i('mass_fraction'));
      return { density, weight: density };
    },
  ],
  [
    'injector-1to100',
    (i) => ({
      stock: liquids.proportionerStockVolume(i('volume'), i('ratio'), 'one in N'),
      stock_if_1_plus_100: liquids.proportionerStockVolume(i('volume'), i('ratio'), 'one and N'),
    }),
  ],
  [
    'injector-stock-strength',
    (i) => ({ stock: liquids.proportionerStockStrength(i('wanted'), i('ratio'), 'one in N') }),
  ],
  [
    'rinse-3x15-residual5',
    (i) => ({
      three_batches: 1 / rinseDilution(i('residual'), i('n') * i('rinse'), i('n')),
      single_batch: 1 / rinseDilution(i('residual'), i('n') * i('rinse'), 1),
      continuous: 1 / continuousRinseDilution(i('residual'), i('n') * i('rinse')),
    }),
  ],
  ['rinse-tank-min', rinseTank],
  [
    'agitation-6500L',
    (i) => {
      const flow = agitationFlow(i('volume'), i('fraction'));
      return { flow, turnover: i('volume') / flow };
    },
  ],
  [
    'agitation-turnover-20min',
    (i) => {
      const share = 1 / i('turnover');
      return { flow: agitationFlow(i('volume'), share), fraction: share };
    },
  ],
  [
    'pump-flow-total',
    (i) => {
      const agitation = agitationFlow(i('volume'), i('fraction'));
      return { agitation, pump: pumpDemand(i('nozzle'), agitation, i('margin')) };
    },
  ],
  [
    'agitation-power',
    (i) => {
      const power = fluidPower(i('flow'), i('pressure'));
      return { power, power_hp: power };
    },
  ],
  [
    'strainer-area-20gpm',
    (i) => ({
      suction: liquids.strainerArea(i('flow'), 'suction'),
      pressure: liquids.strainerArea(i('flow'), 'pressure'),
    }),
  ],
  [
    'stokes-5um-kaolin',
    (i) => {
      const speed = liquids.settlingSpeedStokes(
        i('diameter'),
        i('particle_density'),
        waterDensity(i('temperature')),
        waterViscosity(i('temperature')),
      );
      return { speed, per_hour: speed };
    },
  ],
  ['galv-', galvanic],
  [
    'winterise-5gal-into-3gal',
    (i) => {
      const { thinned } = accepted(
        liquids.thinnedWithWater({
          liquid: 'pg',
          strength: 100 * i('mass_fraction'),
          strengthUnit: 'weight %',
          volume: i('v_pg'),
          waterVolume: i('v_water'),
          temperatureC: 20,
        }),
      );
      return { mass_fraction: thinned.massFraction, freezing: thinned.coldLimitC ?? NaN };
    },
  ],
  ['cell-', cell],
  [
    'brine-chloride-vs-316',
    (i) => {
      const density = liquids.saltSolutionDensity('CaCl2', i('mass_fraction'), i('temperature'));
      const chloride = liquids.chlorideOfBrine('CaCl2', density, i('mass_fraction'));
      return { chloride, times_limit: chloride / liquids.CREVICE_LIMITS.ss316 };
    },
  ],
  [
    'glyphosate-2pct-25gal',
    (i) => {
      const concentrate = liquids.concentrateVolume(i('mix'), i('volume'));
      return {
        concentrate,
        concentrate_floz: concentrate,
        active: concentrate * liquids.nutrientPerVolume(i('active'), 1),
      };
    },
  ],
];

function rinseTank(i: Input): Outputs {
  const { byTank, byResidual, least } = rinseTankVolume(i('nominal'), i('residual'));
  return { by_10_percent: byTank, by_10x_residual: byResidual, minimum: least };
}

function accepted<T extends { readonly ok: boolean }>(outcome: T): Extract<T, { readonly ok: true }> {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return outcome as Extract<T, { readonly ok: true }>;
}

/** Allowed difference of one expected field, read from the entry's own words. */
function allowed(e: Entry, field: string, wanted: number): number {
  const said = e.tolerance;
  const named = new RegExp(`${field} ([\\d.]+)% rel`).exec(said);
  if (named?.[1] !== undefined) return (Number(named[1]) / 100) * Math.abs(wanted);
  if (said === 'exact') return 1e-9 * Math.max(1, Math.abs(wanted));
  if (/, /.test(said)) {
    // Two tolerances, of a share and of a temperature: "1 K, 0.3 wt%", "1% rel, 0.5 K", "density ..., viscosity ...".
    if (said === '1 K, 0.3 wt%') return field.endsWith('temperature') ? 1 : 0.003;
    if (said === '1% rel, 0.5 K') return field === 'freezing' ? 0.5 : 0.01 * Math.abs(wanted);
    // Weight per gallon is a density.
    if (field === 'weight_per_gallon') return allowed(e, 'density', wanted);
    throw new Error(`tolerance '${said}' says nothing of '${field}'`);
  }
  const share = /^([\d.]+)\s*% rel/.exec(said);
  if (share?.[1] !== undefined) return (Number(share[1]) / 100) * Math.abs(wanted);
  const absolute = /^([\d.]+)\s*(?:K\s*)?abs$/.exec(said);
  if (absolute?.[1] !== undefined) return Number(absolute[1]);
  throw new Error(`tolerance '${said}' cannot be read`);
}

/** The longest name or beginning that fits. */
function functionOf(id: string) {
  return FUNCTIONS.filter(([name]) => id === name || (name.endsWith('-') && id.startsWith(name))).sort(
    (a, b) => b[0].length - a[0].length,
  )[0]?.[1];
}

describe('published values of liquids, mixes and materials', () => {
  it('holds all 81 entries', () => {
    expect(entries).toHaveLength(81);
    expect(Object.keys(CANNOT_MEET)).toHaveLength(0);
  });

  it.each(entries.map((e) => [e.id, e.source, e] as const))('%s agrees with %s', (id, source, e) => {
    const compute = functionOf(id);
    if (compute === undefined) throw new Error(`no function is named for ${id}`);
    const input: Input = (name) => {
      const quantity = e.inputs[name];
      if (quantity === undefined) throw new Error(`${id} has no input '${name}'`);
      return toSi(quantity);
    };
    const computed = compute(input, e);
    for (const [field, wanted] of Object.entries(e.expected)) {
      const got = computed[field];
      const where = `${id} ${field} (${source})`;
      if (typeof wanted.value === 'string') {
        expect(got, where).toBe(wanted.value);
        continue;
      }
      const si = toSi(wanted);
      expect(typeof got, where).toBe('number');
      expect(Math.abs(Number(got) - si), `${where}: ${got} against ${si}`).toBeLessThanOrEqual(
        allowed(e, field, si),
      );
    }
  });
});
