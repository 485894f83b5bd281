import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { wholeInRange } from '../whole-in-range.ts';

/**
 * Tension in the legs of a lifting sling.
 *
 * @formula T = m g / (n sin α), α from the horizontal
 * @param mass mass lifted [kg] 0..1e6
 * @param legsCounted legs that are counted: two of a four-leg bridle on a rigid load [-] 1..4
 * @param legAngle angle of the legs from the horizontal [rad] 0.35..1.5708
 * @returns tension in each leg [N]
 * @valid lift the rig empty only, and mark the eyes so; the centre of mass under the hook
 * @throws RangeError when a parameter is outside its range
 * @source Statics; a rigid load on four legs is statically indeterminate, so two are counted (rigging practice, from memory)
 */
export function slingLegTension(mass: number, legsCounted: number, legAngle: number): number {
  inRange('mass', mass, 0, 1e6, 'kg');
  wholeInRange('legsCounted', legsCounted, 1, 4);
  inRange('legAngle', legAngle, 0.35, Math.PI / 2 + 1e-9, 'rad');
  return (mass * STANDARD_GRAVITY) / (legsCounted * Math.sin(legAngle));
}

export interface LiftingLug {
  readonly yieldStrength: number;
  readonly ultimateStrength: number;
  readonly designFactor: number;
  readonly thickness: number;
  readonly edgeBeyondHole: number;
  readonly sideEdge: number;
  readonly holeDiameter: number;
  readonly pinDiameter: number;
  readonly curvedEdge: boolean;
}

export interface LiftingLugCapacity {
  readonly effectiveWidth: number;
  readonly strengthReduction: number;
  readonly shearAngle: number;
  readonly tension: number;
  readonly splitting: number;
  readonly doubleShear: number;
  readonly bearing: number;
  readonly allowable: number;
}

/**
 * Load that a lifting eye cut from plate may carry on its pin.
 *
 * @formula P_t = C_r F_u/(1.2 N) 2 t b_eff; P_b = C_r F_u/(1.2 N)[1.13 a + 0.92 b_e/(1 + b_e/D_h)] t; P_v = 0.70 F_u/(1.2 N) A_v; P_p = 1.25 F_y/N t D_p
 * @param p.yieldStrength yield strength of the plate [Pa] 1e7..1e9
 * @param p.ultimateStrength ultimate strength of the plate [Pa] 1e7..1.5e9
 * @param p.designFactor design factor: 2 category A, 3 category B, the normal one [-] 1..6
 * @param p.thickness thickness of the plate [m] 0.001..0.2
 * @param p.edgeBeyondHole plate beyond the hole in the direction of the load, a [m] 0.001..1
 * @param p.sideEdge plate beside the hole, b_e [m] 0.001..1
 * @param p.holeDiameter diameter of the hole [m] 0.002..0.5
 * @param p.pinDiameter diameter of the pin [m] 0.002..0.5
 * @param p.curvedEdge whether the edge is round about the hole [yes/no]
 * @result effectiveWidth width that counts in tension [m]
 * @result strengthReduction reduction for a loose pin, C_r [-]
 * @result shearAngle angle of the shear planes [rad]
 * @result tension capacity in tension beside the hole, P_t [N]
 * @result splitting capacity against splitting beyond the hole, P_b [N]
 * @result doubleShear capacity in double shear, P_v [N]
 * @result bearing capacity of the pin's bearing, P_p [N]
 * @result allowable the least of the four [N]
 * @valid pin at least 0.9 of the hole needs no reduction in some editions; here C_r always counts. A qualified person must approve lifting eyes
 * @throws RangeError when a parameter is outside its range
 * @source ASME BTH-1-2005 equations 3-45 to 3-53 as used in a stored worksheet
 */
export function liftingLugCapacity(p: LiftingLug): LiftingLugCapacity {
  inRange('yieldStrength', p.yieldStrength, 1e7, 1e9, 'Pa');
  inRange('ultimateStrength', p.ultimateStrength, p.yieldStrength, 1.5e9, 'Pa');
  inRange('designFactor', p.designFactor, 1, 6, '-');
  inRange('thickness', p.thickness, 0.001, 0.2, 'm');
  inRange('edgeBeyondHole', p.edgeBeyondHole, 0.001, 1, 'm');
  inRange('sideEdge', p.sideEdge, 0.001, 1, 'm');
  inRange('holeDiameter', p.holeDiameter, 0.002, 0.5, 'm');
  inRange('pinDiameter', p.pinDiameter, 0.002, p.holeDiameter, 'm');
  const { thickness: t, sideEdge: be, edgeBeyondHole: a, holeDiameter: dh, pinDiameter: dp } = p;
  const effectiveWidth = Math.min(
    be,
    4 * t,
    be * 0.6 * (p.ultimateStrength / p.yieldStrength) * Math.sqrt(dh / be),
  );
  const strengthReduction = 1 - 0.275 * Math.sqrt(1 - (dp / dh) ** 2);
  const base = p.ultimateStrength / (1.2 * p.designFactor);
  const tension = strengthReduction * base * 2 * t * effectiveWidth;
  const splitting = strengthReduction * base * (1.13 * a + (0.92 * be) / (1 + be / dh)) * t;
  const shearAngle = ((55 * Math.PI) / 180) * (dp / dh);
  const planeLength = a + (dp / 2) * (1 - Math.cos(shearAngle)) - edgeLoss(p, shearAngle);
  const doubleShear = 0.7 * base * 2 * planeLength * t;
  const bearing = ((1.25 * p.yieldStrength) / p.designFactor) * t * dp;
  const allowable = Math.min(tension, splitting, doubleShear, bearing);
  return {
    effectiveWidth,
    strengthReduction,
    shearAngle,
    tension,
    splitting,
    doubleShear,
    bearing,
    allowable,
  };
}

/** What a round edge takes off the shear planes, which run beside the middle line. */
function edgeLoss(p: LiftingLug, shearAngle: number): number {
  if (!p.curvedEdge) return 0;
  const radius = p.edgeBeyondHole + p.holeDiameter / 2;
  return radius - Math.sqrt(radius ** 2 - ((p.pinDiameter / 2) * Math.sin(shearAngle)) ** 2);
}
