export { acceptanceCheck, type RigKind } from './acceptance.ts';
export * from './acceptance.data.ts';
export * from './conflicts.ts';
