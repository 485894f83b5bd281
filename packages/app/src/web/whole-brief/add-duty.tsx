import { useState, type SyntheticEvent } from 'react';
import type { Outlet } from '@spraywright/engine/catalogue';
import type { BriefEdit, BriefLists } from './brief-edits.ts';
import { useDesk } from '../ui/desk-context.ts';
import { useBriefEdit } from './use-brief-edit.ts';

/** Another thing to spray: what it is called, by which outlet, and which liquid. */
export function AddDuty({ lists, close }: { lists: BriefLists; close: () => void }) {
  const liquids = useDesk((s) => {
    const job = s.current === undefined ? undefined : s.jobs[s.current];
    return (job?.rig.brief as { liquids?: readonly { id: string; name: string; use?: string }[] }).liquids;
  });
  const first = lists.outlets.find((o) => o.fitted) ?? lists.outlets[0];
  const [name, setName] = useState('');
  const [outlet, setOutlet] = useState<Outlet | undefined>(first?.id);
  const [liquid, setLiquid] = useState(liquids?.find((l) => (l.use ?? 'spray') === 'spray')?.id ?? '');
  const { refused, make } = useBriefEdit();
  if (outlet === undefined)
    return <p className="note">No family of rigs in the catalogue serves this kind of work.</p>;
  const fitted = lists.outlets.find((o) => o.id === outlet)?.fitted === true;
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    const edit: BriefEdit = { do: 'add-duty', name, outlet, liquid };
    if (await make(edit)) close();
  };
  return (
    <form className="brief-form" aria-label="Add a duty" noValidate onSubmit={(event) => void submit(event)}>
      <label>
        What is sprayed besides{' '}
        <input
          autoFocus
          value={name}
          placeholder="lower crowns along the drive"
          autoComplete="off"
          maxLength={80}
          aria-invalid={refused !== undefined}
          onChange={(event) => setName(event.target.value)}
        />
      </label>
      <label>
        by the{' '}
        <select value={outlet} onChange={(event) => setOutlet(event.target.value as Outlet)}>
          {lists.outlets.map((o) => (
            <option key={o.id} value={o.id}>
              {o.name}
            </option>
          ))}
        </select>
      </label>
      <label>
        with{' '}
        <select value={liquid} onChange={(event) => setLiquid(event.target.value)}>
          {liquids?.map((l) => (
            <option key={l.id} value={l.id}>
              {l.name}
            </option>
          ))}
        </select>
      </label>
      <Acts refused={refused} close={close} />
      {!fitted && (
        <p className="note">
          This rig does not have it yet: once the duty is added, the parts are chosen again at a press.
        </p>
      )}
      <p className="note">
        It begins with our start values (in brackets) until you type over or confirm them.
      </p>
    </form>
  );
}

/** Why it was refused, and the two buttons of a form of the brief. */
export function Acts({ refused, close }: { refused: string | undefined; close: () => void }) {
  return (
    <>
      {refused !== undefined && (
        <p className="field-problem" role="alert">
          {refused}
        </p>
      )}
      <span className="brief-form-acts">
        <button className="take">Add it</button>
        <button type="button" className="word" onClick={close}>
          Leave it
        </button>
      </span>
    </>
  );
}
