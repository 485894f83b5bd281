import { display } from '@spraywright/engine/quantity';
import { freightOf, tieDownOf, type Proof } from '@spraywright/engine/rig';
import { note, warning, type Chapter } from '../chapters/chapter.ts';
import { freightDensityText } from '../freight-density-text.ts';
import type { QuoteOptions } from '../quote-options.ts';

/** The rig as a piece of freight: how large, how heavy, how it is held. */
export function freightChapter(proof: Proof, { units }: QuoteOptions): Chapter {
  const title = 'Freight';
  const freight = proof.placement === undefined ? undefined : freightOf(proof.placement, proof.bill.dryMass);
  const dry = `Empty and dry it weighs ${display(proof.bill.dryMass, 'mass', units)}.`;
  if (freight === undefined)
    return {
      id: 'freight',
      title,
      blocks: [note(`${dry} Its size is unknown: measure it before asking for freight.`)],
    };
  const length = (v: number) => display(v, 'length', units);
  const tie = tieDownOf(freight);
  return {
    id: 'freight',
    title,
    blocks: [
      warning('It travels empty, drained and with the pressure off; loose hose, gun and boom are fastened.'),
      {
        kind: 'table',
        captions: ['as freight, without crate or pallet', 'estimate'],
        rows: [
          ['length', length(freight.length)],
          ['width', length(freight.width)],
          ['height', length(freight.height)],
          ['weight, empty and dry', display(freight.mass, 'mass', units)],
          ['density', freightDensityText(freight.density, units)],
          ['class by density alone, 13 levels', String(freight.freightClass)],
          ...(tie === undefined
            ? [['tiedowns', 'unknown']]
            : [
                ['tiedowns at least', String(tie.number)],
                ['working load limits of all together at least', display(tie.workingLoad, 'force', units)],
              ]),
        ],
        widths: ['*', 110],
        words: 1,
      },
      note(
        `Sizes are those of the placed parts; measure before booking. The carrier decides the class.${tie === undefined ? '' : ` Tiedowns by ${tie.source}, without a wall in front; the driver decides.`} Tie to the frame, never over the tank, the pump or the reel.`,
      ),
    ],
  };
}
