import type { DutyProof, Proof } from '../rig/index.ts';
import { rigSilhouette, type Silhouette } from './rig-silhouette.ts';
import { roundScale, sceneScale, type SceneScale } from './scene-scale.ts';
import type { ThrowSceneOptions } from './scene-options.ts';

const FOOT = 48;
const SKY = 40;

/** Where everything lies in the scene of a duty without a target for a gun. */
export interface SprayLayout {
  readonly scale: SceneScale;
  readonly height: number;
  readonly rig: Silhouette;
}

export function sprayLayout(proof: Proof, duty: DutyProof, options: ThrowSceneOptions): SprayLayout {
  const { width } = options;
  const rig = rigSilhouette(proof, duty);
  const behind = duty.duty.open[0] === 'transfer' ? 5.2 : 3.6;
  const ahead = 2;
  const top = Math.max(rig.height, (duty.duty.outletHeight ?? 0) + 0.6, 2);
  const room = { width: width - 60, height: (options.height ?? 300) - FOOT - SKY };
  const n = roundScale(rig.length + behind + ahead, top, room);
  const k = sceneScale(n, 0, 0).k;
  const ground = SKY + top * k;
  const origin = (width + (rig.length + ahead - behind) * k) / 2;
  return { scale: sceneScale(n, origin, ground), height: Math.ceil(ground + FOOT), rig };
}
