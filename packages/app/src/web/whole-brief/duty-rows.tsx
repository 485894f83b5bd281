import type { Aim } from '@spraywright/engine/rig';
import type { BriefEdit, BriefLists } from './brief-edits.ts';
import { useStore } from '../ui/desk-context.ts';

const AIMS: Readonly<Record<Aim, string>> = {
  height: 'up at something',
  distance: 'along the ground',
  roof: 'over an edge on to a roof',
};

interface Duty {
  readonly id: string;
  readonly name: string;
  readonly open: readonly string[];
  readonly target?: { readonly aim: string };
}

/** Which outlets a duty opens, what it aims at, and how it is taken away. */
export function DutyRows(given: {
  duty: Duty;
  at: number;
  lists: BriefLists;
  only: boolean;
  make: (edit: BriefEdit) => Promise<boolean>;
}) {
  const { duty, at, lists, only, make } = given;
  const store = useStore();
  const turn = (outlet: string, on: boolean) =>
    store.edit({
      about: `Outlets of "${duty.name}"`,
      puts: [
        {
          path: ['brief', 'duties', at, 'open'],
          value: on ? [...duty.open, outlet] : duty.open.filter((o) => o !== outlet),
        },
      ],
    });
  return (
    <>
      <fieldset className="brief-outlets">
        <legend>Opens the</legend>
        {lists.outlets.map((o) => {
          const on = duty.open.includes(o.id);
          return (
            <label key={o.id}>
              <input
                type="checkbox"
                checked={on}
                disabled={on && duty.open.length === 1}
                onChange={(event) => turn(o.id, event.target.checked)}
              />
              {o.name}
            </label>
          );
        })}
      </fieldset>
      <p className="brief-aim">
        <label>
          Aims{' '}
          <select
            value={duty.target?.aim ?? ''}
            onChange={(event) =>
              void make({
                do: 'aim-duty',
                id: duty.id,
                aim: event.target.value === '' ? undefined : (event.target.value as Aim),
              })
            }
          >
            <option value="">at nothing that must be reached</option>
            {Object.entries(AIMS).map(([aim, words]) => (
              <option key={aim} value={aim}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {only ? (
          <span className="note">The only duty: it is changed, not taken away.</span>
        ) : (
          <button
            type="button"
            className="word"
            onClick={() => void make({ do: 'remove-duty', id: duty.id })}
          >
            Take this duty away
          </button>
        )}
      </p>
    </>
  );
}
