import { display } from '@spraywright/engine/quantity';
import { mixCards, type MixCard, type Proof, type Rig } from '@spraywright/engine/rig';
import { head, note, warning, type Block, type Chapter } from '../chapters/chapter.ts';
import type { HandbookOptions } from './handbook-options.ts';

/** How much of what goes into the tank, for several fills. */
export function mixChapter(rig: Rig, proof: Proof, { units }: HandbookOptions): Chapter {
  return {
    id: 'mix',
    title: 'Mix the tank',
    blocks: [
      warning(
        'The product label decides how much, in which order and what to wear. Never mix with anything the label does not name.',
      ),
      ...mixCards(rig, proof.site).flatMap((card) => cardBlocks(card, units)),
    ],
  };
}

function cardBlocks(card: MixCard, units: HandbookOptions['units']): Block[] {
  const volume = (v: number | undefined) => (v === undefined ? undefined : display(v, 'volume', units));
  const mass = (v: number | undefined) => (v === undefined ? undefined : display(v, 'mass', units));
  const told = card.rows.some((r) => r.stockVolume !== undefined || r.stockMass !== undefined);
  const both = (a: string | undefined, b: string | undefined) =>
    [a, b].filter((x) => x !== undefined).join(', ');
  return [
    head(`${card.name}${card.strength === undefined ? '' : `, ${card.strength}`}`),
    ...(told
      ? [
          {
            kind: 'table' as const,
            captions: ['mix in the tank', card.stock, 'water'],
            rows: card.rows.map((r) => [
              display(r.mix, 'volume', units),
              both(volume(r.stockVolume), mass(r.stockMass)),
              both(volume(r.water), mass(r.waterMass)),
            ]),
            widths: ['*', '*', '*'] as const,
            words: 1,
            strong: 1,
          },
        ]
      : []),
    ...(card.steps.length === 0
      ? []
      : [
          {
            kind: 'steps' as const,
            steps: card.steps.map((text) => ({ text: asSentence(text), parts: [], source: '' })),
          },
        ]),
    ...card.cautions.map((text) => note(asSentence(text))),
    ...(card.unknown === undefined ? [] : [note(asSentence(card.unknown))]),
    ...(told ? [note(`Source: ${card.source}.`)] : []),
  ];
}

function asSentence(text: string): string {
  const t = text.trim();
  return `${t.charAt(0).toUpperCase()}${t.slice(1)}${/[.!?]$/.test(t) ? '' : '.'}`;
}
