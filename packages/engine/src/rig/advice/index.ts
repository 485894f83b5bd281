export { askLess, type AskLess } from './ask-less.ts';
export { alternatives, byUse, type Alternative } from './alternatives.ts';
export { effectOf, type DutyChange, type Effect, type PromiseChange, type Standing } from './effect.ts';
export { partsInstead, slotsOf } from './slot-alternatives.ts';
export { proverBeside, type ProvenRig } from './prove-again.ts';
export { trialsOf, type Trials } from './trials.ts';
export { waysOut, type PromiseWays, type WayOut, type WaysOutOptions } from './ways-out.ts';
