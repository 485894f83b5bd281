import {
  drifts,
  driftText,
  type Calibration,
  type Learned,
  type LearnedDocument,
} from '@spraywright/engine/yard';

/** A reading less likely sound than this is told of. */
const DOUBTED = 0.5;

/** What the shop's tests have taught, for the terminal. */
export function learnedText(learned: Learned, document: LearnedDocument, calibration: Calibration): string {
  const told = learned.factors.filter((f) => f.rigs > 0);
  const doubted = learned.copies.flatMap((c) =>
    c.readings
      .filter((r) => r.sound < DOUBTED)
      .map(
        (r) =>
          `  ${[c.rig, c.serial].filter((t) => t !== undefined).join(' ')}: ${r.id} does not fit what every other reading says; it counts for next to nothing`,
      ),
  );
  const unused = new Map<string, number>();
  for (const { why } of learned.copies.flatMap((c) => c.unused)) unused.set(why, (unused.get(why) ?? 0) + 1);
  return [
    `Learned from ${count(document.machines, 'built rig')} and ${count(document.readings, 'reading')}`,
    '',
    'Parts that are not what they are said to be',
    ...lines(told.filter(drifts).map((f) => `  ${f.name} ${driftText(f)}`)),
    '',
    'Parts that show no drift',
    ...lines(told.filter((f) => !drifts(f)).map((f) => `  ${f.name}: ${driftText(f)}`)),
    '',
    'Readings set aside',
    ...lines([...doubted, ...[...unused].map(([why, n]) => `  ${count(n, 'reading')}: ${why}`)]),
    '',
    'What was promised and what happened, by the tolerances before any reading',
    ...calibrationLines(calibration),
    '',
    'How doubt divides between a part and one copy of it is judgement. A part far off its leaflet is first a question: is it the right part, and is the gauge right?',
    '',
  ].join('\n');
}

function calibrationLines({ bands, readings, inside, windows }: Calibration): string[] {
  return [
    ...bands.map(
      (b) =>
        `  promised ${Math.round(b.from * 100)} to ${Math.round(b.to * 100)} times in 100: ${b.tested} tested, ${b.promised.toFixed(1)} should hold (${b.fair[0]} to ${b.fair[1]}), ${b.held} did: ${b.told}`,
    ),
    `  ${inside} of ${count(readings, 'reading')} inside the windows that hold nine in ten: ${windows}`,
  ];
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
const lines = (list: readonly string[]): readonly string[] => (list.length === 0 ? ['  none'] : list);
