/** Something a reader must know of one property. */
export interface PropertyFlag {
  readonly property: 'strength' | 'density' | 'viscosity' | 'vapourPressure' | 'coldLimit';
  /** An estimate has a value with doubt; unknown has none; frozen: the liquid is at or below its cold limit. */
  readonly kind: 'estimate' | 'unknown' | 'frozen';
  readonly reason: string;
  /** SI bounds: the doubt of an estimate, or between what judgement puts an unknown. */
  readonly low?: number;
  readonly high?: number;
}
