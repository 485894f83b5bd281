export { supplyOf, type Supply } from './supply.ts';
export type { AddedFitting, OpenPort, Plumbing, PlumbingEnd, RigJoint } from './plan.ts';
export { plumbingOf } from './plumbing.ts';
