export * from './stream-quality.ts';
export {
  HIGHEST_MEASURED_PRESSURE,
  SPRAY_PATTERNS,
  type SprayPattern,
  THROW_DEFAULTS,
  type ThrowStream,
} from './stream.ts';
export * from './tip-forms.data.ts';
export * from './jet-exit.ts';
export * from './drop-class.ts';
export { type JetState, jetState } from './jet-state.ts';
export type { BestReach, Reach } from './reach.ts';
export { goodStreamLimits, type GoodStreamLimits } from './good-stream.ts';
export * from './standoff.ts';
export { type ShareFlight, throwHeight, throwOfShare, throwRange } from './throw-at.ts';
export * from './best-range.ts';
export * from './arc.ts';
export * from './promise.ts';
export * from './water-test.ts';
export * from './flow-for-height.ts';
export * from './reaction.ts';
export * from './impact.ts';
export * from './liquid-and-air.ts';
export { type ScreenedReach, screenedReach } from './screening.ts';
export * from './breakup.ts';
export * from './trade-rules.ts';
