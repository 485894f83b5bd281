/** Exact SI values of the US units in which published rules and tables of the trade are printed. */
export const STANDARD_GRAVITY = 9.80665;
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const MILE = 1609.344;
export const POUND = 0.45359237;
export const POUND_FORCE = POUND * STANDARD_GRAVITY;
export const US_GALLON = 231 * INCH ** 3;
export const PSI = POUND_FORCE / INCH ** 2;
export const KSI = 1000 * PSI;
export const HORSEPOWER = 550 * FOOT * POUND_FORCE;
export const CUBIC_FOOT = FOOT ** 3;
/** Area of a circle of one thousandth of an inch across. */
export const CIRCULAR_MIL = (Math.PI / 4) * (0.001 * INCH) ** 2;
