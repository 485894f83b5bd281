export { FAULT_SOURCE, FAULTS, faultOf, type FaultId } from './faults.data.ts';
export { faultCases, type FaultCase } from './fault-cases.ts';
export { faultModel, shownWith, type FaultModel } from './fault-model.ts';
export { LOOKS, yesWith, type LookId } from './looks.data.ts';
export { diagnose, diagnoseWith, type Diagnosis, type DiagnosisState } from './diagnosis.ts';
export {
  chanceText,
  remedyOf,
  toldChecks,
  toldFirst,
  toldSuspects,
  verdictText,
  worthText,
} from './fault-words.ts';
export { firstRound, questionOf, type Check } from './first-round.ts';
export type { NextCheck } from './next-check.ts';
