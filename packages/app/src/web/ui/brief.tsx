import { lazy, Suspense, useState } from 'react';
import type { Prose } from '../protocol.ts';
import { Cautions } from './cautions.tsx';
import { useDesk } from './desk-context.ts';
import type { BriefPanelName } from '../whole-brief/whole-brief.tsx';
import { FieldProblems, GivenBox } from './given-box.tsx';

// Fetched when it is first unfolded.
const BriefPanel = lazy(() =>
  import('../whole-brief/whole-brief.tsx').then((m) => ({ default: m.BriefPanel })),
);

const PANELS: readonly (readonly [BriefPanelName, string])[] = [
  ['duty', 'Add a duty'],
  ['liquid', 'Add a liquid'],
  ['all', 'The whole brief'],
];

/** Sentences that a phone shows before the rest is unfolded: caller, target, outlet, stand. */
const FIRST_ON_PHONE = 4;

/** The brief in the customer's words: prose with every given value in a box. */
export function Brief() {
  const prose = useDesk((s) => s.body?.prose);
  const fold = useDesk((s) => s.fold);
  const printing = useDesk((s) => s.printing);
  const [whole, setWhole] = useState(false);
  const [panel, setPanel] = useState<BriefPanelName>();
  if (prose === undefined) return null;
  const short = fold === 'phone' && !whole && !printing;
  const shown = short ? prose.slice(0, FIRST_ON_PHONE) : prose;
  const second = fold === 'desk' ? secondColumn(prose) : shown.length;
  return (
    <section className="brief" aria-labelledby="brief-heading">
      <h2 className="heading" id="brief-heading">
        {fold === 'desk' ? 'Brief, in the customer’s words' : 'Brief'}
      </h2>
      {fold === 'tablet' ? (
        <p className="brief-prose">
          {shown.map((line, i) => (
            <span key={i}>
              <Sentence line={[...line, '.']} />{' '}
            </span>
          ))}
        </p>
      ) : (
        <div className="brief-columns">
          <Sentences lines={shown.slice(0, second)} first={1} />
          {second < shown.length && <Sentences lines={shown.slice(second)} first={second + 1} />}
        </div>
      )}
      {fold === 'phone' && (
        <button type="button" className="word" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? 'Fold the brief' : `The other ${prose.length - FIRST_ON_PHONE} sentences`}
        </button>
      )}
      {!short && (
        <p className="note press-note">
          <span className="given sample">Boxed</span> is given: press to change, drag or use the arrows. (In
          brackets) is our start value: type over it, or confirm it with Enter.
        </p>
      )}
      <p className="brief-acts">
        {PANELS.map(([name, words]) => (
          <button
            key={name}
            type="button"
            className="word"
            aria-expanded={panel === name}
            onClick={() => setPanel(panel === name ? undefined : name)}
          >
            {words}
          </button>
        ))}
      </p>
      {panel !== undefined && (
        <Suspense fallback={<p className="note brief-panel">Looking it up</p>}>
          <BriefPanel panel={panel} close={() => setPanel(undefined)} />
        </Suspense>
      )}
      <Cautions place="brief" />
    </section>
  );
}

/** About what a given value takes in a sentence, box and all [characters]. */
const BOX = 9;

/**
 * Where the second column begins, so that both are about as long. The values themselves do not count: a box that is typed
 * in must not go over to the other column meanwhile. (Columns of the browser's own are laid out anew, all of them, with
 * every figure that changes.)
 */
function secondColumn(prose: readonly Prose[]): number {
  const lengths = prose.map((line) =>
    line.reduce((sum, piece) => sum + (typeof piece === 'string' ? piece.length : BOX), 0),
  );
  const half = lengths.reduce((sum, length) => sum + length, 0) / 2;
  let before = 0;
  const at = lengths.findIndex((length) => (before += length) >= half);
  return Math.max(1, before - half > lengths[at]! / 2 ? at : at + 1);
}

function Sentences({ lines, first }: { lines: readonly Prose[]; first: number }) {
  return (
    <ol start={first}>
      {lines.map((line, i) => (
        <li key={i}>
          <Sentence line={line} />
        </li>
      ))}
    </ol>
  );
}

function Sentence({ line }: { line: Prose }) {
  return (
    <>
      {line.map((piece, i) => {
        if (typeof piece !== 'string') {
          const stop = stopOf(line[i + 1]);
          const box = <GivenBox key={piece.path} given={piece} />;
          return stop === '' ? (
            box
          ) : (
            <span className="box-and-stop" key={piece.path}>
              {box}
              {stop}
            </span>
          );
        }
        const behindBox = i > 0 && typeof line[i - 1] !== 'string';
        return <span key={i}>{behindBox ? piece.slice(stopOf(piece).length) : piece}</span>;
      })}
      <FieldProblems givens={line.filter((piece) => typeof piece !== 'string')} />
    </>
  );
}

/** The stop with which a piece of a sentence begins: it stays with the box before it, and never begins a line. */
function stopOf(piece: Prose[number] | undefined): string {
  return typeof piece === 'string' ? (/^[.,]/.exec(piece)?.[0] ?? '') : '';
}
