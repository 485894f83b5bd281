import { partNumbers } from '@spraywright/engine/drawings';
import {
  careSteps,
  figureText,
  stepText,
  type CareTime,
  type Proof,
  type Rig,
  type RigPromise,
} from '@spraywright/engine/rig';
import { note, type Block, type Chapter } from '../chapters/chapter.ts';
import { sentenceOf } from '../quote-words.ts';
import type { HandbookOptions } from './handbook-options.ts';

/** What is done before spraying, and what after it. */
export function careChapters(
  rig: Rig,
  proof: Proof,
  options: HandbookOptions,
): { readonly before: readonly Chapter[]; readonly after: readonly Chapter[] } {
  const chapter = (at: CareTime, title: string, more: readonly Block[] = []): Chapter => ({
    id: at,
    title,
    blocks: [stepsOf(rig, proof, at, options), ...more],
  });
  return {
    before: [
      chapter('set-up', 'Set it up'),
      chapter('start-up', 'Start it up'),
      chapter('daily', 'Every day before work'),
    ],
    after: [
      chapter('shut-down', 'Stop it'),
      { id: 'flush', title: 'Flush it out at the end of every day', blocks: flushBlocks(proof, options) },
      chapter('winter', 'Before frost', winterBlocks(proof, options)),
    ],
  };
}

function stepsOf(rig: Rig, proof: Proof, at: CareTime, { units }: HandbookOptions): Block {
  const numbers = partNumbers(proof);
  return {
    kind: 'steps',
    steps: careSteps(rig, proof, at, units).map(({ text, items, source }) => ({
      text,
      parts: items.flatMap((item) => numbers.get(item) ?? []).sort((a, b) => a - b),
      source,
    })),
  };
}

/** Rinses and flushes as the proof has worked them out; what it does not know is said. */
function flushBlocks(proof: Proof, options: HandbookOptions): Block[] {
  const found = [find(proof, 'rinse:flush'), find(proof, 'rinse:plan')].filter((p) => p !== undefined);
  return [
    {
      kind: 'drawing',
      svg: options.plumbing,
      words: 'Plumbing diagram with part numbers: where the water goes',
      width: 534,
    },
    ...workingBlocks(found, 'rinse', options),
    ...(found.some((p) => p.id === 'rinse:plan') ? [] : [note('How much water a rinse takes is unknown.')]),
  ];
}

function winterBlocks(proof: Proof, options: HandbookOptions): Block[] {
  const winter = find(proof, 'rinse:winter');
  return winter === undefined
    ? [note('How cold it gets where this rig is kept was not told: drain it before the first frost.')]
    : workingBlocks([winter], 'antifreeze', options);
}

function find(proof: Proof, id: string): RigPromise | undefined {
  return proof.promises.find((p) => p.id === id);
}

/** What promises of the proof say: in words, as steps, as figures, and where it comes from. */
function workingBlocks(
  promises: readonly RigPromise[],
  caption: string,
  { units }: HandbookOptions,
): Block[] {
  const all = promises.flatMap((p) => p.working);
  const figures = all.filter((s) => s.figure !== undefined);
  const words = all.filter((s) => s.figure === undefined);
  return [
    ...promises.map((p) =>
      note(`${p.state === 'unknown' ? 'Not known: ' : ''}${sentenceOf(p.sentence)} ${sentenceOf(p.cause)}`),
    ),
    ...(words.length === 0
      ? []
      : [
          {
            kind: 'steps' as const,
            steps: words.map(({ text }) => ({ text: sentenceOf(text), parts: [], source: '' })),
          },
        ]),
    ...(figures.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            captions: [caption, 'figure'],
            rows: figures.map((s) => [stepText(s, units), figureText(s.figure!, units)]),
            widths: ['*', 90] as const,
            words: 1,
          },
        ]),
    note(promises.map((p) => `Method: ${p.method}. Source: ${p.source}.`).join(' ')),
  ];
}
