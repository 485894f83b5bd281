/** Coefficients and ranges of one dissolved salt. */
export interface SaltCoefficients {
  /** c0..c4 of the apparent density. */
  readonly density: readonly [number, number, number, number, number];
  /** v1..v6 of the apparent viscosity. */
  readonly viscosity: readonly [number, number, number, number, number, number];
  /** Greatest mass fraction of the fit. */
  readonly maxFraction: number;
  /** Temperatures the functions accept [degC]. */
  readonly densityRange: readonly [number, number];
  readonly viscosityRange: readonly [number, number];
  /** Coldest datum of the fit itself; between the accepted limit and this the value is an estimate [degC]. */
  readonly densityFitFrom: number;
  readonly viscosityFitFrom: number;
  /** Doubt of the viscosity as a share. */
  readonly viscosityDoubt: number;
}

export const SALTS = {
  CaCl2: {
    density: [-9.728937, 14.700535, 4.190333, 0.03974036, 2708.1278],
    viscosity: [32.01437, 0.7881041, -1.1412045, 0.002700107, 776516.75, 5.838881],
    maxFraction: 0.51,
    densityRange: [0, 60],
    viscosityRange: [0, 60],
    densityFitFrom: 15,
    viscosityFitFrom: 0,
    viscosityDoubt: 0.11,
  },
  MgCl2: {
    density: [-0.02150014, 0.04412021, 1.532276, -0.009807851, -3478.365],
    viscosity: [35.39963, 2.732714, 3.929738, 0.02043208, -1.119646, 0.1449424],
    maxFraction: 0.32,
    densityRange: [0, 60],
    viscosityRange: [0, 60],
    densityFitFrom: 0,
    viscosityFitFrom: 15,
    viscosityDoubt: 0.2,
  },
  NaCl: {
    density: [-0.003241122, 0.06363543, 1.013714, 0.0145951, 3317.3485],
    viscosity: [16.22179, 1.322931, 1.48486, 0.007469126, 30.7802, 2.058269],
    maxFraction: 0.26,
    densityRange: [0, 60],
    viscosityRange: [5, 60],
    densityFitFrom: 0,
    viscosityFitFrom: 5,
    viscosityDoubt: 0.05,
  },
  NaOH: {
    density: [319.0205, 528.5924, -0.1021979, 0.0003504207, 765.9705],
    viscosity: [448.4576, 0.008714524, -431.9721, 0.01601442, 104.0117, 4.644937],
    maxFraction: 0.5,
    densityRange: [4, 60],
    viscosityRange: [12.5, 60],
    densityFitFrom: 4,
    viscosityFitFrom: 12.5,
    viscosityDoubt: 0.08,
  },
  CuSO4: {
    density: [-1.120783e-6, 6.068506e-7, -0.1188633, 0.003780501, 4763.9607],
    viscosity: [-129.8873, 4.030196, 10.01988, 0.0610165, -2125.993, 9.169657],
    maxFraction: 0.28,
    densityRange: [10, 60],
    viscosityRange: [10, 60],
    densityFitFrom: 10,
    viscosityFitFrom: 15,
    viscosityDoubt: 0.05,
  },
  'ammonium sulfate': {
    density: [618.2408, 966.1281, 0.6027062, 0.001627903, 667.5734],
    viscosity: [11.96842, 2.605921, 1.908301, 0.007312916, 141.4593, 6.778378],
    maxFraction: 0.42,
    densityRange: [15, 55],
    viscosityRange: [15, 60],
    densityFitFrom: 15,
    viscosityFitFrom: 15,
    viscosityDoubt: 0.05,
  },
} as const satisfies Readonly<Record<string, SaltCoefficients>>;

export type Salt = keyof typeof SALTS;
