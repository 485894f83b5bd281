import { useState, type SyntheticEvent } from 'react';
import { KINDS } from '@spraywright/engine/catalogue';
import { hashOf } from '../frame/hash.ts';
import { wordsOf } from '../part-form/part-draft.ts';
import type { Got, Refused } from './got.ts';
import { readTable, type Planned } from './parts-link.ts';

/** Changes shown; the rest is counted. */
const SHOWN = 200;

/** A table from a spreadsheet: what it would change, cell by cell, before anything is written. */
export function PartsTable() {
  const [csv, setCsv] = useState('');
  const [name, setName] = useState('table');
  const [kind, setKind] = useState('');
  const [from, setFrom] = useState('');
  const [got, setGot] = useState<Got<Planned>>();
  const table = { csv, name, ...(kind === '' ? {} : { kind }), ...(from === '' ? {} : { pricesFrom: from }) };
  const look = async (event: SyntheticEvent) => {
    event.preventDefault();
    setGot(await readTable(table));
  };
  const write = async (edition: number) => setGot(await readTable({ ...table, write: true, edition }));
  const fresh = (set: (text: string) => void) => (text: string) => {
    set(text);
    setGot(undefined);
  };
  return (
    <div className="parts-keeping">
      <p>
        <a href={hashOf('parts')}>All parts</a>
      </p>
      <h1>Read a price list or table</h1>
      <p>
        A row a part, a column headed <code>id</code>, and a column for each field that changes:{' '}
        <code>cost</code> and <code>price</code> in dollars, others by the names that &ldquo;Write as
        CSV&rdquo; gives them, the unit in the head (<code>bore [in]</code>) or in the cell. Empty cells
        change nothing.
      </p>
      <form className="parts-ask" onSubmit={(event) => void look(event)}>
        <label>
          CSV file
          <input
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            onChange={(event) => {
              const file = event.target.files?.[0];
              if (file === undefined) return;
              setName(file.name);
              void file.text().then(fresh(setCsv));
            }}
          />
        </label>
        <label className="parts-csv">
          or the rows themselves
          <textarea rows={6} value={csv} spellCheck={false} onChange={(e) => fresh(setCsv)(e.target.value)} />
        </label>
        <label>
          Kind
          <select value={kind} onChange={(e) => fresh(setKind)(e.target.value)}>
            <option value="">told by the ids</option>
            {KINDS.map((k) => (
              <option key={k}>{k}</option>
            ))}
          </select>
        </label>
        <label>
          Prices hold from
          <input type="date" value={from} onChange={(e) => fresh(setFrom)(e.target.value)} />
        </label>
        <button className="part-button" disabled={csv.trim() === ''}>
          Show what changes
        </button>
      </form>
      <div role="status">{got !== undefined && 'value' in got && <Summary planned={got.value} />}</div>
      {got !== undefined && 'why' in got && <Refusals {...got} />}
      {got !== undefined && 'value' in got && <Changes planned={got.value} write={write} />}
    </div>
  );
}

function Summary({
  planned: { kind, edition, written, added, changes, unchanged },
}: {
  readonly planned: Planned;
}) {
  const changed = new Set(changes.map((c) => c.part)).size - added.length;
  return (
    <p>
      {written ? `Written as edition ${edition}. ` : ''}
      {kind}: {changed} changed, {added.length} new, {unchanged} as before.
    </p>
  );
}

function Refusals(given: {
  readonly why: string;
  readonly problems: readonly Refused[];
  readonly more?: number;
}) {
  const { why, problems, more = 0 } = given;
  return (
    <div role="alert" className="part-why">
      <p>Nothing was written. {problems.length === 0 ? why : ''}</p>
      <ul>
        {problems.map((p, i) => (
          <li key={i}>
            {p.line !== undefined && `line ${p.line}, column ${p.column}: `}
            {p.field !== '' && !p.message.startsWith(p.field) ? `${p.field}: ` : ''}
            {p.message}
          </li>
        ))}
      </ul>
      {more > 0 && <p>and {more} more.</p>}
    </div>
  );
}

function Changes(given: { readonly planned: Planned; readonly write: (edition: number) => Promise<void> }) {
  const { edition, written, changes } = given.planned;
  if (changes.length === 0) return null;
  return (
    <>
      <table className="part-changes">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Part</th>
            <th scope="col">Field</th>
            <th scope="col">Was</th>
            <th scope="col">{written ? 'Is' : 'Becomes'}</th>
          </tr>
        </thead>
        <tbody>
          {changes.slice(0, SHOWN).map((c) => (
            <tr key={`${c.line} ${c.field}`}>
              <td>{c.line}</td>
              <td>{c.part}</td>
              <td>{wordsOf(c.field)}</td>
              <td>{cell(c.field, c.before)}</td>
              <td>{cell(c.field, c.after)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {changes.length > SHOWN && <p>and {changes.length - SHOWN} more cells.</p>}
      {!written && (
        <button className="part-button" onClick={() => void given.write(edition)}>
          Write all of it
        </button>
      )}
    </>
  );
}

function cell(field: string, text: string | undefined): string {
  if (text === undefined) return '';
  return field.endsWith('Cents') ? (Number(text) / 100).toFixed(2) : text;
}
