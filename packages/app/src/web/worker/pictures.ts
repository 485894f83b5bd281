import * as drawings from '@spraywright/engine/drawings';
import { withArcs, type DutyProof, type Proof, type Rig } from '@spraywright/engine/rig';
import type { Pictures, View } from '../protocol.ts';
import { handlesOf, viewHandlesOf } from './handles.ts';
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
    ...(view.leaf === 'desk' ? handled(rig, proof, drawn, scene, view.spared.includes('rig')) : {}),
    ...lineOf(proof, duty, view),
  };
}

function lineOf(proof: Proof, duty: DutyProof, view: View): Pick<Pictures, 'line' | 'upright'> {
  const { units, lit, sheet } = view;
  if (view.upright && duty.open.status === 'converged')
    return { line: '', upright: uprightLine(proof, duty, units) };
  if (view.spared.includes('line')) return {};
  const options = { width: view.lineWidth, units, palette: drawings.PALETTES[sheet], lit };
  return { line: drawings.pressureLine(proof, duty, options) };
}

/** What can be dragged in the scene, and the rig's own views with what can be dragged in them. */
function handled(
  rig: Rig,
  proof: Proof,
  duty: DutyProof,
  options: drawings.ThrowSceneOptions,
  viewsSpared: boolean,
): Pick<Pictures, 'handles' | 'rig'> {
  const handles = handlesOf(rig, proof, duty, options);
  if (viewsSpared) return { handles };
  const svg = drawings.rigViews(proof, duty, options);
  if (svg === undefined) return { handles };
  return { handles, rig: { svg, handles: viewHandlesOf(rig, proof, duty, options, handles.list) } };
}
