import type { DutyProof, DutyReach, Proof, Target } from '../rig/index.ts';
import { detailPlace, type DetailPlace } from './detail-view.ts';
import { HOUSE_DEPTH } from './house.ts';
import { DISTANCE_FOOT } from './reach-rows.ts';
import { rigSilhouette, type Silhouette } from './rig-silhouette.ts';
import { roundScale, sceneScale, type SceneScale } from './scene-scale.ts';
import type { ThrowSceneOptions } from './scene-options.ts';
import { usualTree, type Tree } from './tree.ts';

export type Thrown = DutyProof & { readonly reach: DutyReach };

const HEIGHT_FOOT = 50;
const SKY = 30;
/** What the far end of a rig may stand out beyond its deck: a drawbar, or the vehicle it lies on [m]. */
const AHEAD = 1.8;

/** Where everything of a throw's scene lies on the sheet. */
export interface ThrowLayout {
  readonly scale: SceneScale;
  readonly height: number;
  /** Room right of the scene for the ruler of heights [px]. */
  readonly rulerRoom: number;
  readonly rig: Silhouette;
  /** Hose end of the rig [px]. */
  readonly rigRight: number;
  readonly detail: DetailPlace | undefined;
  readonly tree: Tree | undefined;
}

/** Chooses a round scale at which the rig, the hose and the throw find room; a scale that is held is kept. */
export function throwLayout(
  proof: Proof,
  duty: Thrown,
  target: Target,
  options: ThrowSceneOptions,
): ThrowLayout {
  const { width, hold } = options;
  const { reach } = duty;
  const upright = target.aim === 'height';
  const narrow = width < 560;
  const rulerRoom = upright ? (narrow ? 122 : 178) : narrow ? 12 : 30;
  const foot = upright ? HEIGHT_FOOT : DISTANCE_FOOT;
  const rig = rigSilhouette(proof, duty);
  const tree =
    upright && !proof.duties.some((d) => d.duty.target?.aim === 'roof')
      ? usualTree(reach.standoff, target.height)
      : undefined;
  const extent = extentOf(reach, target, tree);
  const hoseGap = narrow ? 46 : 84;
  const room = {
    width: width - rulerRoom - hoseGap - 34,
    height: (options.height ?? Math.max(260, Math.round(width * 0.56))) - foot - SKY,
  };
  const n = hold?.n ?? roundScale(rig.length + AHEAD + extent.right, Math.max(extent.top, rig.height), room);
  const k = sceneScale(n, 0, 0).k;
  const ground = hold?.ground ?? SKY + Math.max(extent.top, rig.height, 3) * k;
  const origin =
    hold === undefined
      ? Math.max(width - rulerRoom - extent.right * k - 12, (rig.length + AHEAD) * k + hoseGap + 14)
      : hold.origin + (hold.keeps === 'target' ? (hold.standoff - reach.standoff) * k : 0);
  const scale = sceneScale(n, origin, ground);
  const left = 14 + (rig.length + AHEAD) * k;
  const free = duty.duty.hoseOut === undefined ? Infinity : duty.duty.hoseOut * k;
  const rigRight = Math.max(left, Math.min(origin - free, origin - hoseGap));
  const space = {
    left: 18,
    right: Math.min((hold?.origin ?? origin) - 24, width * 0.52),
    top: 44,
    bottom: scale.y(rig.height) - 34,
  };
  return {
    scale,
    height: hold?.height ?? Math.ceil(ground + foot),
    rulerRoom,
    rig,
    rigRight,
    detail: narrow ? undefined : detailPlace(rig, AHEAD * 0.7, space, scale),
    tree,
  };
}

/** Farthest right and highest of everything that is drawn [m]. */
function extentOf(reach: DutyReach, target: Target, tree: Tree | undefined): { right: number; top: number } {
  const points = [...reach.arcFarthest, ...reach.arcBulk, ...reach.arcHigh];
  const end = target.aim === 'height' ? reach.standoff + (tree === undefined ? 2.6 : tree.spread / 2) : 0;
  const house = target.aim === 'roof' ? target.distance + HOUSE_DEPTH + 0.3 : 0;
  const house2 = target.aim === 'roof' ? target.height + 2.6 : 0;
  return {
    right: Math.max(
      end,
      house,
      target.aim === 'height' ? 0 : Math.max(reach.asked, reach.farthest, reach.band95),
      ...points.map(([x]) => x),
    ),
    top: Math.max(
      2.2,
      target.aim === 'height'
        ? Math.max(reach.asked, reach.farthest, Math.min(reach.band95, 1.12 * reach.farthest))
        : house2,
      ...points.map(([, z]) => z),
    ),
  };
}
