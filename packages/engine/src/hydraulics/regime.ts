/** Which of its smooth pieces every law of a solved circuit is on. */
import { CUBIC, GROUP, GROUP_NUMBERS, LOWER, PLACES, W } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { FRICTION_COLEBROOK, FRICTION_SWAMEE_JAIN } from './friction-kernel.ts';
import type { Coefficients } from './element-coefficients.ts';

/** Re/100 at which friction laws change. */
const TURBULENT_W = 40;
const LAMINAR_W = 23;
const LAMINAR_W_SWAMEE_JAIN = 20;
const PER_BRANCH = 3;

export function regimeSize(c: Circuit): number {
  return PER_BRANCH * c.branches + c.groupElement.length;
}

export function writeRegime(c: Circuit, coefficients: Coefficients, out: Float64Array): void {
  let i = 0;
  for (let b = 0; b < c.branches; b++) {
    out[i++] = c.shut[b]!;
    out[i++] = c.ruling[b]!;
    out[i++] = c.cubic[b * CUBIC + LOWER]!;
    for (let k = c.places[b * PLACES + GROUP]!; k < c.groupEnd2[b]!; k++) {
      const w = Math.abs(c.flow[b]!) * c.group[k * GROUP_NUMBERS + W]!;
      const { law, coilRatio } = coefficients.friction[c.groupElement[k]!]!;
      const laminar = law === FRICTION_SWAMEE_JAIN ? LAMINAR_W_SWAMEE_JAIN : LAMINAR_W;
      const changes = coilRatio === 0 && (law === FRICTION_COLEBROOK || law === FRICTION_SWAMEE_JAIN);
      // Where other laws change is left to the fit to notice.
      out[i++] = !changes ? -1 : w < laminar ? 0 : w < TURBULENT_W ? 1 : 2;
    }
  }
}
