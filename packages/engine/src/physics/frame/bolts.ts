import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { INCH, KSI, STANDARD_GRAVITY } from '../us-measure.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { COARSE_BOLTS, PROOF_STRESS_KSI, type BoltGrade, type CoarseBolt } from './bolts.data.ts';

/**
 * Stress area, proof load, clamp load and torque of a bolt.
 *
 * @formula A_t = 0.7854 (D - 0.9743 p)²; clamp = f σ_p A_t; T = K D clamp
 * @param diameter nominal diameter [m] 0.003..0.1
 * @param pitch pitch of the thread [m] 0.0003..0.01
 * @param proofStress proof stress [Pa] 1e8..1.5e9
 * @param preloadFraction share of the proof load taken as clamp; default 0.75 [-] 0..1
 * @param nutFactor nut factor K; default 0.20, dry [-] 0.05..0.5
 * @result stressArea tensile stress area [m2]
 * @result proofLoad load at proof stress [N]
 * @result clampLoad clamp load [N]
 * @result torque tightening torque [N.m]
 * @valid the nut factor scatters by 25 % and more from bolt to bolt (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source SAE J429 grade table with clamp = 75 % of proof and K = 0.20
 */
export function boltPreload(
  diameter: number,
  pitch: number,
  proofStress: number,
  preloadFraction = 0.75,
  nutFactor = 0.2,
): BoltPreload {
  inRange('diameter', diameter, 0.003, 0.1, 'm');
  inRange('pitch', pitch, 0.0003, 0.01, 'm');
  inRange('proofStress', proofStress, 1e8, 1.5e9, 'Pa');
  inRange('preloadFraction', preloadFraction, 0, 1, '-');
  inRange('nutFactor', nutFactor, 0.05, 0.5, '-');
  const stressArea = 0.7854 * (diameter - 0.9743 * pitch) ** 2;
  const proofLoad = proofStress * stressArea;
  const clampLoad = preloadFraction * proofLoad;
  return { stressArea, proofLoad, clampLoad, torque: nutFactor * diameter * clampLoad };
}

export interface BoltPreload {
  readonly stressArea: number;
  readonly proofLoad: number;
  readonly clampLoad: number;
  readonly torque: number;
}

/**
 * Stress area, proof load, clamp load and dry torque of a coarse inch bolt by size and grade.
 *
 * @formula as boltPreload with the grade's proof stress, 75 % and K = 0.20
 * @param size size and threads per inch [one of 1/4-20, 5/16-18, 3/8-16, 7/16-14, 1/2-13, 9/16-12, 5/8-11, 3/4-10]
 * @param grade grade of the bolt [one of 2, 5, 8]
 * @result stressArea tensile stress area [m2]
 * @result proofLoad load at proof stress [N]
 * @result clampLoad clamp load [N]
 * @result torque dry tightening torque [N.m]
 * @throws RangeError when the size or the grade is unknown
 * @source SAE J429 grades 2 and 5 (table reproduced); grade 8 from memory
 */
export function coarseBolt(size: CoarseBolt, grade: BoltGrade): BoltPreload {
  oneOfChoices('size', size, Object.keys(COARSE_BOLTS));
  oneOfChoices('grade', grade, Object.keys(PROOF_STRESS_KSI));
  const { diameterIn, threadsPerInch } = COARSE_BOLTS[size];
  return boltPreload(diameterIn * INCH, INCH / threadsPerInch, PROOF_STRESS_KSI[grade] * KSI);
}

/**
 * Shear and uplift in the bolts of a skid that the carrier brakes.
 *
 * @formula shear = m a / n; uplift = (m a h - m g x)/(s n/2) when positive; margin = g x/(a h)
 * @param mass mass of the loaded skid [kg] 0..1e5
 * @param deceleration deceleration [m/s2] 0.1..50
 * @param centreHeight centre of mass above the bolted floor [m] 0..5
 * @param boltSpacing distance between front and rear bolts [m] 0.05..10
 * @param centreFromFront centre of mass behind the front bolts [m] 0..10
 * @param bolts number of bolts, half of them at the rear [-] 2..40
 * @result shearPerBolt shear force on each bolt [N]
 * @result rearBoltUplift tension in each rear bolt; 0 when gravity holds the rear down [N]
 * @result overturnMargin moment of the weight over moment of braking, below 1 the rear bolts pull; null when braking has no arm to turn it over [-]
 * @valid no friction credited; the 0.8 g of the rule goes with breaking strength
 * @throws RangeError when a parameter is outside its range or the number of bolts is odd
 * @source Statics; 49 CFR 393.102
 */
export function skidBoltForces(
  mass: number,
  deceleration: number,
  centreHeight: number,
  boltSpacing: number,
  centreFromFront: number,
  bolts: number,
): SkidBoltForces {
  inRange('mass', mass, 0, 1e5, 'kg');
  inRange('deceleration', deceleration, 0.1, 50, 'm/s2');
  inRange('centreHeight', centreHeight, 0, 5, 'm');
  inRange('boltSpacing', boltSpacing, 0.05, 10, 'm');
  inRange('centreFromFront', centreFromFront, 0, boltSpacing, 'm');
  wholeInRange('bolts', bolts, 2, 40);
  if (bolts % 2 !== 0) throw new RangeError(`bolts is ${bolts}; it must be even, half of them at the rear`);
  const turning = mass * deceleration * centreHeight;
  const holding = mass * STANDARD_GRAVITY * centreFromFront;
  // From the lengths, so that an empty skid has its margin too.
  const margin = (STANDARD_GRAVITY * centreFromFront) / (deceleration * centreHeight);
  return {
    shearPerBolt: (mass * deceleration) / bolts,
    rearBoltUplift: Math.max(0, turning - holding) / boltSpacing / (bolts / 2),
    overturnMargin: Number.isFinite(margin) ? margin : null,
  };
}

export interface SkidBoltForces {
  readonly shearPerBolt: number;
  readonly rearBoltUplift: number;
  readonly overturnMargin: number | null;
}
