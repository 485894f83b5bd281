export * from './brief.ts';
export * from './rig-document.ts';
export * from './promise.ts';
export { stepText } from './working/step-text.ts';
export { valueOfSum } from './working/formula.ts';
export * from './bill/index.ts';
export type { AddedFitting, OpenPort, Plumbing, PlumbingEnd, RigJoint } from './plumbing/index.ts';
export {
  dutySolver,
  type DutyState,
  type DutyStates,
  type OutletState,
  type PressureStep,
} from './duty-state.ts';
export { proveRig, ENGINE_VERSION, type DutyProof, type Proof } from './proof/prove.ts';
export { proveWork } from './proof/prove-work.ts';
export type { ProveOptions } from './proof/context.ts';
export type { DutyReach } from './proof/reach.ts';
export type { DayProof } from './proof/day.ts';
export * from './curves/index.ts';
export * from './valve-state.ts';
export { withArcs } from './throw-arcs.ts';
export { hoseCurve, type HoseCurve } from './hose-curve.ts';
export { siteOf, type Site } from './proof/site.ts';
export { designRig, type Design } from './design.ts';
export { redesignRig } from './redesign.ts';
export { searchAround } from './search-around.ts';
export * from './search/index.ts';
export { dutyNetwork, outletHeightOf, type DutyNetwork } from './duty-network.ts';
export { liquidOf, type DutyLiquid } from './proof/liquid.ts';
export type { Placement } from './proof/placement-data.ts';
export type { Wiring, WiringCircuit } from './proof/wiring.ts';
export { freightOf, type FreightEstimate } from './proof/freight.ts';
export type { TipAngle } from './proof/stability-working.ts';
export {
  partsUnder,
  wheelLoads,
  type Fill,
  type MassPoint,
  type PlacedPart,
  type SupportLoads,
} from './placement/index.ts';
export { driveOf, type Drive } from './drive.ts';
export { retune } from './retune.ts';
export { streamAt, type ThrowConditions } from './gun-throw.ts';
export { pumpCurrentAt } from './pump-current.ts';
export { TOLERANCES, type Tolerance, type ToleranceKind } from './confidence/tolerances.data.ts';
export { uncertainInputs, type Correction, type UncertainInput } from './confidence/uncertain-inputs.ts';
export { withFactors } from './confidence/with-factors.ts';
export * from './edit.ts';
export * from './brief-edit.ts';
export * from './outlets.ts';
export * from './starts.ts';
export { startBriefs, type StartBrief } from './start-brief.ts';
export { partById, putPart, type PartEdit } from './part-edit.ts';
export type { RawRig } from './design/assemble.ts';
export * from './advice/index.ts';
export {
  confidenceOf,
  drawPromises,
  type Confidence,
  type ConfidenceOptions,
  type DrawnFigures,
  type PromiseConfidence,
} from './confidence/confidence.ts';
export { drawsFrom, evenDraws, type Draws } from './confidence/draws.ts';
export { inPlace } from './confidence/in-place.ts';
export { emptyWeights, type EmptyWeight } from './confidence/empty-weights.ts';
export { massShares } from './confidence/mass-shares.ts';
export { normalQuantile } from './confidence/normal-quantile.ts';
export { NINE_IN_TEN, oddsOf, oddsSentences, type NoOdds, type Odds } from './confidence/odds.ts';
export * from './handbook/index.ts';
export * from './build/index.ts';
