import { partNumbers } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import type { Proof, Rig } from '@spraywright/engine/rig';
import type { Chapter } from '../chapters/chapter.ts';
import { note } from '../chapters/chapter.ts';
import { addressCode } from './address-code.ts';
import type { HandbookOptions } from './handbook-options.ts';
import { rigPlate, PLATE } from './rig-plate.ts';

/** Which machine this is: its plate, the code of its page, and its parts by number. */
export function identityChapter(rig: Rig, proof: Proof, options: HandbookOptions): Chapter {
  const { address, ...plate } = options;
  const { serial, units } = options;
  const numbers = partNumbers(proof);
  const parts = [...proof.parts].sort((a, b) => numbers.get(a.item)! - numbers.get(b.item)!);
  return {
    id: 'machine',
    title: `Serial ${serial}`,
    blocks: [
      note(
        `This handbook is for serial ${serial} only. Its figures are worked out for the parts of this machine; where it was tested in the yard, the record stands near the end.`,
      ),
      {
        kind: 'drawing',
        svg: rigPlate(rig, proof, plate),
        words: `Plate of serial ${serial}`,
        width: PLATE.width * 0.75,
        ...(address === undefined
          ? {}
          : {
              beside: {
                svg: addressCode(address),
                words: `These pages for a telephone: ${address}`,
                width: 96,
              },
            }),
      },
      note('Circles with numbers are parts, squares are steps.'),
      {
        kind: 'table',
        captions: ['no.', 'part', 'catalogue number'],
        rows: parts.map((p) => [
          String(numbers.get(p.item)),
          `${p.count > 1 ? `${p.count} × ` : ''}${p.name}${p.length === undefined ? '' : `, ${display(p.length, 'length', units)}`}`,
          p.part,
        ]),
        widths: [22, '*', 170],
        words: 3,
      },
    ],
  };
}
