import type { DutyProof, Proof } from '../../rig/index.ts';
import { rigHandles, type SceneHandle } from '../scene-handles.ts';
import type { ViewOptions } from './view-options.ts';
import { viewsLayout } from './views-layout.ts';

/** A target for a finger or a pointer is never smaller, nor so large that a page cannot be moved under a finger [px]. */
const LEAST = 24;
const LARGEST = 56;

/** The handles of a rig's views: level and places along the deck in the side view, places both ways in the plan. */
export function rigViewHandles(proof: Proof, duty: DutyProof, options: ViewOptions): SceneHandle[] {
  const layout = viewsLayout(proof, duty, options);
  if (layout === undefined) return [];
  const { placement, k, top, x, rig, side } = layout;
  const { deckLength, deckWidth } = placement.carrier;
  const standing = placement.parts
    .filter((p) => p.on === undefined && p.kind !== 'boom')
    .sort((a, b) => a.z + a.height - (b.z + b.height));
  return [
    ...rigHandles(proof, duty, rig, side.scale, side.right),
    ...standing.map((p): SceneHandle => {
      const aside = Math.max(0, (deckWidth - p.width) / 2);
      return {
        id: 'across',
        item: p.item,
        x: x(p.x),
        y: top.middle + p.y * k,
        width: Math.min(LARGEST, Math.max(LEAST, p.length * k)),
        height: Math.min(LARGEST, Math.max(LEAST, p.width * k)),
        axis: 'y',
        perPixel: 1 / k,
        value: p.y,
        min: Math.min(p.y, -aside),
        max: Math.max(p.y, aside),
        along: {
          perPixel: 1 / k,
          value: p.x,
          min: p.length / 2,
          max: Math.max(p.length, deckLength) - p.length / 2,
        },
      };
    }),
  ];
}
