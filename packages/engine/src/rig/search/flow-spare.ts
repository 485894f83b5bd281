import type { Part } from '../../catalogue/index.ts';
import type { Core } from './core-types.ts';

/** Parts about a main, as far as they are known. */
export interface FlowParts {
  readonly regulator: Part | undefined;
  readonly returnHose: Part | undefined;
  readonly agitator: Part | undefined;
  readonly agitationValve: Part | undefined;
  readonly eductor: Part | undefined;
  readonly eductorValve: Part | undefined;
  /** From the tank to the pump; empty when it is not known. */
  readonly suction: readonly (Part | undefined)[];
}

/** Most spare of what hangs on pump, main and suction line of a core; below zero when a promise is broken. */
export function flowSpare({ main, falling, power }: Core, parts: FlowParts): number {
  const { regulator, returnHose, agitator, agitationValve, eductor, eductorValve, suction } = parts;
  if (falling !== undefined) return falling.trims(agitator, agitationValve, eductor, eductorValve, suction);
  if (main === undefined || regulator?.kind !== 'regulator') return Infinity;
  let most = main.spare(power, regulator, returnHose, agitator, agitationValve);
  if (most >= 0) most = Math.min(most, main.sucks(regulator, returnHose, suction));
  if (most < 0) return most;
  return Math.min(most, main.driven(power, regulator, returnHose, agitator, agitationValve, suction));
}
