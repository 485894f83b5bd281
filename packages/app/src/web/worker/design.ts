/** Choosing a rig: fetched when a brief has none yet, since most changes are of a rig that is there. */
export { designRig, redesignRig } from '@spraywright/engine/rig';
