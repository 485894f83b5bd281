import type { PartOf } from '../catalogue/index.ts';
import { checkLoss, formLoss } from '../hydraulics/index.ts';

/** Loss coefficient of a valve by its form, on the velocity in its bore. A three-way valve is taken turned: the dearer way. */
export function valveK(form: PartOf<'valve'>['form'], bore: number): number {
  switch (form) {
    case 'ball-full-port':
      return formLoss('ball-valve-full-port', bore).lossCoefficient;
    case 'ball-standard-port':
      return formLoss('ball-valve-standard-port', bore).lossCoefficient;
    case 'three-way':
      return formLoss('three-way-valve-turned', bore).lossCoefficient;
    case 'swing-check':
      return checkLoss('swing', bore);
    // A solenoid valve lifts a disc from a seat, as a lift check does; a maker's flow figure replaces this where there is one.
    case 'solenoid':
    case 'lift-check':
      return checkLoss('lift', bore);
  }
}

export const elbowK = (bore: number): number => formLoss('elbow-90', bore).lossCoefficient;
export const teeRunK = (bore: number): number => formLoss('tee-run', bore).lossCoefficient;
export const teeBranchK = (bore: number): number => formLoss('tee-branch', bore).lossCoefficient;
