import type { Dimension } from '../quantity/index.ts';

/** What a reading is taken with, and how well a careful hand takes it. */
export interface Instrument {
  readonly name: string;
  readonly dimension: Dimension;
  /** Standard deviation of one reading: of its logarithm [-], or where `plain` in the dimension's SI unit. */
  readonly deviation: number;
  /** A reading that may be nought or below, and so has no logarithm. */
  readonly plain?: true;
  /**
   * A reading that is taken so many times, the middle one counts: what one is called, and how far one differs from the next,
   * which is part of the deviation.
   */
  readonly repeats?: { readonly times: number; readonly one: 'throw' | 'reading'; readonly deviation: number };
  readonly source: string;
}

/** Of one throw against the next, and of what is common to all throws of one day [-]. */
const TAPE = { throw: 0.05, common: 0.02 } as const;

/** Of one reading of a gauge with the outlets shut against the next, once they were open in between [-]. */
const SHUT_AGAIN = 0.01;

export const INSTRUMENTS = {
  'pump-gauge': {
    name: 'gauge at the pump',
    dimension: 'pressure',
    deviation: 0.015,
    source:
      'judgement: a gauge of class 1.6 (EN 837-1: 1.6 % of its range) read above half its range, nine times in ten',
  },
  'tip-gauge': {
    name: 'gauge in front of the tip',
    dimension: 'pressure',
    deviation: 0.015,
    source:
      'judgement: a gauge of class 1.6 (EN 837-1: 1.6 % of its range) read above half its range, nine times in ten',
  },
  'shut-gauge': {
    name: 'gauge at the pump, everything shut',
    dimension: 'pressure',
    deviation: 0.015,
    // Two show that one went wrong; a third, which tells which, is asked for then alone.
    repeats: { times: 2, one: 'reading', deviation: SHUT_AGAIN },
    source:
      'judgement: a gauge of class 1.6 (EN 837-1: 1.6 % of its range) read above half its range, nine times in ten; of the 1.5 % that this is, 1 % differs from one shutting to the next (seat of the regulator, a needle that trembles), judgement, and the rest is of the gauge',
  },
  'suction-gauge': {
    name: 'vacuum gauge in front of the pump',
    dimension: 'pressure',
    deviation: 1500,
    plain: true,
    source: 'judgement: a vacuum gauge of class 2.5 (EN 837-1: 2.5 % of 1 bar), nine times in ten',
  },
  bucket: {
    name: 'bucket and clock',
    dimension: 'time',
    deviation: 0.02,
    source: 'judgement: 0.3 s on the clock and 1.5 % on the mark of the bucket',
  },
  drain: {
    name: 'tank marks and clock',
    dimension: 'time',
    deviation: 0.04,
    source: 'judgement: the marks of a moulded tank read to 4 % of a tenth of it',
  },
  'tape-farthest': {
    name: 'tape to the farthest drops',
    dimension: 'length',
    deviation: Math.hypot(TAPE.throw, TAPE.common),
    repeats: { times: 3, one: 'throw', deviation: TAPE.throw },
    source:
      'repeats of one throw on one day differ by 7 % (Trettel 2020, runs at 27 psi), which is 5 % each; 2 % are common to all throws of a day, judgement: the tape on the ground, where one eye sees the farthest drops, the air that stirs',
  },
  'drive-speed': {
    name: 'tachometer',
    dimension: 'rotation',
    deviation: 0.005,
    source: 'judgement: an optical tachometer on a speed that hunts a little',
  },
  'pump-speed': {
    name: 'tachometer at the pump shaft',
    dimension: 'rotation',
    deviation: 0.005,
    source: 'judgement: an optical tachometer on a speed that hunts a little',
  },
  current: {
    name: 'clamp meter',
    dimension: 'current',
    deviation: 0.03,
    source: 'judgement: 2 % of the reading and its last digits',
  },
  scale: {
    name: 'wheel scale',
    dimension: 'mass',
    deviation: 0.01,
    source: 'judgement: a wheel scale on level ground',
  },
} as const satisfies Record<string, Instrument>;

export type InstrumentId = keyof typeof INSTRUMENTS;

export const instrumentOf = (id: InstrumentId): Instrument => INSTRUMENTS[id];
