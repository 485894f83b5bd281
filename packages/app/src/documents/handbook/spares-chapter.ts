import { sparesOf, type Proof, type Rig } from '@spraywright/engine/rig';
import { note, type Chapter } from '../chapters/chapter.ts';
import type { HandbookOptions } from './handbook-options.ts';

/** What wears, by its number in the catalogue of the shop. */
export function sparesChapter(rig: Rig, proof: Proof, { partOf, shop }: HandbookOptions): Chapter {
  return {
    id: 'spares',
    title: 'Spares',
    blocks: [
      note(
        `Order them from ${shop.name}, ${shop.address}, with the serial number and catalogue ${proof.catalogue.version}. Kits of seals and diaphragms: their numbers are not in our catalogue; ask for the sheet of the pump's maker.`,
      ),
      {
        kind: 'table',
        captions: ['catalogue number', 'part', 'why', 'on this rig'],
        rows: sparesOf(rig, proof, partOf).map((s) => [
          s.part,
          s.name,
          s.why,
          s.unit === 'ft' ? `${s.count} ft` : String(s.count),
        ]),
        widths: [150, '*', 130, 56],
        words: 3,
      },
    ],
  };
}
