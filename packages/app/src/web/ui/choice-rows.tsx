import { STATE_WORDS } from '@spraywright/engine/drawings';
import type { ChoiceRow, FoundRow } from '../protocol.ts';
import { useStore } from './desk-context.ts';
import { Mark } from './marks.tsx';

/** Rigs that could be made instead, a row each: pressed, it is compared with the rig that stands. */
export function ChoiceRows(given: {
  readonly rows: readonly (ChoiceRow | FoundRow)[];
  /** Those compared with the rig that stands, by id. */
  readonly shown: readonly string[];
  readonly found?: true;
}) {
  const { rows, shown, found } = given;
  const store = useStore();
  return (
    <ul className={found === true ? 'best found' : 'best'}>
      {rows.map((row) => (
        <li key={row.id}>
          <button
            type="button"
            aria-pressed={row.letter !== undefined}
            disabled={row.id === 'now'}
            title={row.id === 'now' ? 'Always compared' : 'Compare with the rig as it stands'}
            onClick={() => store.compare(row.id, shown)}
          >
            <span className={row.letter === undefined ? 'balloon' : 'balloon lit'}>{row.letter ?? ''}</span>
            <span className="choice-name">
              {row.name}
              {'alike' in row && row.alike > 1 && <small> cheapest of {row.alike} alike</small>}
            </span>
            <Mark state={row.state} />
            <span className="for-readers">{STATE_WORDS[row.state]}</span>
            <span className="choice-figure">{row.margin}</span>
            {'alike' in row && (
              <>
                <span className="choice-figure">{row.dry}</span>
                <span className="choice-figure">{row.days}</span>
              </>
            )}
            <span className="choice-figure">{row.price}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
