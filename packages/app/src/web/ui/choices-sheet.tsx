import { STATE_WORDS } from '@spraywright/engine/drawings';
import type { Compared } from '../protocol.ts';
import { CatalogueSearch } from './catalogue-search.tsx';
import { ChoiceRows } from './choice-rows.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { Mark } from './marks.tsx';
import { Picture, useSize } from './picture.tsx';

/** Rigs that could be made instead: price against margin, those that none beats, and up to four side by side. */
export function ChoicesSheet() {
  const store = useStore();
  const choices = useDesk((s) => s.choices);
  const ref = useSize<HTMLElement>((width) => store.setSizes({ curveWidth: Math.floor(width) - 24 }));
  if (choices === undefined)
    return (
      <section className="choices" aria-label="Choices" aria-busy="true" ref={ref}>
        <p className="note waiting">Being worked out.</p>
      </section>
    );
  const { svg, sentence, tried, total, done, best, compared } = choices;
  const shown = compared.rigs.slice(1).map((r) => r.id);
  return (
    <section className="choices" aria-label="Choices" aria-busy={!done} ref={ref}>
      <Picture svg={svg} className="choice-picture" />
      <p className="choices-sentence">{sentence}</p>
      <p className="note choices-progress" role="status">
        {done ? `All ${total} worked out.` : `${tried} of ${total} worked out.`}
      </p>
      <CatalogueSearch />
      <h2 className="heading">With one other part, beaten by no other</h2>
      <ChoiceRows rows={best} shown={shown} />
      <SideBySide compared={compared} />
    </section>
  );
}

function SideBySide({ compared }: { compared: Compared }) {
  const store = useStore();
  return (
    <div className="side-by-side" tabIndex={0} role="region" aria-label="Rigs side by side">
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="heading">Side by side</span>
            </th>
            {compared.rigs.map(({ id, letter, name, take }) => (
              <th key={id} scope="col">
                <span className="balloon">{letter}</span> {name}
                {take !== undefined && (
                  <button
                    type="button"
                    className="word"
                    onClick={() =>
                      'rig' in take
                        ? store.takeRig(take.rig, 'Take a rig that was found')
                        : store.take(take.slot, take.part, name)
                    }
                  >
                    Take
                  </button>
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {compared.rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {cells.map(({ text, same, change, state }, i) => (
                <td key={i} className={same ? 'same' : i === 0 ? '' : 'differs'}>
                  {state !== undefined && !same && (
                    <>
                      <Mark state={state} /> <span className="for-readers">{STATE_WORDS[state]}</span>
                    </>
                  )}
                  {same ? (
                    <>
                      <span aria-hidden="true">″</span>
                      <span className="for-readers">the same, {text}</span>
                    </>
                  ) : (
                    text
                  )}
                  {change !== undefined && !same && <small> {change}</small>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {compared.more > 0 && <p className="note">{compared.more} more promises differ.</p>}
    </div>
  );
}
