import type { Content } from 'pdfmake/interfaces.js';
import type { Proof } from '@spraywright/engine/rig';
import { originWords } from './origin-words.ts';
import { INK, INK2, PAD } from './paper/sheet.ts';
import { mixed, paragraph } from './paper/text.ts';

/** Cautions that the rig and its work bring up, then those that the proof does not rule out, each with its source. */
export function cautionParagraphs(proof: Proof): Content[] {
  const all = proof.cautions;
  const caused = all.filter((c) => c.state === 'caused');
  const open = all.filter((c) => c.state === 'unknown');
  return [
    ...caused.map(({ caution }) => ({
      ...mixed(
        [
          [`${caution.danger} `, { bold: true, size: 9, color: INK }],
          [`${caution.act} `, { size: 9, color: INK }],
          [`Source: ${originWords(caution.origin)}.`, { size: 7.6, color: INK2 }],
        ],
        { size: 9, color: INK, margin: [PAD, 0, PAD, 4] },
      ),
      unbreakable: true,
    })),
    ...(open.length === 0
      ? []
      : [
          paragraph('This proof does not rule out these too; they hold unless you know better:', {
            size: 9,
            color: INK,
            margin: [PAD, 2, PAD, 2],
          }),
          ...open.map(({ caution }) =>
            mixed(
              [
                [`${caution.danger} ${caution.act} `, { size: 8.2, color: INK }],
                [`Source: ${caution.origin.source}.`, { size: 7.6, color: INK2 }],
              ],
              { size: 8.2, color: INK, margin: [PAD, 0, PAD, 2] },
            ),
          ),
        ]),
  ];
}
