import { inRange } from './in-range.ts';

/** Temperatures of the laws of water [degC]; their doc comments repeat them. */
export const WATER_RANGE_C = [0, 100] as const;

const GAS_CONSTANT = 461.51805;
const REDUCING_TEMPERATURE = 10;
const REFERENCE_PRESSURE = 1e5;
const CELSIUS_ZERO = 273.15;

// Polynomials stand with the coefficient of the power 0 first: powers in a loop cost far more than multiplications.

/** In 10 K/(593 K - T). */
const VOLUME_HOT = [0, 0, 0, 0, 6.74458446e3, -2.22521604e5, 0, 1.00231247e8, -1.63552118e9, 8.32299658e9];
/** In 10 K/(T - 232 K); the constant is that of both together. */
const VOLUME_COLD = [
  1.93763157e-2, 5.78545292e-3, -1.53195665e-2, 3.11337859e-2, -4.23546241e-2, 3.38713507e-2, -1.19946761e-2,
];
const COMPRESSION_HOT = [0, -7.5245878e-6, 0, -1.3767418e-2, 0, 1.0627293e1, -2.0457795e2, 1.2037414e3];
const COMPRESSION_COLD = [
  0, -3.109147e-6, 0, 2.8964919e-5, -1.3112763e-4, 3.0410453e-4, -3.9034594e-4, 2.3403117e-4, 0,
  -4.8510101e-5,
];

const CRITICAL_TEMPERATURE = 647.096;
const CRITICAL_PRESSURE = 22.064e6;
/** In the square root of τ: the published powers of τ are 1, 1.5, 3, 3.5, 4 and 7.5. */
const SATURATION = [
  0, 0, -7.85951783, 1.84408259, 0, 0, -11.7866497, 22.6807411, -15.9618719, 0, 0, 0, 0, 0, 0, 1.80122502,
];

/**
 * Density of water at atmospheric pressure.
 *
 * @formula v = (R T_R / p0) (a5 + Σ a_i α^n_i + Σ b_i β^m_i), ρ = 1/v; α = 10/(593 - T), β = 10/(T - 232), T in K, p0 = 0.1 MPa
 * @param temperatureC water temperature [degC] 0..100
 * @returns density [kg/m3]
 * @valid air-free liquid at 0.1 MPa; the sea-level pressure of 0.101325 MPa adds less than a millionth
 * @throws RangeError when a parameter is outside its range
 * @source IAPWS SR6-08(2011), Liquid Water at 0.1 MPa, equation 2 (coefficients read in two public implementations)
 */
export function waterDensity(temperatureC: number): number {
  checkTemperature(temperatureC);
  return 1 / specificVolume(temperatureC + CELSIUS_ZERO);
}

/**
 * Dynamic viscosity of water at atmospheric pressure.
 *
 * @formula μ = 1e-6 Σ c_i (T/300)^d_i, T in K
 * @param temperatureC water temperature [degC] 0..100
 * @returns dynamic viscosity [Pa.s]
 * @throws RangeError when a parameter is outside its range
 * @source IAPWS SR6-08(2011), Liquid Water at 0.1 MPa, equation 7
 */
export function waterViscosity(temperatureC: number): number {
  checkTemperature(temperatureC);
  const log = Math.log((temperatureC + CELSIUS_ZERO) / 300);
  return (
    1e-6 *
    (280.68 * Math.exp(-1.9 * log) +
      511.45 * Math.exp(-7.7 * log) +
      61.131 * Math.exp(-19.6 * log) +
      0.45903 * Math.exp(-40 * log))
  );
}

/**
 * Pressure at which water boils at a temperature: the floor of every suction line.
 *
 * @formula ln(p/pc) = (Tc/T) Σ a_i τ^e_i, τ = 1 - T/Tc, T in K
 * @param temperatureC water temperature [degC] 0..100
 * @returns vapour pressure, absolute [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source IAPWS SR1-86(1992), equation 1 (Wagner and Pruss), coefficients from memory; compared with IAPWS-95 values in the tests
 */
export function waterVapourPressure(temperatureC: number): number {
  checkTemperature(temperatureC);
  const t = temperatureC + CELSIUS_ZERO;
  const exponent =
    (CRITICAL_TEMPERATURE / t) * polynomial(SATURATION, Math.sqrt(1 - t / CRITICAL_TEMPERATURE));
  return CRITICAL_PRESSURE * Math.exp(exponent);
}

/**
 * Bulk modulus of water: how stiff the liquid column is when a trigger is slammed shut.
 *
 * @formula B = -v / (∂v/∂p), both of the 0.1 MPa equation of state
 * @param temperatureC water temperature [degC] 0..100
 * @returns isothermal bulk modulus [Pa]
 * @valid air-free water; a little air in the line makes it many times softer
 * @throws RangeError when a parameter is outside its range
 * @source IAPWS SR6-08(2011), equations 2 and 3
 */
export function waterBulkModulus(temperatureC: number): number {
  checkTemperature(temperatureC);
  const t = temperatureC + CELSIUS_ZERO;
  const compression =
    ((GAS_CONSTANT * REDUCING_TEMPERATURE) / REFERENCE_PRESSURE ** 2) *
    (polynomial(COMPRESSION_HOT, hotVariable(t)) + polynomial(COMPRESSION_COLD, coldVariable(t)));
  return -specificVolume(t) / compression;
}

function checkTemperature(temperatureC: number): void {
  inRange('temperatureC', temperatureC, WATER_RANGE_C[0], WATER_RANGE_C[1], 'degC');
}

function specificVolume(kelvin: number): number {
  const sum = polynomial(VOLUME_HOT, hotVariable(kelvin)) + polynomial(VOLUME_COLD, coldVariable(kelvin));
  return ((GAS_CONSTANT * REDUCING_TEMPERATURE) / REFERENCE_PRESSURE) * sum;
}

const hotVariable = (kelvin: number): number => REDUCING_TEMPERATURE / (593 - kelvin);
const coldVariable = (kelvin: number): number => REDUCING_TEMPERATURE / (kelvin - 232);

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!;
  return sum;
}
