export { asBuilt, type AsBuilt, type PutInstead } from './as-built.ts';
export { assemblySteps, type AssemblyStep, type StepAsks } from './assembly.ts';
export {
  BUILD_KINDS,
  buildRecord,
  type BuildPhoto,
  type BuildRecord,
  type StepDone,
} from './build-record.ts';
export { fetchList, ordersToFetch, type Fetch } from './fetch-list.ts';
export { pickList, type Pick } from './pick-list.ts';
export { betweenLiquids } from './residue.ts';
export { proveSubstitution, type Substitution } from './substitution.ts';
export { tieDownOf, type TieDown } from './tie-down.ts';
export { asStocked } from './as-stocked.ts';
