import { PALETTES, STATE_WORDS, stateMark } from '@spraywright/engine/drawings';
import { drawnSheet } from './drawn-sheet.ts';
import { Drawn } from './drawn.tsx';

const STATES = [
  ['broken', 'a line whose ends are parted'],
  ['thin', 'two arrows nose to nose: under 5 % to spare'],
  ['unknown', '? in a dashed ring: data are missing, somebody is to be asked'],
  ['kept', 'a tick; plain ink, since what is well needs no colour'],
] as const;

/** What the signs of drawing practice mean here. */
export function Devices() {
  const palette = PALETTES[drawnSheet()];
  return (
    <section id="idea" aria-labelledby="idea-head">
      <h2 className="heading" id="idea-head">
        Idea
      </h2>
      <p className="said">
        Nothing is decoration. Each sign is taken from drawing practice and keeps its meaning: whoever reads
        drawings reads this page. Figures stand beside the thing they measure. Weight comes before colour, and
        colour never says anything alone. No cards, shadows, rounded corners, gradients, pop-ups.
      </p>
      <dl className="design-list">
        <dt>
          <span className="given sample">52 ft</span>
        </dt>
        <dd>
          a boxed figure is given: press it, type, drag it or use the arrows. A bare figure is computed.
        </dd>
        <dt>
          <span className="given sample">(3 mph)</span>
        </dt>
        <dd>in brackets: a start value that nobody has confirmed.</dd>
        <dt>
          <span className="balloon">7</span>
        </dt>
        <dd>one number for a part in scene, line, list, yard test and handbook. Lit is inverted.</dd>
        {STATES.map(([state, text]) => (
          <div className="row" key={state}>
            <dt className={state}>
              <Drawn svg={stateMark(state, 9, 9, palette)} width={18} height={18} />{' '}
              <b>{STATE_WORDS[state]}</b>
            </dt>
            <dd>{text}.</dd>
          </div>
        ))}
      </dl>
      <p className="said">
        Words: has and asked, short and spare, ways out, half the water, farthest drops, 9 in 10, 5 to 95 %.
        Sentences say what happens to the customer. An unknown says whom to ask. No exclamation, no praise, no
        promise of legality.
      </p>
    </section>
  );
}
