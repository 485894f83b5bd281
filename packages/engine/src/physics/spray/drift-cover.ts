import { inRange } from '../in-range.ts';
import type { DriftCrop } from './drift.data.ts';

/** How the spray leaves the rig, as far as the published curves tell them apart. */
export const DRIFT_WORKS = ['boom', 'boomless', 'air-blast', 'hand-gun', 'high-jet'] as const;
export type DriftWork = (typeof DRIFT_WORKS)[number];

/** Height above which a hand gun counts as a high jet: the trials reach no higher than orchard rows. */
const HIGH = 5;
const NO_CURVE = 'no published curve covers this';

/**
 * Which published drift curve covers a kind of work, if any.
 *
 * @formula table
 * @param work how the spray leaves the rig [one of boom, boomless, air-blast, hand-gun, high-jet]
 * @param cropHeight height of what is sprayed [m] 0..60
 * @result curve crop group to use, or none [text]
 * @result statement what to tell the customer [text]
 * @valid A high jet into trees, and a hand gun above 5 m (judgement), have no curve: the statement says so.
 * @throws RangeError when a parameter is outside its range
 * @source JKI note: hand-held gear uses field crops up to 0.5 m and late vines above; rest judgement.
 */
export function driftCurveFor(
  work: DriftWork,
  cropHeight: number,
): { curve: DriftCrop | 'none'; statement: string } {
  inRange('cropHeight', cropHeight, 0, 60, 'm');
  switch (work) {
    case 'high-jet':
      return {
        curve: 'none',
        statement: `High jet into trees: ${NO_CURVE}; keep people and water away downwind.`,
      };
    case 'boomless':
      return {
        curve: 'none',
        statement: `Boomless nozzle: ${NO_CURVE}; it throws higher than a boom and drifts more than the boom curve says.`,
      };
    case 'air-blast':
      return cropHeight > HIGH
        ? { curve: 'none', statement: `Air blast above ${HIGH} m (16 ft): ${NO_CURVE}.` }
        : { curve: 'fruit-early', statement: 'Early orchard curve, the stronger of the two orchard curves.' };
    case 'boom':
      return cropHeight > 2
        ? { curve: 'none', statement: `Boom over a crop higher than 2 m (7 ft): ${NO_CURVE}.` }
        : { curve: 'arable', statement: 'Field crop curve: boom at its usual height over the crop.' };
    case 'hand-gun':
      if (cropHeight > HIGH)
        return {
          curve: 'none',
          statement: `Hand gun above ${HIGH} m (16 ft): ${NO_CURVE}; keep people and water away downwind.`,
        };
      return cropHeight > 0.5
        ? { curve: 'vines-late', statement: 'Hand-held gear in a crop over 0.5 m (20 in): late vine curve.' }
        : { curve: 'arable', statement: 'Hand-held gear in a crop up to 0.5 m (20 in): field crop curve.' };
  }
}
