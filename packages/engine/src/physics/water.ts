import { inRange } from './in-range.ts';

const GAS_CONSTANT = 461.51805;
const REDUCING_TEMPERATURE = 10;
const REFERENCE_PRESSURE = 1e5;
const CELSIUS_ZERO = 273.15;

/** Coefficient and exponent of one term. */
type Term = readonly [number, number];

const VOLUME_CONSTANT = 1.93763157e-2;
const VOLUME_HOT: readonly Term[] = [
  [6.74458446e3, 4],
  [-2.22521604e5, 5],
  [1.00231247e8, 7],
  [-1.63552118e9, 8],
  [8.32299658e9, 9],
];
const VOLUME_COLD: readonly Term[] = [
  [5.78545292e-3, 1],
  [-1.53195665e-2, 2],
  [3.11337859e-2, 3],
  [-4.23546241e-2, 4],
  [3.38713507e-2, 5],
  [-1.19946761e-2, 6],
];
const COMPRESSION_HOT: readonly Term[] = [
  [-7.5245878e-6, 1],
  [-1.3767418e-2, 3],
  [1.0627293e1, 5],
  [-2.0457795e2, 6],
  [1.2037414e3, 7],
];
const COMPRESSION_COLD: readonly Term[] = [
  [-3.109147e-6, 1],
  [2.8964919e-5, 3],
  [-1.3112763e-4, 4],
  [3.0410453e-4, 5],
  [-3.9034594e-4, 6],
  [2.3403117e-4, 7],
  [-4.8510101e-5, 9],
];
const VISCOSITY: readonly Term[] = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
];

const CRITICAL_TEMPERATURE = 647.096;
const CRITICAL_PRESSURE = 22.064e6;
const SATURATION: readonly Term[] = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
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
  inRange('temperatureC', temperatureC, 0, 100, 'degC');
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
  inRange('temperatureC', temperatureC, 0, 100, 'degC');
  return 1e-6 * seriesOf(VISCOSITY, (temperatureC + CELSIUS_ZERO) / 300);
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
  inRange('temperatureC', temperatureC, 0, 100, 'degC');
  const t = temperatureC + CELSIUS_ZERO;
  const exponent = (CRITICAL_TEMPERATURE / t) * seriesOf(SATURATION, 1 - t / CRITICAL_TEMPERATURE);
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
  inRange('temperatureC', temperatureC, 0, 100, 'degC');
  const t = temperatureC + CELSIUS_ZERO;
  const compression =
    ((GAS_CONSTANT * REDUCING_TEMPERATURE) / REFERENCE_PRESSURE ** 2) *
    (seriesOf(COMPRESSION_HOT, hotVariable(t)) + seriesOf(COMPRESSION_COLD, coldVariable(t)));
  return -specificVolume(t) / compression;
}

function specificVolume(kelvin: number): number {
  const sum =
    VOLUME_CONSTANT + seriesOf(VOLUME_HOT, hotVariable(kelvin)) + seriesOf(VOLUME_COLD, coldVariable(kelvin));
  return ((GAS_CONSTANT * REDUCING_TEMPERATURE) / REFERENCE_PRESSURE) * sum;
}

const hotVariable = (kelvin: number): number => REDUCING_TEMPERATURE / (593 - kelvin);
const coldVariable = (kelvin: number): number => REDUCING_TEMPERATURE / (kelvin - 232);

function seriesOf(terms: readonly Term[], x: number): number {
  let sum = 0;
  for (const [coefficient, exponent] of terms) sum += coefficient * x ** exponent;
  return sum;
}
