import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { INCH, KSI, POUND } from '../us-measure.ts';
import { FRAME_MATERIALS, SAFETY_FACTORS, type FrameMaterialId } from './frame-materials.data.ts';

/**
 * Allowable bending stress of steel.
 *
 * @formula σ = F_y / 1.67
 * @param yieldStrength yield strength [Pa] 1e7..1e9
 * @param factor safety factor on yield; default 1.67 [-] 1..5
 * @returns allowable stress [Pa]
 * @valid static strength of a braced section; buckling and fatigue are not covered
 * @throws RangeError when a parameter is outside its range
 * @source AISC 360 allowable strength design, factor from memory
 */
export function allowableSteelStress(
  yieldStrength: number,
  factor: number = SAFETY_FACTORS.steelYield,
): number {
  inRange('yieldStrength', yieldStrength, 1e7, 1e9, 'Pa');
  inRange('factor', factor, 1, 5, '-');
  return yieldStrength / factor;
}

/**
 * Allowable tension stress of aluminium.
 *
 * @formula σ = min(F_y / 1.65, F_u / 1.95)
 * @param yieldStrength yield strength [Pa] 1e7..1e9
 * @param ultimateStrength ultimate strength [Pa] 1e7..1e9
 * @param yieldFactor factor on yield; default 1.65 [-] 1..5
 * @param ruptureFactor factor on ultimate; default 1.95 [-] 1..5
 * @returns allowable stress [Pa]
 * @valid within 1 in of a weld use the welded strengths: 47 % of the unwelded in 6061-T6
 * @throws RangeError when a parameter is outside its range
 * @source Aluminum Design Manual factors, from memory; 6061-T6 strengths: 49 CFR 178.46
 */
export function allowableAluminiumStress(
  yieldStrength: number,
  ultimateStrength: number,
  yieldFactor: number = SAFETY_FACTORS.aluminiumYield,
  ruptureFactor: number = SAFETY_FACTORS.aluminiumRupture,
): number {
  inRange('yieldStrength', yieldStrength, 1e7, 1e9, 'Pa');
  inRange('ultimateStrength', ultimateStrength, 1e7, 1e9, 'Pa');
  inRange('yieldFactor', yieldFactor, 1, 5, '-');
  inRange('ruptureFactor', ruptureFactor, 1, 5, '-');
  return Math.min(yieldStrength / yieldFactor, ultimateStrength / ruptureFactor);
}

/**
 * Strength of an aluminium section of which a part is softened by welding.
 *
 * @formula F = F_n - (A_wz/A_g)(F_n - F_w)
 * @param unwelded strength away from welds [Pa] 1e6..1e9
 * @param welded strength within 1 in of a weld [Pa] 1e6..1e9
 * @param weldedArea area of the section within 1 in of a weld [m2] 0..1
 * @param grossArea whole area of the section [m2] 1e-8..1
 * @returns strength to reckon with [Pa]
 * @valid for welds along the member; a weld across the tension flange softens the whole section: use the welded strength
 * @throws RangeError when a parameter is outside its range
 * @source Linear weighting of the Aluminum Design Manual, from memory
 */
export function partlyWeldedStrength(
  unwelded: number,
  welded: number,
  weldedArea: number,
  grossArea: number,
): number {
  inRange('unwelded', unwelded, 1e6, 1e9, 'Pa');
  inRange('welded', welded, 1e6, unwelded, 'Pa');
  inRange('grossArea', grossArea, 1e-8, 1, 'm2');
  inRange('weldedArea', weldedArea, 0, grossArea, 'm2');
  return unwelded - (weldedArea / grossArea) * (unwelded - welded);
}

/**
 * Strength, allowable stress, stiffness and density of a frame material.
 *
 * @formula steel F_y/1.67; aluminium min(F_y/1.65, F_u/1.95)
 * @param material frame material [one of steel-a36, steel-a500b, steel-a500c, aluminium-6061-t6, aluminium-6061-t6-welded]
 * @result yieldStrength yield strength [Pa]
 * @result ultimateStrength ultimate strength [Pa]
 * @result allowable allowable stress [Pa]
 * @result elasticity modulus of elasticity [Pa]
 * @result density density [kg/m3]
 * @throws RangeError when the material is unknown
 * @source ASTM A36 and A500 summaries; 49 CFR 178.46; Kissell and Ferry 2002; factors from memory
 */
export function frameMaterial(material: FrameMaterialId): FrameMaterialValues {
  oneOfChoices('material', material, Object.keys(FRAME_MATERIALS));
  const m = FRAME_MATERIALS[material];
  const yieldStrength = m.yieldKsi * KSI;
  const ultimateStrength = m.ultimateKsi * KSI;
  return {
    yieldStrength,
    ultimateStrength,
    allowable:
      m.metal === 'steel'
        ? allowableSteelStress(yieldStrength)
        : allowableAluminiumStress(yieldStrength, ultimateStrength),
    elasticity: m.elasticityKsi * KSI,
    density: (m.densityLbIn3 * POUND) / INCH ** 3,
  };
}

export interface FrameMaterialValues {
  readonly yieldStrength: number;
  readonly ultimateStrength: number;
  readonly allowable: number;
  readonly elasticity: number;
  readonly density: number;
}
