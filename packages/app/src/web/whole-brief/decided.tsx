import type { RigJson } from '../protocol.ts';
import { useStore } from '../ui/desk-context.ts';

/** What a person has decided because no data settle it; each decision can be taken back. */
export function Decided({ rig }: { rig: RigJson }) {
  const store = useStore();
  const { decisions = [] } = rig.brief as {
    decisions?: readonly { about: string; who: string; why: string; when: string }[];
  };
  if (decisions.length === 0) return null;
  const takeBack = (i: number) =>
    store.edit({
      about: 'Take a decision back',
      puts: [{ path: ['brief', 'decisions'], value: decisions.filter((_, k) => k !== i) }],
    });
  return (
    <details className="brief-fold">
      <summary>Decided by a person</summary>
      <ul className="brief-decided">
        {decisions.map((d, i) => (
          <li key={i}>
            {d.about}: {d.why} <span className="note">{`${d.who}, ${d.when}`}</span>{' '}
            <button type="button" className="word" onClick={() => takeBack(i)}>
              Take it back
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
