import type { PartOf } from '../catalogue/index.ts';
import { lossCoefficientCheckValve, lossCoefficientFitting } from '../physics/index.ts';

/** Loss coefficient of a valve by its form, on the velocity in its bore. A three-way valve is taken turned: the dearer way. */
export function valveK(form: PartOf<'valve'>['form'], bore: number): number {
  switch (form) {
    case 'ball-full-port':
      return lossCoefficientFitting('ball-valve-full-port', bore).lossCoefficient;
    case 'ball-standard-port':
      return lossCoefficientFitting('ball-valve-standard-port', bore).lossCoefficient;
    case 'three-way':
      return lossCoefficientFitting('three-way-valve-turned', bore).lossCoefficient;
    case 'swing-check':
      return lossCoefficientCheckValve('swing', bore);
    // A solenoid valve lifts a disc from a seat, as a lift check does; a maker's flow figure replaces this where there is one.
    case 'solenoid':
    case 'lift-check':
      return lossCoefficientCheckValve('lift', bore);
  }
}

export const elbowK = (bore: number): number => lossCoefficientFitting('elbow-90', bore).lossCoefficient;
export const teeRunK = (bore: number): number => lossCoefficientFitting('tee-run', bore).lossCoefficient;
export const teeBranchK = (bore: number): number =>
  lossCoefficientFitting('tee-branch', bore).lossCoefficient;
