import { inRange } from '../in-range.ts';

/** Reynolds number up to which the recommended law is laminar, and from which it is Colebrook-White. */
const LAMINAR_END = 2300;
const TURBULENT_START = 4000;

const LAW_MAX_REYNOLDS = 1e9;
const LAW_MAX_ROUGHNESS = 0.1;
/** 2 / ln 10 */
const TWO_LOG10E = 0.8685889638065037;

/**
 * Darcy friction factor of laminar flow in a straight round pipe.
 *
 * @formula f = 64 / Re
 * @param reynolds Reynolds number [-] 1e-6..2300
 * @returns Darcy friction factor [-]
 * @valid straight pipe, fully developed flow; coiled hose has more
 * @throws RangeError when a parameter is outside its range
 * @source Hagen-Poiseuille; e.g. White, Fluid Mechanics, chapter 6
 */
export function frictionFactorLaminar(reynolds: number): number {
  inRange('reynolds', reynolds, 1e-6, LAMINAR_END, '-');
  return 64 / reynolds;
}

/**
 * Darcy friction factor of turbulent flow, smooth to fully rough.
 *
 * @formula 1/sqrt(f) = -2 log10(eD/3.7 + 2.51/(Re sqrt(f)))
 * @param reynolds Reynolds number [-] 2000..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid solved to rounding; above Re 4000 the accepted law of commercial pipes (within some 10-15 %), below it an extrapolation
 * @throws RangeError when a parameter is outside its range
 * @source Colebrook, J. Inst. Civ. Eng. 11 (1939) 133
 */
export function frictionFactorColebrook(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 2000, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  const x = colebrookX(reynolds, relativeRoughness);
  return 1 / (x * x);
}

/** 1/sqrt(f) of Colebrook-White by Newton, to rounding. */
function colebrookX(reynolds: number, relativeRoughness: number): number {
  const a = relativeRoughness / 3.7;
  const b = 2.51 / reynolds;
  let x = -1.8 * Math.log10(6.9 / reynolds + a ** 1.11);
  for (let i = 0; i < 20; i++) {
    const u = a + b * x;
    const step = (x + TWO_LOG10E * Math.log(u)) / (1 + (TWO_LOG10E * b) / u);
    x -= step;
    if (Math.abs(step) < 1e-14 * x) break;
  }
  return x;
}

/** d ln f / d ln Re of Colebrook-White at a solved x = 1/sqrt(f). */
function colebrookSlope(reynolds: number, relativeRoughness: number, x: number): number {
  const b = 2.51 / reynolds;
  const cb = (TWO_LOG10E * b) / (relativeRoughness / 3.7 + b * x);
  return (-2 * cb) / (1 + cb);
}

/**
 * Darcy friction factor at any Reynolds number: the law this program uses.
 *
 * @formula 64/Re up to Re 2300; ln f a cubic Hermite in ln Re to Re 4000, slopes matched at both ends; Colebrook-White above
 * @param reynolds Reynolds number [-] 1e-6..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid between Re 2300 and 4000 no law is certain: published ones differ by 25 %
 * @throws RangeError when a parameter is outside its range
 * @source Hagen-Poiseuille; Colebrook 1939; the joining cubic is ours
 */
export function frictionFactorBlend(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 1e-6, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  if (reynolds <= LAMINAR_END) return 64 / reynolds;
  if (reynolds >= TURBULENT_START) {
    const x = colebrookX(reynolds, relativeRoughness);
    return 1 / (x * x);
  }
  const [c0, c1, c2, c3] = transitionCubic(relativeRoughness);
  const t = Math.log(reynolds / LAMINAR_END);
  return Math.exp(c0 + t * (c1 + t * (c2 + t * c3)));
}

/**
 * Logarithmic slope of the friction factor this program uses.
 *
 * @formula d ln f / d ln Re
 * @param reynolds Reynolds number [-] 1e-6..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns slope [-]
 * @valid always above -2, which is why the loss of a pipe always rises with flow
 * @throws RangeError when a parameter is outside its range
 * @source derivative of frictionFactorBlend
 */
export function frictionSlopeBlend(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 1e-6, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  if (reynolds <= LAMINAR_END) return -1;
  if (reynolds >= TURBULENT_START) {
    return colebrookSlope(reynolds, relativeRoughness, colebrookX(reynolds, relativeRoughness));
  }
  const [, c1, c2, c3] = transitionCubic(relativeRoughness);
  const t = Math.log(reynolds / LAMINAR_END);
  return c1 + t * (2 * c2 + t * 3 * c3);
}

