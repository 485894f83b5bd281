export { branchesFor, freeOf, type EndPort } from './branches.ts';
export { capFor } from './caps.ts';
export { drainFor } from './drain.ts';
export { couplingFor } from './outside.ts';
export { bulkheadFor } from './tank-wall.ts';
export { supplyOf, type Supply } from './supply.ts';
export type { AddedFitting, OpenPort, Plumbing, PlumbingEnd, RigJoint } from './plan.ts';
export { plumbingOf } from './plumbing.ts';
