import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Calibration, LearnedFactor, TestedCopy } from '@spraywright/engine/yard';
import { askServer } from '../../frame/ask.ts';

export interface LearnedPart extends LearnedFactor {
  readonly drifts: boolean;
  readonly told: string;
  readonly machines: readonly TestedCopy[];
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
  readonly calibration: Calibration;
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
