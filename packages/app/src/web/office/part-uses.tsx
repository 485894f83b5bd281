import { useState } from 'react';
import { deskAt, hashOf } from '../frame/hash.ts';
import { usesOf, type Uses } from './parts-link.ts';

interface Use {
  readonly name: string;
  readonly href: string;
}

/** Where a part stands: jobs, open quotes, machines; asked for when it is opened. */
export function PartUses({ id }: { readonly id: string }) {
  const [uses, setUses] = useState<Uses | { readonly why: string }>();
  const open = async () => {
    const answer = await usesOf(id);
    setUses('why' in answer ? answer : answer.value);
  };
  return (
    <details className="part-uses" onToggle={(event) => event.currentTarget.open && void open()}>
      <summary>Where it is used</summary>
      {uses !== undefined && 'why' in uses && <p>{uses.why}</p>}
      {uses !== undefined && 'jobs' in uses && (
        <>
          <Group name="Jobs" uses={uses.jobs.map((j) => ({ name: said(j.id, j), href: deskAt(j.id) }))} />
          <Group
            name="Open quotes"
            uses={uses.quotes.map((q) => ({ name: said(q.number, q), href: hashOf('quotes', q.number) }))}
          />
          <Group
            name="Machines"
            uses={uses.machines.map((m) => ({
              name: said(m.serial, m),
              href: `./machines.html${hashOf(m.serial)}`,
            }))}
          />
          <p>Fittings and small hardware that the bill of a job chooses by itself are not told here.</p>
        </>
      )}
    </details>
  );
}

function Group({ name, uses }: { readonly name: string; readonly uses: readonly Use[] }) {
  return (
    <>
      <h3 className="heading">{name}</h3>
      {uses.length === 0 ? (
        <p>none</p>
      ) : (
        <ul>
          {uses.map((use) => (
            <li key={use.href}>
              <a href={use.href}>{use.name}</a>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function said(
  id: string,
  { title, customer }: { readonly title: string; readonly customer: string },
): string {
  return [id, title, customer].filter((text) => text !== '').join(', ');
}
