import { display } from '@spraywright/engine/quantity';
import { judgedText, READING_WORDS, readingTask, readingText, repeatsTask } from '@spraywright/engine/yard';
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
          const one = judged.readings[i]!;
          return [
            [readingTask(row, units), repeatsTask(row)].filter((t) => t !== '').join('. '),
            duty(row.duty) ?? '',
            readingText(row, row.low, units),
            readingText(row, row.high, units),
            judgedText(row, one, units) || 'not read',
            READING_WORDS[one.state],
          ];
        }),
        widths: ['*', 110, 52, 52, 58, 42],
        words: 2,
        strong: 4,
      },
    ],
  };
}
