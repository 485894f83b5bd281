import { memo } from 'react';
import type { CautionNote } from '../protocol.ts';
import { useDesk } from './desk-context.ts';

const NONE: readonly CautionNote[] = [];

/** Cautions where the work is: the danger always, what to do at a press. */
export const Cautions = memo(function Cautions({ place }: { place: CautionNote['place'] }) {
  const cautions = useDesk((s) => s.body?.cautions ?? NONE);
  const here = cautions.filter((c) => c.place === place);
  if (here.length === 0) return null;
  return (
    <div className="cautions">
      {here.map((c) => (
        <details key={c.id}>
          <summary>
            <b>Caution</b> {c.danger}
          </summary>
          <p>{c.act}</p>
          <p className="note">{c.source}</p>
        </details>
      ))}
    </div>
  );
});
