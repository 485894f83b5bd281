import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { KSI } from '../us-measure.ts';
import { FILLER_SHEAR_KSI, SAFETY_FACTORS } from './frame-materials.data.ts';

/** Throat of an equal-leg fillet over its leg, as the codes round it. */
const THROAT = 0.707;

/**
 * Load that a fillet weld in steel may carry.
 *
 * @formula F = 0.60 F_EXX × 0.707 w L / Ω
 * @param electrodeStrength tensile strength of the electrode [Pa] 1e8..1e9
 * @param leg leg of the fillet [m] 0.001..0.05
 * @param length length of weld [m] 0..100
 * @param factor safety factor Ω; default 2 [-] 1..5
 * @result perLength load per length of weld [N/m]
 * @result capacity load of the whole weld [N]
 * @valid load along the weld; the parts joined are checked beside it; fatigue is not covered
 * @throws RangeError when a parameter is outside its range
 * @source AISC 360 J2, from memory: 0.928 kip/in per sixteenth with E70
 */
export function filletWeldSteel(
  electrodeStrength: number,
  leg: number,
  length: number,
  factor = 2,
): FilletWeld {
  inRange('electrodeStrength', electrodeStrength, 1e8, 1e9, 'Pa');
  checkWeld(leg, length, factor);
  const perLength = (0.6 * electrodeStrength * THROAT * leg) / factor;
  return { perLength, capacity: perLength * length };
}

/**
 * Load that a fillet weld in aluminium may carry.
 *
 * @formula F = F_su × 0.707 w L / 1.95
 * @param filler filler alloy [one of 4043, 5356]
 * @param leg leg of the fillet [m] 0.001..0.05
 * @param length length of weld [m] 0..100
 * @param factor safety factor; default 1.95 [-] 1..5
 * @result perLength load per length of weld [N/m]
 * @result capacity load of the whole weld [N]
 * @valid the softened metal beside the weld often governs; fatigue is not covered
 * @throws RangeError when a parameter is outside its range
 * @source Aluminum Design Manual form; filler shear strengths 11.5 and 17 ksi and factor from memory
 */
export function filletWeldAluminium(
  filler: keyof typeof FILLER_SHEAR_KSI,
  leg: number,
  length: number,
  factor: number = SAFETY_FACTORS.aluminiumRupture,
): FilletWeld {
  oneOfChoices('filler', filler, Object.keys(FILLER_SHEAR_KSI));
  checkWeld(leg, length, factor);
  const perLength = (FILLER_SHEAR_KSI[filler] * KSI * THROAT * leg) / factor;
  return { perLength, capacity: perLength * length };
}

export interface FilletWeld {
  readonly perLength: number;
  readonly capacity: number;
}

function checkWeld(leg: number, length: number, factor: number): void {
  inRange('leg', leg, 0.001, 0.05, 'm');
  inRange('length', length, 0, 100, 'm');
  inRange('factor', factor, 1, 5, '-');
}
