import * as drawings from '@spraywright/engine/drawings';
import type { DutyProof, Proof } from '@spraywright/engine/rig';
import type { Pictures, View } from '../protocol.ts';
import { uprightLine } from './upright-line.ts';

/** The drawings of a duty at the sizes the page has for them. */
export function picturesOf(proof: Proof, duty: DutyProof, view: View): Pictures {
  const palette = drawings.PALETTES[view.sheet];
  return {
    scene: drawings.throwScene(proof, duty, {
      width: view.sceneWidth,
      height: view.sceneHeight,
      units: view.units,
      palette,
      lit: view.lit,
    }),
    ...(view.upright && duty.open.status === 'converged'
      ? { line: '', upright: uprightLine(proof, duty, view.units) }
      : {
          line: drawings.pressureLine(proof, duty, {
            width: view.lineWidth,
            units: view.units,
            palette,
            lit: view.lit,
          }),
        }),
  };
}
