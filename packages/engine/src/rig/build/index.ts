export { assemblySteps, type AssemblyStep } from './assembly.ts';
export { pickList, type Pick } from './pick-list.ts';
export { tieDownOf, type TieDown } from './tie-down.ts';
