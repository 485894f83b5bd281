export type * from './network-model.ts';
export type * from './solution.ts';
export type * from './compiled-network.ts';
export { compileNetwork } from './network.ts';
export type { Compilation } from './network.ts';
export { readNetwork } from './network-document.ts';
export type { NetworkReading } from './network-document.ts';
export { solveNetwork } from './solve-network.ts';
export type { ElementResult, NetworkResult, NodeResult } from './solve-network.ts';
