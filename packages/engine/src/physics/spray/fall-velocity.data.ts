/** Diameters of the measured drops [m]. */
export const MEASURED_DIAMETERS: readonly number[] = [
  100e-6, 200e-6, 400e-6, 500e-6, 600e-6, 700e-6, 800e-6, 900e-6, 1000e-6, 1200e-6, 1400e-6, 1800e-6, 2000e-6,
  2400e-6, 2800e-6, 3200e-6, 3600e-6, 4400e-6, 4800e-6, 5200e-6, 5600e-6, 6000e-6, 6500e-6,
];

/** Their fall velocity in still air at 20 degC and 101.325 kPa [m/s]; Gunn & Kinzer 1949. */
export const MEASURED_VELOCITIES: readonly number[] = [
  0.27, 0.72, 1.62, 2.06, 2.47, 2.87, 3.27, 3.67, 4.03, 4.64, 5.17, 6.09, 6.49, 7.27, 7.82, 8.26, 8.6, 8.98,
  9.07, 9.12, 9.16, 9.17, 9.18,
];
