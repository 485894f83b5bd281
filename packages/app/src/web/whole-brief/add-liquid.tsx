import { useState, type SyntheticEvent } from 'react';
import type { BriefEdit, BriefLists } from './brief-edits.ts';
import { Acts } from './add-duty.tsx';
import { CHOICE_WORDS } from './brief-fields.data.ts';
import { useBriefEdit } from './use-brief-edit.ts';

type Use = Extract<BriefEdit, { do: 'add-liquid' }>['use'];
const USES: readonly Use[] = ['spray', 'flush', 'winterise'];

/** Another liquid: one that the tables know, or any by its name. */
export function AddLiquid({ lists, close }: { lists: BriefLists; close: () => void }) {
  const [liquid, setLiquid] = useState(lists.liquids[0]?.[0] ?? '');
  const [name, setName] = useState('');
  const [use, setUse] = useState<Use>('spray');
  const { refused, make } = useBriefEdit();
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    const named = name.trim() === '' && liquid !== '' ? {} : { name };
    if (await make({ do: 'add-liquid', liquid, use, ...named })) close();
  };
  return (
    <form
      className="brief-form"
      aria-label="Add a liquid"
      noValidate
      onSubmit={(event) => void submit(event)}
    >
      <label>
        Liquid{' '}
        <select autoFocus value={liquid} onChange={(event) => setLiquid(event.target.value)}>
          {lists.liquids.map(([id, called]) => (
            <option key={id} value={id}>
              {called}
            </option>
          ))}
          <option value="">Another, in no table</option>
        </select>
      </label>
      <label>
        called{' '}
        <input
          value={name}
          placeholder={liquid === '' ? 'as its label says' : 'as above'}
          autoComplete="off"
          maxLength={60}
          aria-invalid={refused !== undefined}
          onChange={(event) => setName(event.target.value)}
        />
      </label>
      <label>
        to{' '}
        <select value={use} onChange={(event) => setUse(event.target.value as Use)}>
          {USES.map((u) => (
            <option key={u} value={u}>
              {CHOICE_WORDS[u]}
            </option>
          ))}
        </select>
      </label>
      <Acts refused={refused} close={close} />
      {liquid === '' && (
        <p className="note">
          Of a liquid in no table the proof asks for density, viscosity and what it does to the parts: take
          them from its safety data sheet.
        </p>
      )}
    </form>
  );
}
