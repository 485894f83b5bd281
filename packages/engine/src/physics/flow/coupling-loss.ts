import { oneOfChoices } from '../lists-in-range.ts';

/** A guess at a loss coefficient with the band it may lie in. Not a measurement. */
export interface AssumedLoss {
  readonly lossCoefficient: number;
  readonly low: number;
  readonly high: number;
  /** Always `judgement`: nobody has established these values. */
  readonly basis: 'judgement';
}

const COUPLINGS = {
  'cam-lock': { lossCoefficient: 0.2, low: 0.05, high: 0.6, basis: 'judgement' },
  'quick-coupling-open': { lossCoefficient: 0.75, low: 0.1, high: 2, basis: 'judgement' },
  'quick-coupling-valved': { lossCoefficient: 4, low: 1, high: 15, basis: 'judgement' },
  'hose-swivel': { lossCoefficient: 1, low: 0.3, high: 4, basis: 'judgement' },
} as const satisfies Record<string, AssumedLoss>;

export type CouplingKind = keyof typeof COUPLINGS;

/**
 * Assumed loss coefficient of a coupling for which nothing was measured.
 *
 * @formula table of guesses
 * @param coupling kind of coupling [one of cam-lock, quick-coupling-open, quick-coupling-valved, hose-swivel]
 * @result lossCoefficient value to use on the hose bore [-]
 * @result low low end of the band [-]
 * @result high high end of the band [-]
 * @result basis always judgement [one of judgement]
 * @valid UNKNOWN in published data: enter a measured value with its tolerance, or the throat bore through lossCoefficientThroat, where you can
 * @throws RangeError when the coupling is not in the table
 * @source Our judgement, no source: a cam-lock as a throat of 0.9 of the bore, an open quick coupling 0.8, a swivel 0.77, a valved quick coupling 0.63
 */
export function assumedLossCoefficientCoupling(coupling: CouplingKind): AssumedLoss {
  oneOfChoices('coupling', coupling, Object.keys(COUPLINGS));
  return COUPLINGS[coupling];
}
