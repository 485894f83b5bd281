import { useState } from 'react';
import type { Prose } from '../protocol.ts';
import { Cautions } from './cautions.tsx';
import { useDesk } from './desk-context.ts';
import { FieldProblems, GivenBox } from './given-box.tsx';

/** Sentences that a phone shows before the rest is unfolded: caller, target, outlet, stand. */
const FIRST_ON_PHONE = 4;

/** The brief in the customer's words: prose with every given value in a box. */
export function Brief() {
  const prose = useDesk((s) => s.body?.prose);
  const fold = useDesk((s) => s.fold);
  const [whole, setWhole] = useState(false);
  if (prose === undefined) return null;
  const short = fold === 'phone' && !whole;
  const shown = short ? prose.slice(0, FIRST_ON_PHONE) : prose;
  return (
    <section className="brief" aria-labelledby="brief-heading">
      <h2 className="heading" id="brief-heading">
        {fold === 'desk' ? 'Brief, in the customer’s words' : 'Brief'}
      </h2>
      {fold === 'tablet' ? (
        <p className="brief-prose">
          {shown.map((line, i) => (
            <span key={i}>
              <Sentence line={line} />
              {'. '}
            </span>
          ))}
        </p>
      ) : (
        <ol>
          {shown.map((line, i) => (
            <li key={i}>
              <Sentence line={line} />
            </li>
          ))}
        </ol>
      )}
      {fold === 'phone' && (
        <button type="button" className="word" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? 'Fold the brief' : `The other ${prose.length - FIRST_ON_PHONE} sentences`}
        </button>
      )}
      {!short && (
        <p className="note">
          <span className="given sample">Boxed</span> is given: press to change, drag or use the arrows. (In
          brackets) is our start value.
        </p>
      )}
      <Cautions place="brief" />
    </section>
  );
}

function Sentence({ line }: { line: Prose }) {
  return (
    <>
      {line.map((piece, i) =>
        typeof piece === 'string' ? (
          <span key={i}>{piece}</span>
        ) : (
          <GivenBox key={piece.path} given={piece} />
        ),
      )}
      <FieldProblems givens={line.filter((piece) => typeof piece !== 'string')} />
    </>
  );
}
