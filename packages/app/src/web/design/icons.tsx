import { KINDS } from '@spraywright/engine/catalogue';
import { flowSymbol, PALETTES } from '@spraywright/engine/drawings';
import { ArcSign, PinSign, ProjectionSign } from '../ui/signs.tsx';
import { drawnSheet } from './drawn-sheet.ts';
import { Drawn } from './drawn.tsx';

/** Symbols of a plumbing, one for each kind of part that has one, and the signs of the sheet. */
export function Icons() {
  const palette = PALETTES[drawnSheet()];
  const drawn = KINDS.map((kind) => ({ kind, svg: flowSymbol(kind, 20, 20, palette) }));
  const plain = flowSymbol('hardware', 20, 20, palette);
  return (
    <section id="icons" aria-labelledby="icons-head">
      <h2 className="heading" id="icons-head">
        Icons
      </h2>
      <p className="said">
        All drawn by us. Flow symbols follow ISO 1219-1 and ISO 14617; reels, booms and guns are our own. A
        shut valve is filled. Icons never stand without a word.
      </p>
      <ul className="icon-list">
        {drawn
          .filter(({ svg, kind }) => svg !== plain || kind === 'fitting')
          .map(({ kind, svg }) => (
            <li key={kind}>
              <Drawn svg={svg} width={40} height={40} />
              {kind.replaceAll('-', ' ')}
            </li>
          ))}
        <li>
          <Drawn svg={flowSymbol('valve', 20, 20, palette, true)} width={40} height={40} />
          valve, shut
        </li>
        <li>
          <ArcSign />
          the shop
        </li>
        <li>
          <ProjectionSign />
          first-angle views
        </li>
        <li>
          <PinSign />
        </li>
      </ul>
    </section>
  );
}
