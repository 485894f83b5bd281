import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface PtoType {
  readonly type: string;
  readonly speedRpm: number;
  readonly shaftDiameterMm: number;
  readonly splines: string;
  /** From memory: ISO 500-1 could not be read. */
  readonly maxPowerKw: number;
}

/** Rear power take-off shafts. */
export const PTO_TYPES: readonly PtoType[] = [
  { type: '1', speedRpm: 540, shaftDiameterMm: 35, splines: '6 straight', maxPowerKw: 60 },
  { type: '1 at 1000', speedRpm: 1000, shaftDiameterMm: 35, splines: '6 straight', maxPowerKw: 92 },
  { type: '2', speedRpm: 1000, shaftDiameterMm: 35, splines: '21 involute', maxPowerKw: 115 },
  { type: '3', speedRpm: 1000, shaftDiameterMm: 45, splines: '20 involute', maxPowerKw: 275 },
  { type: '4', speedRpm: 1300, shaftDiameterMm: 57.5, splines: '22 involute', maxPowerKw: 450 },
];

export const PTO_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'ISO 500-1:2014 as cited by an encyclopaedia',
  date: '2014',
  source: 'ISO 500-1: types, speeds, diameters, splines seen; power limits from memory',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'Clockwise seen from behind the tractor. All shafts, joints and the implement input shaft are guarded, with signs: 29 CFR 1928.57 (seen).',
};

/** PTO power as a share of the engine's flywheel power. */
export const PTO_SHARE_OF_ENGINE = { net: 0.9, gross: 0.83 } as const;

export const PTO_SHARE_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'ASABE D497, edition unknown',
  date: 'unknown',
  source: 'Power relation diagram of ASABE D497, from memory',
  evidence: 'memory',
  checkedBy: NOT_CHECKED,
};
