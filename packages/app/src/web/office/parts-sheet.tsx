import { useState } from 'react';
import { KINDS, type Kind } from '@spraywright/engine/catalogue';
import { moneyText } from '@spraywright/engine/quantity';
import { hashOf } from '../frame/hash.ts';
import { sells, useMe } from '../frame/me.ts';
import { useFound, type Found } from '../frame/use-found.ts';
import { NewPart, PartSheet } from './part-sheet.tsx';
import { findParts, type ListedPart, type PartsAsked } from './parts-link.ts';
import { PartsTable } from './parts-table.tsx';
import { QuotesAgain } from './quotes-again.tsx';
import '../style/office-parts.css';

/** The catalogue: find a part, open one, add one, read a table. */
export function PartsSheet({ at }: { readonly at: readonly string[] }) {
  // No id has a capital letter.
  const [first = '', second = ''] = at;
  if (first === 'Table') return <PartsTable />;
  if (first === 'Quotes') return <QuotesAgain />;
  if (first === 'New') return <NewPart key={second} kind={KINDS.find((kind) => kind === second) ?? 'pump'} />;
  return first === '' ? <PartsList /> : <PartSheet key={first} id={first} />;
}

/** A line of the list, with the edition of the catalogue that it was read from. */
type Line = ListedPart & { readonly catalogue: number };

function PartsList() {
  const mayChange = sells(useMe());
  const [asked, setAsked] = useState<PartsAsked>({ find: '', kind: '', standing: 'kept' });
  const { found, more } = useFound(asked, pageOf);
  const [fresh, setFresh] = useState<Kind>('pump');
  const edition = found?.items[0]?.catalogue;
  return (
    <div className="parts-keeping">
      <h1>Parts{edition === undefined ? '' : `, catalogue edition ${edition}`}</h1>
      <form className="parts-ask" role="search" onSubmit={(event) => event.preventDefault()}>
        <label className="parts-find">
          What it is or does
          <input
            type="search"
            value={asked.find}
            placeholder="diaphragm 290 psi"
            onChange={(e) => setAsked({ ...asked, find: e.target.value })}
          />
        </label>
        <label>
          Kind
          <KindChoice value={asked.kind} all change={(kind) => setAsked({ ...asked, kind })} />
        </label>
        <label>
          Standing
          <select value={asked.standing} onChange={(e) => setAsked({ ...asked, standing: e.target.value })}>
            <option value="kept">in use</option>
            <option value="retired">retired</option>
            <option value="both">both</option>
          </select>
        </label>
      </form>
      <ul className="parts-list">
        {found?.items.map((part) => (
          <li key={part.id}>
            <a href={hashOf('parts', part.id)}>{part.name}</a>
            <span>{part.kind}</span>
            <span className="parts-id">{part.id}</span>
            <span className="parts-price">
              {part.retired ? 'retired' : part.priceCents === undefined ? '' : moneyText(part.priceCents)}
            </span>
          </li>
        ))}
      </ul>
      <p role="status">{found === undefined ? '' : wordsOfFound(found)}</p>
      {found?.next !== undefined && (
        <button className="part-button" onClick={() => void more()}>
          More
        </button>
      )}
      <p className="part-acts">
        {mayChange && (
          <>
            <a className="part-button" href={hashOf('parts', 'Table')}>
              Read a price list or table
            </a>
            <a className="part-button" href={hashOf('parts', 'Quotes')}>
              Open quotes, proven again
            </a>
          </>
        )}
        {asked.kind !== '' && (
          <a className="part-button" href={`api/parts.csv?kind=${asked.kind}`} download>
            Write {asked.kind} as CSV
          </a>
        )}
        {mayChange && (
          <>
            <label>
              New <KindChoice value={fresh} change={(kind) => setFresh(kind as Kind)} />
            </label>
            <a className="part-button" href={hashOf('parts', 'New', fresh)}>
              Add a part
            </a>
          </>
        )}
      </p>
    </div>
  );
}

function KindChoice(given: {
  readonly value: string;
  readonly all?: boolean;
  readonly change: (kind: string) => void;
}) {
  return (
    <select value={given.value} onChange={(e) => given.change(e.target.value)}>
      {given.all === true && <option value="">every kind</option>}
      {KINDS.map((kind) => (
        <option key={kind}>{kind}</option>
      ))}
    </select>
  );
}

function wordsOfFound({ why, items, next }: Found<PartsAsked, Line>): string {
  if (why !== undefined) return why;
  if (items.length === 0) return 'No part has all these words.';
  return `${items.length} part${items.length === 1 ? '' : 's'}${next === undefined ? '' : ', and more'}.`;
}

async function pageOf(asked: PartsAsked, after?: string) {
  const answer = await findParts(asked, after);
  if ('why' in answer) return answer;
  const { parts, edition, next } = answer.value;
  return { items: parts.map((part): Line => ({ ...part, catalogue: edition })), next };
}
