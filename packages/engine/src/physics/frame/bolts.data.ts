import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Coarse bolts: diameter and threads per inch. */
export const COARSE_BOLTS = {
  '1/4-20': { diameterIn: 0.25, threadsPerInch: 20 },
  '5/16-18': { diameterIn: 0.3125, threadsPerInch: 18 },
  '3/8-16': { diameterIn: 0.375, threadsPerInch: 16 },
  '7/16-14': { diameterIn: 0.4375, threadsPerInch: 14 },
  '1/2-13': { diameterIn: 0.5, threadsPerInch: 13 },
  '9/16-12': { diameterIn: 0.5625, threadsPerInch: 12 },
  '5/8-11': { diameterIn: 0.625, threadsPerInch: 11 },
  '3/4-10': { diameterIn: 0.75, threadsPerInch: 10 },
} as const;

/** Proof stress by grade, ksi, for these sizes. Grade 8 from memory. */
export const PROOF_STRESS_KSI = { '2': 55, '5': 85, '8': 120 } as const;

export type CoarseBolt = keyof typeof COARSE_BOLTS;
export type BoltGrade = keyof typeof PROOF_STRESS_KSI;

export const BOLT_ORIGIN: TableOrigin = {
  place: 'United States',
  edition: 'SAE J429, edition unknown',
  date: 'unknown',
  source: 'SAE J429 proof, clamp and torque table for grades 2 and 5, reproduced; grade 8 proof from memory',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
};
