import { inRange } from '../in-range.ts';
import { frictionFactorCrane } from './crane.ts';

/**
 * Loss coefficient of a tee passed straight through.
 *
 * @formula K = 20 fT
 * @param bore bore of the leg [m] 0.0002..0.5
 * @returns loss coefficient on the leg's own velocity [-]
 * @valid the constant value a solver can use: never negative, whatever the split; Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29, multiplier from memory
 */
export function lossCoefficientTeeRun(bore: number): number {
  return 20 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a tee passed through its branch.
 *
 * @formula K = 60 fT
 * @param bore bore of the leg [m] 0.0002..0.5
 * @returns loss coefficient on the leg's own velocity [-]
 * @valid the constant value a solver can use: never negative, whatever the split; Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29, multiplier from memory
 */
export function lossCoefficientTeeBranch(bore: number): number {
  return 60 * frictionFactorCrane(bore);
}

/** Loss coefficients of the two legs of a tee on the velocity of the combined flow; either may be negative. */
export interface TeeSplitLoss {
  readonly branch: number;
  readonly run: number;
}

/**
 * Loss coefficients of a 90 degree tee of equal bores that divides a flow.
 *
 * @formula r = Q_branch/Q; K_branch = (1 + 0.3 r²)²; K_run = M r², M = 2(2r - 1) for r <= 0.5, else 0.3(2r - 1)
 * @param branchFraction share of the flow that leaves through the branch [-] 0..1
 * @result branch loss coefficient to the branch [-]
 * @result run loss coefficient to the run [-]
 * @valid on the combined velocity; the run comes out negative below one half: not for a monotone solver
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 (2009 and later, with its errata), equal bores
 */
export function teeDividingLoss(branchFraction: number): TeeSplitLoss {
  inRange('branchFraction', branchFraction, 0, 1, '-');
  const square = branchFraction * branchFraction;
  const m = (branchFraction <= 0.5 ? 2 : 0.3) * (2 * branchFraction - 1);
  return { branch: (1 + 0.3 * square) ** 2, run: m * square };
}

/**
 * Loss coefficients of a 90 degree tee of equal bores in which two flows join.
 *
 * @formula r = Q_branch/Q; K_branch = C (1 + r² - 2(1 - r)²), C = 0.9(1 - r) for r <= 0.4, else 0.55; K_run = 1.55 r - r²
 * @param branchFraction share of the joined flow that comes from the branch [-] 0..1
 * @result branch loss coefficient from the branch [-]
 * @result run loss coefficient from the run [-]
 * @valid on the joined velocity; the branch comes out negative at small shares: not for a monotone solver
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 (2009 and later, with its errata), equal bores; its example 7-35
 */
export function teeJoiningLoss(branchFraction: number): TeeSplitLoss {
  inRange('branchFraction', branchFraction, 0, 1, '-');
  const r = branchFraction;
  const c = r <= 0.4 ? 0.9 * (1 - r) : 0.55;
  return { branch: c * (1 + r * r - 2 * (1 - r) ** 2), run: 1.55 * r - r * r };
}
