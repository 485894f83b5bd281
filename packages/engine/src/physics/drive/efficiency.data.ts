import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface EfficiencyRange {
  readonly low: number;
  readonly high: number;
  /** Value for a first size. */
  readonly design: number;
  readonly evidence: TableOrigin['evidence'];
}

/** Overall pump efficiency by type, for a first size only: the pump's own curve goes before it. */
export const PUMP_EFFICIENCY = {
  piston: { low: 0.8, high: 0.9, design: 0.85, evidence: 'memory' },
  diaphragm: { low: 0.75, high: 0.88, design: 0.8, evidence: 'memory' },
  roller: { low: 0.5, high: 0.75, design: 0.6, evidence: 'memory' },
  centrifugal: { low: 0.4, high: 0.65, design: 0.5, evidence: 'memory' },
  'oil-gear': { low: 0.75, high: 0.88, design: 0.8, evidence: 'memory' },
  'hydraulic-gear-motor': { low: 0.7, high: 0.85, design: 0.78, evidence: 'memory' },
  'motor-pump-12v': { low: 0.3, high: 0.5, design: 0.4, evidence: 'memory' },
} as const satisfies Record<string, EfficiencyRange>;

/** Efficiency of what stands between engine and pump. Design values are the low end of the range. */
export const DRIVE_EFFICIENCY = {
  'v-belt': { low: 0.95, high: 0.98, design: 0.95, evidence: 'seen' },
  'v-belt-slack': { low: 0.93, high: 0.93, design: 0.93, evidence: 'seen' },
  'synchronous-belt': { low: 0.98, high: 0.98, design: 0.98, evidence: 'seen' },
  'gear-stage': { low: 0.95, high: 0.98, design: 0.95, evidence: 'memory' },
  'pto-shaft': { low: 0.97, high: 0.99, design: 0.97, evidence: 'memory' },
  direct: { low: 1, high: 1, design: 1, evidence: 'seen' },
} as const satisfies Record<string, EfficiencyRange>;

export const EFFICIENCY_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'none',
  date: 'unknown',
  source: 'Belts: US Department of Energy tip sheet as reprinted by a trade journal; pump types: from memory',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'A direct coupling loses nothing by definition.',
};
