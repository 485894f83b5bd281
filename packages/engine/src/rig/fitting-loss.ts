import type { PartOf } from '../catalogue/index.ts';
import {
  lossCoefficientBallValve,
  lossCoefficientBallValveReduced,
  lossCoefficientElbow90,
  lossCoefficientLiftCheck,
  lossCoefficientSwingCheck,
  lossCoefficientTeeBranch,
  lossCoefficientTeeRun,
  lossCoefficientThreeWayTurned,
} from '../physics/index.ts';

/** Port of a standard-port ball valve over its pipe bore, and the half-angle of its cones. Common practice, no source. */
const STANDARD_PORT = 0.75;
const STANDARD_PORT_ANGLE = 0.35;

/** Loss coefficient of a valve by its form, on the velocity in its bore. A three-way valve is taken turned: the dearer way. */
export function valveK(form: PartOf<'valve'>['form'], bore: number): number {
  switch (form) {
    case 'ball-full-port':
      return lossCoefficientBallValve(bore);
    case 'ball-standard-port':
      return lossCoefficientBallValveReduced(bore, bore * STANDARD_PORT, STANDARD_PORT_ANGLE);
    case 'three-way':
      return lossCoefficientThreeWayTurned(bore);
    case 'swing-check':
      return lossCoefficientSwingCheck(bore);
    // A solenoid valve lifts a disc from a seat, as a lift check does; a maker's flow figure replaces this where there is one.
    case 'solenoid':
    case 'lift-check':
      return lossCoefficientLiftCheck(bore);
  }
}

export const elbowK = lossCoefficientElbow90;
export const teeRunK = lossCoefficientTeeRun;
export const teeBranchK = lossCoefficientTeeBranch;
