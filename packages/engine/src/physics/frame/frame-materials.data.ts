import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Strengths in ksi and density in lb/in3, as printed. */
export interface FrameMaterial {
  readonly name: string;
  readonly metal: 'steel' | 'aluminium';
  readonly yieldKsi: number;
  readonly ultimateKsi: number;
  readonly elasticityKsi: number;
  readonly densityLbIn3: number;
  readonly evidence: TableOrigin['evidence'];
  readonly note: string;
}

const steel = { metal: 'steel', elasticityKsi: 29000, densityLbIn3: 0.2836 } as const;
const aluminium = { metal: 'aluminium', elasticityKsi: 10100, densityLbIn3: 0.098 } as const;

export const FRAME_MATERIALS = {
  'steel-a36': {
    ...steel,
    name: 'ASTM A36 steel',
    yieldKsi: 36,
    ultimateKsi: 58,
    evidence: 'seen',
    note: 'ultimate 58 to 80',
  },
  'steel-a500b': {
    ...steel,
    name: 'ASTM A500 grade B steel tube',
    yieldKsi: 46,
    ultimateKsi: 58,
    evidence: 'seen',
    note: 'the wall may be 10 % under nominal: reckon with 0.93 of it (from memory)',
  },
  'steel-a500c': {
    ...steel,
    name: 'ASTM A500 grade C steel tube',
    yieldKsi: 50,
    ultimateKsi: 62,
    evidence: 'seen',
    note: '',
  },
  'aluminium-6061-t6': {
    ...aluminium,
    name: '6061-T6 aluminium, more than 1 in from any weld',
    yieldKsi: 35,
    ultimateKsi: 38,
    evidence: 'seen',
    note: 'minimums of 49 CFR 178.46',
  },
  'aluminium-6061-t6-welded': {
    ...aluminium,
    name: '6061-T6 aluminium within 1 in of a weld',
    yieldKsi: 15,
    ultimateKsi: 24,
    evidence: 'part seen',
    note: 'ultimate 24 and the 1 in seen; yield 15 from memory (11 with 4043 filler over 3/8 in, from memory)',
  },
} as const satisfies Record<string, FrameMaterial>;

export type FrameMaterialId = keyof typeof FRAME_MATERIALS;

export const FRAME_MATERIAL_ORIGIN: TableOrigin = {
  place: 'United States',
  edition: 'ASTM A36, A500; 49 CFR 178.46 table 2; Kissell and Ferry, Aluminum Structures, 2002, p. 64',
  date: '2002',
  source: 'ASTM summaries; 49 CFR 178.46; Kissell and Ferry 2002; welding qualification minimums (AWS, ASME)',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'Elasticity and density are handbook values from memory. Welds decide the life of a trailer: aluminium weld details have about a third of the fatigue strength of steel ones (from memory); fatigue is not computed.',
};

/** Factors that turn strengths into allowable stresses: AISC and Aluminum Design Manual, from memory. */
export const SAFETY_FACTORS = {
  steelYield: 1.67,
  steelWeld: 2,
  aluminiumYield: 1.65,
  aluminiumRupture: 1.95,
} as const;

/** Ultimate shear strength of aluminium weld filler, ksi: from memory. */
export const FILLER_SHEAR_KSI = { '4043': 11.5, '5356': 17 } as const;
