import { useState, type FormEvent } from 'react';
import { today } from '../frame/moment.ts';
import { useStore } from './desk-context.ts';

/** What data do not settle and a person must decide; the decision is written into the brief with who, why and when. */
export function Decisions({ about }: { about: readonly string[] }) {
  const store = useStore();
  const [open, setOpen] = useState(false);
  const [who, setWho] = useState('');
  const [why, setWhy] = useState('');
  const decide = (event: FormEvent) => {
    event.preventDefault();
    const brief = store.job()?.rig.brief as { decisions?: readonly unknown[] } | undefined;
    const when = today();
    store.edit({
      about: 'Decision',
      puts: [
        {
          path: ['brief', 'decisions'],
          value: [...(brief?.decisions ?? []), ...about.map((a) => ({ about: a, who, why, when }))],
        },
      ],
    });
  };
  if (!open)
    return (
      <p className="cause decide-note">
        <button type="button" className="word" aria-expanded="false" onClick={() => setOpen(true)}>
          Decide it
        </button>{' '}
        with name and reason; the quote will say so.
      </p>
    );
  return (
    <form className="decide" onSubmit={decide}>
      <label>
        Who <input value={who} onChange={(e) => setWho(e.target.value)} required maxLength={60} />
      </label>
      <label>
        Why <input value={why} onChange={(e) => setWhy(e.target.value)} required maxLength={300} />
      </label>
      <button type="submit" className="take">
        Decide
      </button>
    </form>
  );
}
