/**
 * Polynomials in (t - baseC) and (w - baseFraction): rows are powers of temperature, columns powers of mass fraction.
 * Density in kg/m3, logarithm of viscosity in mPa s, freezing in kelvin.
 */
export interface SecondaryFluid {
  readonly baseFraction: number;
  readonly baseC: number;
  readonly freezing: readonly number[];
  readonly density: readonly (readonly number[])[];
  readonly logViscosity: readonly (readonly number[])[];
  /** Greatest mass fraction to which the polynomials may be used. */
  readonly maxFraction: number;
  readonly maxC: number;
}

export const SECONDARY_FLUIDS = {
  'propylene glycol': {
    baseFraction: 0.307031,
    baseC: 32.7083,
    freezing: [259.9, -66.31, -109.4, -228.3, -340.9, 146.5],
    density: [
      [1018, 76.04, -24.98, -155, -113.1, 234.2],
      [-0.5406, -0.945, 0.27, 2.829, -2.221],
      [-2.666e-3, 5.541e-3, -4.018e-3, -7.175e-3],
      [1.347e-5, -1.343e-5, 3.376e-5],
    ],
    logViscosity: [
      [0.6837, 3.328, 0.5453, -3.9, -1.587, 35.64],
      [-0.03045, -0.03984, -8.6e-4, 0.1054, 0.04475],
      [2.525e-4, 4.332e-4, -1.593e-4, -1.589e-3],
      [-1.399e-6, -1.86e-6, -4.465e-7],
    ],
    maxFraction: 0.6,
    maxC: 60,
  },
  CaCl2: {
    baseFraction: 0.187414,
    baseC: 7.5257,
    freezing: [256.94, -155.5, -549.6, -2624, -17260, -44940],
    density: [
      [1171, 984.7, 338.9, 1062, 2785, -18110],
      [-0.1463, -2.488, -23.02, 62.91, 642.3],
      [-1.302e-3, -5.53e-2, 0.3526, 1.806],
      [-1.871e-4, 1.665e-3, 2.788e-3],
    ],
    logViscosity: [
      [0.8939, 4.389, 9.121, 1.963, 29.97, 343.5],
      [-0.02647, 0.02102, 0.03993, -0.4892, -3.631],
      [1.718e-4, -8.688e-5, 3.785e-3, 1.526e-5],
      [-7.918e-7, -4.353e-6, -9.979e-5],
    ],
    maxFraction: 0.298,
    maxC: 40,
  },
  // Labelled to 30 % in an open library, but above about 20 % it is nonsense: 8100 mPa s and -100 degC at 30 %.
  MgCl2: {
    baseFraction: 0.141327,
    baseC: 9.3163,
    freezing: [258.03, -188.5, -545.5, -725.7, -32080, -179400],
    density: [
      [1124, 907.1, 244.9, 3402, 33440, 72390],
      [-0.3072, -0.6513, 0.3574, -140.9, -683],
      [-3.295e-3, 4.664e-3, 4.337e-2, 1.857],
      [1.015e-5, 2.287e-4, 6.044e-3],
    ],
    logViscosity: [
      [0.9573, 4.968, -27.22, 93.51, 7364, 37170],
      [-0.03065, 0.01559, -0.1753, -8.353, -40.14],
      [1.115e-4, -1.796e-3, 2.021e-2, 0.1901],
      [-2.923e-6, 3.051e-5, 2.614e-4],
    ],
    maxFraction: 0.2,
    maxC: 40,
  },
} as const satisfies Readonly<Record<string, SecondaryFluid>>;

export type SecondaryFluidName = keyof typeof SECONDARY_FLUIDS;

/** Strength at which ice and salt come out together, and the temperature of it. */
export const EUTECTICS = {
  CaCl2: { massFraction: 0.298, temperatureC: -51 },
  MgCl2: { massFraction: 0.216, temperatureC: -33 },
  NaCl: { massFraction: 0.233, temperatureC: -21 },
} as const;

/** Saturation of CaCl2 above its eutectic: mass fraction and temperature. From memory (handbook solubilities). */
export const CALCIUM_CHLORIDE_SATURATION: readonly (readonly [number, number])[] = [
  [0.373, 0],
  [0.393, 10],
  [0.427, 20],
];
