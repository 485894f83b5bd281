import type { UnitSystem } from '@spraywright/engine/quantity';
import { askServer } from '../../frame/ask.ts';

/** What one tested machine says of its own copies of a part: the logarithm of a factor on what its leaflet says. */
interface MachineSays {
  readonly serial: string;
  /** Moment of the test as ISO text; empty where nobody wrote it down. */
  readonly taken: string;
  readonly mean: number;
  readonly deviation: number;
}

export interface LearnedPart {
  readonly key: string;
  readonly name: string;
  readonly mean: number;
  readonly deviation: number;
  readonly copyDeviation: number;
  readonly before: { readonly mean: number; readonly deviation: number };
  readonly rigs: number;
  readonly drifts: boolean;
  readonly told: string;
  readonly machines: readonly MachineSays[];
}

export interface PromisedAndHeld {
  readonly from: number;
  readonly to: number;
  readonly tested: number;
  readonly promised: number;
  readonly held: number;
  readonly fair: readonly [number, number];
  readonly told: 'as promised' | 'held less often' | 'held more often' | 'too few to tell';
}

export interface OddReading {
  readonly serial: string;
  readonly id: string;
  readonly sound: number;
  readonly task: string;
  readonly read?: string;
  readonly window?: string;
}

export interface ShopLearned {
  readonly document: { readonly machines: number; readonly readings: number };
  readonly factors: readonly LearnedPart[];
  readonly calibration: {
    readonly bands: readonly PromisedAndHeld[];
    readonly readings: number;
    readonly inside: number;
    readonly windows: 'as promised' | 'too narrow' | 'too wide' | 'too few to tell';
  };
  readonly doubted: readonly OddReading[];
  readonly unused: readonly { readonly why: string; readonly readings: number }[];
  readonly unfinished: readonly string[];
  readonly unfit: readonly { readonly serial: string; readonly day: string; readonly why: string }[];
}

/** What the shop has learned, or why it cannot be told. */
export async function shopLearned(
  units: UnitSystem,
): Promise<{ readonly learned: ShopLearned } | { readonly why: string }> {
  const answer = await askServer<ShopLearned>(`api/learned?machines=yes&units=${units}`);
  if (answer.is === 'done') return { learned: answer.value };
  return { why: answer.is === 'refused' ? answer.why : 'The records cannot be reached' };
}
