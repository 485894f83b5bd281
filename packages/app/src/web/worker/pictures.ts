import * as drawings from '@spraywright/engine/drawings';
import { withArcs, type DutyProof, type Proof, type Rig } from '@spraywright/engine/rig';
import type { Pictures, View } from '../protocol.ts';
import { handlesOf } from './handles.ts';
import { uprightLine } from './upright-line.ts';

/** The drawings of a duty at the sizes the page has for them. */
export function picturesOf(rig: Rig, proof: Proof, duty: DutyProof, view: View): Pictures {
  const palette = drawings.PALETTES[view.sheet];
  const scene = {
    width: view.sceneWidth,
    height: view.sceneHeight,
    units: view.units,
    palette,
    lit: view.lit,
    hold: view.hold,
  };
  const drawn = view.leaf === 'desk' ? withArcs(rig, duty) : duty;
  return {
    scene: drawings.throwScene(proof, drawn, scene),
    ...(view.leaf === 'desk' ? { handles: handlesOf(rig, proof, drawn, scene) } : {}),
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
