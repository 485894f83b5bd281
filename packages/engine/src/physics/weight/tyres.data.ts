import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Load that a tyre with a load index carries at its marked pressure and speed, kg; first entry is index 60. */
// prettier-ignore
export const TYRE_LOAD_KG: readonly number[] = [
  250, 257, 265, 272, 280, 290, 300, 307, 315, 325,
  335, 345, 355, 365, 375, 387, 400, 412, 425, 437,
  450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
  600, 615, 630, 650, 670, 690, 710, 730, 750, 775,
  800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
  1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360,
  1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,
  1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430,
  2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250,
  3350,
];

export const FIRST_LOAD_INDEX = 60;
export const LAST_LOAD_INDEX = 150;

export const TYRE_LOAD_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'load index table of tyre standards',
  date: 'unknown',
  source: 'Four stored copies compared for index 60 to 150',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Misprints found in single copies: 83 = 478, 61 = 265, 62 = 165, 135 = 2190. The load range letter does not state a weight.',
};
