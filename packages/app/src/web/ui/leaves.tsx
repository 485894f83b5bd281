import type { Leaf } from '../protocol.ts';
import { useDesk, useStore } from './desk-context.ts';
import { OtherSheets } from './other-sheets.tsx';

const LEAVES: readonly (readonly [Leaf, string])[] = [
  ['desk', 'Desk'],
  ['plumbing', 'Plumbing'],
  ['curves', 'Curves'],
  ['choices', 'Choices'],
];

/** The sheets of the job: which drawings lie beside its promises and parts. */
export function Leaves() {
  const store = useStore();
  const leaf = useDesk((s) => s.leaf);
  const fold = useDesk((s) => s.fold);
  const drawn = useDesk((s) => s.body !== undefined);
  if (!drawn) return null;
  return (
    <nav className="leaves" aria-label="Sheets of the job">
      <span className="heading">Sheet</span>
      <ul>
        {LEAVES.map(([id, name]) => (
          <li key={id}>
            <button
              type="button"
              aria-current={id === leaf ? 'page' : undefined}
              onClick={() => store.setLeaf(id)}
            >
              {name}
            </button>
          </li>
        ))}
      </ul>
      {fold !== 'phone' && (
        <>
          <span className="index-gap" />
          <OtherSheets />
        </>
      )}
    </nav>
  );
}
