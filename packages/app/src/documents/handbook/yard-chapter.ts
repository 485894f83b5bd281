import { display } from '@spraywright/engine/quantity';
import { READING_WORDS, readingTask, readingText } from '@spraywright/engine/yard';
import { note, type Chapter } from '../chapters/chapter.ts';
import type { HandbookOptions } from './handbook-options.ts';

/** What this very machine showed in the yard; said to be missing when nobody has read it. */
export function yardChapter({ tested, yardNote, units }: HandbookOptions): Chapter {
  const title = 'Tested in the yard';
  if (tested === undefined)
    return {
      id: 'yard',
      title,
      blocks: [
        note(
          yardNote ??
            'No readings of this machine are recorded: its figures here are worked out, not measured.',
        ),
      ],
    };
  const { sheet, taken, judged } = tested;
  const { document: d } = taken;
  const duty = (id: string | undefined) => sheet.duties.find((x) => x.id === id)?.name;
  return {
    id: 'yard',
    title,
    blocks: [
      note(
        `Read with clean water${d.taken === undefined ? '' : ` on ${d.taken}`}${d.by === undefined ? '' : ` by ${d.by}`}${d.wind === undefined ? '' : `, wind ${display(d.wind, 'speed', units)}`}. The test as a whole: ${READING_WORDS[judged.state]}. Nine good rigs in ten read from low to high.`,
      ),
      {
        kind: 'table',
        captions: ['what', 'duty', 'low', 'high', 'read', 'result'],
        rows: sheet.readings.map((row, i) => {
          const { value, state } = judged.readings[i]!;
          return [
            readingTask(row, units),
            duty(row.duty) ?? '',
            readingText(row, row.low, units),
            readingText(row, row.high, units),
            value === undefined ? 'not read' : readingText(row, value, units),
            READING_WORDS[state],
          ];
        }),
        widths: ['*', 110, 52, 52, 58, 42],
        words: 2,
        strong: 4,
      },
    ],
  };
}