/** Coefficients of ln f in t = ln(Re/2300), matching value and slope of the laws at both ends. */
function transitionCubic(relativeRoughness: number): [number, number, number, number] {
  const span = Math.log(TURBULENT_START / LAMINAR_END);
  const x = colebrookX(TURBULENT_START, relativeRoughness);
  const start = Math.log(64 / LAMINAR_END);
  const rise = -2 * Math.log(x) - start;
  const endSlope = colebrookSlope(TURBULENT_START, relativeRoughness, x);
  return [
    start,
    -1,
    (3 * rise) / (span * span) - (endSlope - 2) / span,
    (-2 * rise) / (span * span * span) + (endSlope - 1) / (span * span),
  ];
}

/**
 * Darcy friction factor at any Reynolds number by one explicit equation.
 *
 * @formula f = 8 ((8/Re)^12 + 1/(A+B)^1.5)^(1/12); A = (-2.457 ln((7/Re)^0.9 + 0.27 eD))^16; B = (37530/Re)^16
 * @param reynolds Reynolds number [-] 1e-3..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid a cross-check; up to 25 % from other laws between Re 2000 and 4000
 * @throws RangeError when a parameter is outside its range
 * @source Churchill, Chem. Eng. 84(24) (1977) 91
 */
export function frictionFactorChurchill(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 1e-3, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  const a = (-2.457 * Math.log((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness)) ** 16;
  const b = (37530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}

/**
 * Darcy friction factor of turbulent flow, explicit approximation of Colebrook-White.
 *
 * @formula f = 0.25 / log10(eD/3.7 + (6.97/Re)^0.9)^2
 * @param reynolds Reynolds number [-] 4000..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid within 2 % of Colebrook-White for Re 5e3..1e8 and eD 1e-6..1e-2; the second term is often printed 5.74/Re^0.9, which moves f by 2e-6
 * @throws RangeError when a parameter is outside its range
 * @source Swamee and Jain, J. Hydraul. Div. ASCE 102 (1976) 657
 */
export function frictionFactorSwameeJain(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, TURBULENT_START, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  const l = Math.log10(relativeRoughness / 3.7 + (6.97 / reynolds) ** 0.9);
  return 0.25 / (l * l);
}

/**
 * Darcy friction factor in the transition, the cubic that joins 64/Re to Swamee-Jain.
 *
 * @formula f = X1 + R (X2 + R (X3 + X4)), R = Re/2000; X1 = 7FA - FB; X2 = 0.128 - 17FA + 2.5FB; X3 = -0.128 + 13FA - 2FB; X4 = R (0.032 - 3FA + 0.5FB); FA, FB from Swamee-Jain at Re 4000
 * @param reynolds Reynolds number [-] 2000..4000
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid 10-25 % above or below other transition laws
 * @throws RangeError when a parameter is outside its range
 * @source Dunlop 1991, as printed in the EPANET 2 Users Manual, appendix D
 */
export function frictionFactorDunlop(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 2000, TURBULENT_START, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  const y2 = relativeRoughness / 3.7 + 5.74 / TURBULENT_START ** 0.9;
  const y3 = -TWO_LOG10E * Math.log(y2);
  const fa = 1 / (y3 * y3);
  const fb = fa * (2 - (0.9 * 2 * TWO_LOG10E * (5.74 / TURBULENT_START ** 0.9)) / (y2 * y3));
  const r = reynolds / 2000;
  const x4 = r * (0.032 - 3 * fa + 0.5 * fb);
  return 7 * fa - fb + r * (0.128 - 17 * fa + 2.5 * fb + r * (-0.128 + 13 * fa - 2 * fb + x4));
}

/**
 * Darcy friction factor at any Reynolds number, built from the explicit laws.
 *
 * @formula 64/Re up to Re 2000; Dunlop's cubic to 4000; f = 0.25 / log10(eD/3.7 + 5.74/Re^0.9)^2 above
 * @param reynolds Reynolds number [-] 1e-6..1e9
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid for comparison with programs that use these laws
 * @throws RangeError when a parameter is outside its range
 * @source EPANET 2 Users Manual, appendix D
 */
export function frictionFactorSwameeJainDunlop(reynolds: number, relativeRoughness: number): number {
  inRange('reynolds', reynolds, 1e-6, LAW_MAX_REYNOLDS, '-');
  inRange('relativeRoughness', relativeRoughness, 0, LAW_MAX_ROUGHNESS, '-');
  if (reynolds <= 2000) return 64 / reynolds;
  if (reynolds < TURBULENT_START) return frictionFactorDunlop(reynolds, relativeRoughness);
  const l = Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9);
  return 0.25 / (l * l);
}
