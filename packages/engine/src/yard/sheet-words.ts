import { display, type UnitSystem } from '../quantity/index.ts';
import type { JudgedReading, ReadingState } from './judge.ts';
import { repeatName } from './repeats.ts';
import { SCALE_WHOLE } from './scale-rows.ts';
import type { SheetReading } from './sheet-reading.ts';

const LINE_WORDS: Readonly<Record<string, string>> = {
  gun: 'the gun',
  'second-gun': 'the second gun',
  boom: 'the boom',
  bar: 'the spray bar',
  transfer: 'the transfer hose',
};

/** What every yard test starts with. */
export const YARD_CAUTIONS: readonly string[] = [
  'Clean water only. Nobody in front of an outlet or near a turning shaft; goggles on.',
  'Look for leaks with a card, never with a hand. Let the pressure off before opening a joint.',
];

/** How the state of a reading is said. */
export const READING_WORDS: Readonly<Record<ReadingState, string>> = {
  pass: 'Pass',
  look: 'Look',
  fail: 'Fail',
  refused: 'Refused',
  more: 'Again',
  missing: 'To do',
};

const GALLON = 231 * 0.0254 ** 3;

/** A reading as the instrument shows it: a clock shows minutes and seconds. */
export function readingText(row: SheetReading, value: number, units: UnitSystem): string {
  if (row.dimension !== 'time') return display(value, row.dimension, units);
  const seconds = Math.round(value);
  if (seconds < 60) return `${value < 20 ? value.toFixed(1) : seconds} s`;
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')} min`;
}

/** What is filled: a quart jug is not a quarter of a gallon. */
export function vesselText(volume: number, units: UnitSystem): string {
  const gallons = volume / GALLON;
  if (units === 'us') return gallons < 0.9 ? `${Math.round(gallons * 4)} qt` : `${Math.round(gallons)} gal`;
  return `${Math.round(volume * 1000)} L`;
}

/** What the hand does for one reading, without the conditions of its duty. */
export function readingTask(row: SheetReading, units: UnitSystem): string {
  const line = LINE_WORDS[row.line ?? ''] ?? row.line ?? '';
  const volume = row.volume === undefined ? '' : vesselText(row.volume, units);
  switch (row.instrument) {
    case 'drive-speed':
      return 'Engine or PTO speed while it sprays';
    case 'pump-speed':
      return "Speed of the pump's shaft while it sprays";
    case 'pump-gauge':
      return 'Gauge at the pump, spraying';
    case 'shut-gauge':
      return 'Gauge at the pump, everything shut';
    case 'suction-gauge':
      return 'Vacuum gauge in front of the pump, spraying';
    case 'tip-gauge':
      // A transfer hose ends open: it has no tip.
      return row.line === 'transfer' ? `Gauge in front of ${line}` : `Gauge in front of the tip of ${line}`;
    case 'bucket':
      return (row.tips ?? 1) > 1
        ? `Time to fill ${volume} from each of the ${row.tips} tips of ${line}`
        : `Time to fill ${volume} from ${line}`;
    case 'drain':
      return `Time for the tank to fall by ${display(row.volume!, 'volume', units)}`;
    case 'tape-farthest':
      return `Tape from ${line} to the farthest drops, gun held where it throws farthest`;
    case 'current':
      return 'Current of the pump, spraying';
    case 'scale':
      return row.id === SCALE_WHOLE
        ? 'Weight of the whole rig: tank and hoses empty, fuel full'
        : `Weight under ${(row.line ?? '').toLowerCase()}: tank empty, hoses full`;
  }
}

/** What counts of a reading, and every reading that it is the middle of: "58.0 ft (56.5 ft, 58.0 ft, 61.0 ft)". */
export function judgedText(
  row: SheetReading,
  { value, repeated, repeatsLeft: left = 0 }: JudgedReading,
  units: UnitSystem,
): string {
  const all = repeated?.map((v) => readingText(row, v, units)).join(', ');
  if (value === undefined) return all === undefined ? '' : `${all}, too far apart to count`;
  const counts = readingText(row, value, units);
  if (repeated === undefined) return counts;
  const one = repeatName(row);
  return left === 0
    ? `${counts} (${all})`
    : `${counts} (${repeated.length === 1 ? '' : `${all}; `}${(row.repeats ?? 0) - left} of ${row.repeats} ${one}s)`;
}

/** How a row is read again, and which reading counts; empty where it is read once. */
export function repeatsTask({ repeats, instrument }: SheetReading): string {
  if (repeats === undefined) return '';
  return instrument === 'shut-gauge'
    ? 'Read it twice, the outlets opened and shut again in between'
    : `Throw ${repeats} times: the middle one counts`;
}

/** How the rig stands while a duty's readings are taken: "tank 50 % full, 200 ft of hose out". */
export function dutyConditions(rows: readonly SheetReading[], units: UnitSystem): string {
  const row = rows.find((r) => r.tankLevel !== undefined);
  return [
    'water in the tank',
    ...(row?.tankLevel === undefined ? [] : [`${Math.round(row.tankLevel * 100)} % full`]),
    ...(row?.hoseOut === undefined ? [] : [`${display(row.hoseOut, 'length', units)} of hose out`]),
  ].join(', ');
}
