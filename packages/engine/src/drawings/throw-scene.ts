import type { DutyProof, Proof } from '../rig/index.ts';
import type { ThrowSceneOptions } from './scene-options.ts';
import { sprayScene } from './spray-scene.ts';
import { drawing, label } from './svg.ts';
import { throwDrawing } from './throw-drawing.ts';

/**
 * A duty seen from the side, to a round scale: rig, hose, operator, and either the throw against its target or, where no
 * gun has a target, how the liquid leaves the rig.
 */
export function throwScene(proof: Proof, duty: DutyProof, options: ThrowSceneOptions): string {
  const { width, palette } = options;
  if (duty.open.status === 'failed')
    return drawing(
      width,
      80,
      `${duty.name}: no drawing, since the duty has no steady state`,
      label(14, 34, 'Not drawn: this duty has no steady state.', {
        size: 14,
        family: 'semi',
        color: palette.broken,
      }),
      label(14, 54, duty.open.reason ?? 'No reason was given.', {
        size: 12,
        family: 'semi',
        color: palette.ink2,
      }),
    );
  const { reach } = duty;
  const target = duty.duty.target;
  return reach === undefined || target === undefined
    ? sprayScene(proof, duty, options)
    : throwDrawing(proof, { ...duty, reach }, target, options);
}
