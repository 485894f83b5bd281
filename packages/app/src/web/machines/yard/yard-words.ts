import type { UnitSystem } from '@spraywright/engine/quantity';
import {
  readingText,
  repeatName,
  type InstrumentId,
  type JudgedReading,
  type SheetReading,
} from '@spraywright/engine/yard';

const NAMES: Readonly<Record<InstrumentId, string>> = {
  'drive-speed': 'Drive speed',
  'pump-speed': 'Pump speed',
  'pump-gauge': 'Pump pressure',
  'shut-gauge': 'Everything shut',
  'suction-gauge': 'Suction',
  'tip-gauge': 'Tip pressure',
  bucket: 'Flow',
  drain: 'Tank falling',
  'tape-farthest': 'Farthest drops',
  current: 'Current',
  scale: 'Weight',
};

/** A reading by its short name, as a button calls it. */
export function shortName({ instrument, line }: SheetReading): string {
  return instrument === 'scale' ? `${NAMES.scale}: ${(line ?? '').toLowerCase()}` : NAMES[instrument];
}

/** "385 to 425 psi". */
export function windowText(row: SheetReading, units: UnitSystem): string {
  const [low, high] = [readingText(row, row.low, units), readingText(row, row.high, units)];
  const unit = /\s\S+$/.exec(high)?.[0] ?? '';
  return `${unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low} to ${high}`;
}

/** "One more throw"; empty when every one is taken. */
export function readAgain(row: SheetReading, { repeatsLeft: left = 0 }: JudgedReading): string {
  if (left === 0) return '';
  const one = repeatName(row);
  return left === 1 ? `One more ${one}` : `${left} more ${one}s`;
}
