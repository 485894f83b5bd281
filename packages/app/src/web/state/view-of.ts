import type { View } from '../protocol.ts';
import type { DeskState } from './desk-state.ts';
import { SCALES } from './promise-scales.ts';

/** Width and height of drawings that do not lie on the sheet [px]. */
const UNSEEN = 600;

/** What the engine has to know of the desk to draw it. */
export function viewOf(s: DeskState): View {
  return {
    leaf: s.leaf,
    units: s.units,
    sheet: s.printing ? 'print' : s.sheet,
    duty: s.duty,
    lit: s.lit,
    slot: s.slot,
    working: s.working,
    upright: s.fold !== 'desk' && !s.printing,
    // Another sheet of the job may be the first that is opened: then nobody has measured the scene yet.
    sceneWidth: s.sceneWidth || UNSEEN,
    sceneHeight: s.sceneHeight || UNSEEN,
    lineWidth: s.lineWidth || UNSEEN,
    hold: s.hold,
    // In a drag every step counts; what is out of sight is drawn when it is let go.
    spared: s.hold === undefined ? [] : s.outOfSight,
    curveWidth: s.curveWidth,
    plumbing: s.plumbing,
    tried: s.tried,
    compared: s.compared,
    ...SCALES[s.fold],
  };
}
