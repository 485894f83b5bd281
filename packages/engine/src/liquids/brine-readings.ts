import { inRange } from '../physics/index.ts';
import { type Reading, type Readings, estimate, known, readingOf, unknown } from './reading.ts';
import { SALTS } from './salt-solution.data.ts';
import { saltSolutionDensity, saltSolutionViscosity } from './salt-solution.ts';
import { CALCIUM_CHLORIDE_SATURATION, EUTECTICS, SECONDARY_FLUIDS } from './secondary-fluid.data.ts';
import { densityMelinder, freezingPointMelinder, viscosityMelinder } from './secondary-fluid.ts';

type BrineSalt = 'CaCl2' | 'MgCl2' | 'NaOH' | 'CuSO4';
const DENSITY_DOUBT = 0.004;
/** 50 % caustic freezes near here [degC]; from memory. */
const STRONG_CAUSTIC_FREEZING_C = 12;

export function brineReadings(salt: BrineSalt, massFraction: number, temperatureC: number): Readings {
  return {
    density: readingOf(() => densityReading(salt, massFraction, temperatureC)),
    viscosity: readingOf(() => viscosityReading(salt, massFraction, temperatureC)),
    coldLimit: coldReading(salt, massFraction),
    coldLimitKind: saltSide(salt, massFraction) ? 'salt-out' : 'ice',
  };
}

function densityReading(salt: BrineSalt, w: number, t: number): Reading {
  if (t < 0 && (salt === 'CaCl2' || salt === 'MgCl2')) {
    const value = atZeroJoined(saltSolutionDensity(salt, w, 0), (c) => densityMelinder(salt, w, c), t);
    return estimate(
      value,
      value * (1 - DENSITY_DOUBT),
      value * (1 + DENSITY_DOUBT),
      'below 0 degC: the Melinder fit, joined to the Laliberté model at 0 degC',
      'MELINDER',
      'LALIBERTE',
    );
  }
  const value = saltSolutionDensity(salt, w, t);
  if (t >= SALTS[salt].densityFitFrom) return known(value, 'LALIBERTE');
  return estimate(
    value,
    value * (1 - DENSITY_DOUBT),
    value * (1 + DENSITY_DOUBT),
    `below ${SALTS[salt].densityFitFrom} degC no datum went into the fit; the independent Melinder fit agrees within 0.4 %`,
    'LALIBERTE',
  );
}

function viscosityReading(salt: BrineSalt, w: number, t: number): Reading {
  const doubt = SALTS[salt].viscosityDoubt;
  if (t < 0 && (salt === 'CaCl2' || salt === 'MgCl2')) {
    const value = atZeroJoined(saltSolutionViscosity(salt, w, 0), (c) => viscosityMelinder(salt, w, c), t);
    const reason = 'below 0 degC: the Melinder fit, joined to the Laliberté model at 0 degC';
    return estimate(value, value * (1 - doubt), value * (1 + doubt), reason, 'MELINDER', 'LALIBERTE');
  }
  const value = saltSolutionViscosity(salt, w, t);
  const cold = t < SALTS[salt].viscosityFitFrom;
  if (!cold && doubt <= 0.08) return known(value, 'LALIBERTE');
  const reason = cold
    ? `below ${SALTS[salt].viscosityFitFrom} degC no datum went into the fit`
    : `two published fits differ by up to ${100 * doubt} %`;
  return estimate(value, value * (1 - doubt), value * (1 + doubt), reason, 'LALIBERTE');
}

/** The cold fit scaled to meet the warm one at 0 degC, so that no step is left there. */
function atZeroJoined(
  warmAtZero: number,
  cold: (temperatureC: number) => number,
  temperatureC: number,
): number {
  return (warmAtZero * cold(temperatureC)) / cold(0);
}

const saltSide = (salt: BrineSalt, w: number): boolean =>
  (salt === 'CaCl2' || salt === 'MgCl2') && w > EUTECTICS[salt].massFraction;

function coldReading(salt: BrineSalt, w: number): Reading {
  if (salt === 'CuSO4')
    return w <= 0.05
      ? estimate(0, -3, 0, 'thin solution: ice from just below 0 degC', 'JUDGEMENT')
      : unknown('no freezing or crystallisation curve of copper sulfate was found', [-5, 20]);
  if (salt === 'NaOH')
    return Math.abs(w - 0.5) < 0.005
      ? estimate(
          STRONG_CAUSTIC_FREEZING_C,
          10,
          15,
          '50 % caustic freezes near 12 degC (from memory)',
          'TEXTBOOK',
        )
      : unknown('no freezing curve of caustic was found; 50 % freezes near 12 degC (from memory)');
  const eutectic = EUTECTICS[salt];
  const limit = SECONDARY_FLUIDS[salt].maxFraction;
  if (w <= limit) return readingOf(() => known(freezingPointMelinder(salt, w), 'MELINDER'));
  if (w <= eutectic.massFraction)
    return unknown(
      `between ${100 * limit} % and the eutectic of ${100 * eutectic.massFraction} % the ice curve of ${salt} is not usable`,
      [eutectic.temperatureC, freezingPointMelinder(salt, limit)],
    );
  return salt === 'CaCl2'
    ? readingOf(() => saturationReading(w), [eutectic.temperatureC, 0])
    : unknown(
        `above the eutectic of ${100 * eutectic.massFraction} % the salt, not ice, comes out of ${salt} brine and no curve of it was found`,
      );
}

function saturationReading(w: number): Reading {
  const first = CALCIUM_CHLORIDE_SATURATION[0]?.[0] ?? NaN;
  const last = CALCIUM_CHLORIDE_SATURATION.at(-1)?.[0] ?? NaN;
  inRange(
    'massFraction of the CaCl2 saturation table (above the eutectic of 29.8 % the salt comes out, not ice)',
    w,
    first,
    last,
  );
  for (let i = 1; i < CALCIUM_CHLORIDE_SATURATION.length; i++) {
    const [w0, t0] = CALCIUM_CHLORIDE_SATURATION[i - 1] ?? [NaN, NaN];
    const [w1, t1] = CALCIUM_CHLORIDE_SATURATION[i] ?? [NaN, NaN];
    if (w > w1) continue;
    const value = t0 + ((w - w0) / (w1 - w0)) * (t1 - t0);
    return estimate(value, value - 3, value + 3, 'between recalled solubilities of CaCl2', 'SOLUB');
  }
  return unknown('beyond the CaCl2 saturation table');
}
