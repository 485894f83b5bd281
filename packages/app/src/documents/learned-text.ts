import {
  drifts,
  driftText,
  type Calibration,
  type Learned,
  type LearnedDocument,
} from '@spraywright/engine/yard';
import { TOLERANCES, type Confidence } from '@spraywright/engine/rig';

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
        `  promised ${Math.round(b.from * 100)} to ${Math.round(b.to * 100)} times in 100: ${b.tested} tested, ${b.promised.toFixed(1)} should hold, ${b.held} did`,
    ),
    `  ${inside} of ${count(readings, 'reading')} inside the windows that hold nine in ten: ${windows}`,
  ];
}

/** Why the odds of a rig are sharper than the tolerances alone would have them. */
export function sharperLines(confidence: Confidence): string[] {
  const taught = confidence.inputs.filter((i) => i.taught);
  if (taught.length === 0)
    return ['Nothing is learned of the parts of this rig: the odds are those of the tolerances.'];
  const rows = taught
    .map((i) => ({ input: i, before: TOLERANCES[i.kind].deviation }))
    .sort((a, b) => a.input.deviation / a.before - b.input.deviation / b.before);
  return [
    `Sharper by readings, which stand for ${taught.length} of ${confidence.inputs.length} tolerances:`,
    ...rows.map(({ input, before }) => {
      const off = 100 * Math.expm1(input.mean - TOLERANCES[input.kind].mean);
      return `  ${input.name} ${off >= 0 ? '+' : '−'}${Math.abs(off).toFixed(1)} %, known to ${share(input.deviation)} where the tolerance is ${share(before)} (${input.source})`;
    }),
  ];
}

const share = (deviation: number): string => `${(100 * deviation).toFixed(1)} %`;
const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
const lines = (list: readonly string[]): readonly string[] => (list.length === 0 ? ['  none'] : list);
