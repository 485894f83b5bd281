import type { RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { dosePromises } from './pattern-dose.ts';
import { driftPromises } from './pattern-drift.ts';
import { evennessPromises } from './pattern-evenness.ts';
import { unitDosePromises } from './pattern-units.ts';
import { weatherPromises } from './pattern-weather.ts';
import { widthPromises } from './pattern-width.ts';

/** What the spray does where it lands: dose, evenness, droplets, drift and weather. */
export function patternPromises(context: ProofContext): RigPromise[] {
  return [
    ...dosePromises(context),
    ...widthPromises(context),
    ...unitDosePromises(context),
    ...evennessPromises(context),
    ...driftPromises(context),
    ...weatherPromises(context),
  ];
}
