import { display, type UnitSystem } from '../../quantity/index.ts';
import type { Proof } from '../../rig/index.ts';
import { balloon } from '../balloon.ts';
import { levelDimension, textWidth } from '../dimension.ts';
import type { Palette } from '../palette.ts';
import { drawing, element, label, path, stroke } from '../svg.ts';
import { deckPlanOf, type DeckFigure } from './deck-figures.ts';

interface DeckPlanOptions {
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
}

const EDGE = 26;
const WORDS = 11.5;
const LINE_OF = {
  deck: 'outline',
  parts: 'thin',
  covered: 'hidden',
  numbers: 'thin',
  supports: 'centre',
  balance: 'thin',
} as const;

/** The deck from above, front at the left, to scale; undefined for a rig without a carrier. */
export function deckPlan(proof: Proof, { width, units, palette }: DeckPlanOptions): string | undefined {
  const plan = deckPlanOf(proof);
  if (plan === undefined) return undefined;
  const { box, figures } = plan;
  const scale = (width - 2 * EDGE) / Math.max(0.5, box.x1 - box.x0);
  const px = (x: number) => EDGE + (x - box.x0) * scale;
  // From above and with the front at the left, what is on the left hand lies towards the foot of the sheet.
  const py = (y: number) => EDGE + (y - box.y0) * scale;
  const foot = py(box.y1);
  const { deckLength } = proof.placement!.carrier;
  const draw = (f: DeckFigure): string => {
    switch (f.kind) {
      case 'outline':
        return element('path', {
          d: path(f.points.map(([x, y]) => [px(x), py(y)])),
          ...stroke(LINE_OF[f.layer], palette.ink, palette),
          ...(f.layer === 'parts' ? { fill: palette.paper } : {}),
        });
      case 'circle':
        return element('circle', {
          cx: px(f.at[0]),
          cy: py(f.at[1]),
          r: 5,
          ...stroke('thin', palette.ink, palette),
          fill: f.layer === 'balance' ? palette.ink : palette.paper,
        });
      case 'text':
        return f.layer === 'numbers'
          ? balloon(Number(f.text), px(f.at[0]), py(f.at[1]), false, palette)
          : label(
              Math.max(px(f.at[0]), 4 + textWidth(f.text, WORDS) * 0.7),
              py(f.at[1]) + (f.layer === 'supports' ? -6 : 4),
              f.text,
              { size: WORDS, color: palette.ink2, anchor: 'middle', halo: palette.paper },
            );
    }
  };
  return drawing(
    width,
    foot + 44,
    'The deck from above with its parts by number, what it rests on, and its centre of gravity full and empty',
    ...figures.map(draw),
    levelDimension(
      {
        from: px(0),
        to: px(deckLength),
        y: foot + 24,
        above: foot + 6,
        text: display(deckLength, 'length', units),
        boxed: false,
        words: 'deck',
      },
      palette,
    ),
  );
}
