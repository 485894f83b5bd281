import { useCallback, useEffect, useMemo, useState, type SyntheticEvent } from 'react';
import { PART_SHAPES, type Kind } from '@spraywright/engine/catalogue';
import { moneyText } from '@spraywright/engine/quantity';
import { hashOf } from '../frame/hash.ts';
import { sells, useMe } from '../frame/me.ts';
import { CurveReader } from './curve-reader.tsx';
import { documentOf, draftOf, type Draft } from '../part-form/part-draft.ts';
import { PartFields } from '../part-form/part-fields.tsx';
import type { Got } from './got.ts';
import { PartInStore } from './part-stock.tsx';
import { PartUses } from './part-uses.tsx';
import { addPart, openPart, putPart, setStanding, type PartOpened, type RawPart } from './parts-link.ts';

/** One part: its fields, its prices, where it is, and whether new rigs may have it. */
export function PartSheet({ id }: { readonly id: string }) {
  const mayChange = sells(useMe());
  const [part, setPart] = useState<PartOpened>();
  const [said, setSaid] = useState('');
  const load = useCallback(
    async (day = '') => {
      const answer = await openPart(id, day);
      if ('why' in answer) setSaid(answer.why);
      else setPart(answer.value);
    },
    [id],
  );
  useEffect(() => void load(), [load]);
  const keep = async (document: RawPart, from: string) => {
    const answer = await putPart(id, part!.edition, document, from);
    if ('why' in answer) return answer;
    setPart(answer.value);
    setSaid(
      answer.value.edition === part!.edition
        ? 'Nothing was different.'
        : `Kept as edition ${answer.value.edition}.`,
    );
    return answer;
  };
  const stand = async (retired: boolean) => {
    const answer = await setStanding(id, retired);
    if ('why' in answer) return setSaid(answer.why);
    setPart(answer.value);
    setSaid(
      retired
        ? 'Retired: rigs that have it keep it, no new rig gets it.'
        : 'Taken back: new rigs may have it.',
    );
  };
  return (
    <div className="parts-keeping">
      <p>
        <a href={hashOf('parts')}>All parts</a>
      </p>
      <h1>{part?.name ?? id}</h1>
      <p role="status" className="part-said">
        {said}
      </p>
      {part !== undefined && (
        <>
          <p className="part-acts">
            <span>
              {part.kind} {part.id}, edition {part.edition}
              {part.retired ? ', retired' : ''}
              {part.changedBy === '' ? '' : `, last changed by ${part.changedBy}`}
            </span>
            {mayChange && (
              <button className="part-button" onClick={() => void stand(!part.retired)}>
                {part.retired ? 'Take it back' : 'Retire it'}
              </button>
            )}
          </p>
          <Prices part={part} load={load} />
          <PartInStore part={part} />
          <PartUses id={id} />
          <PartForm
            key={part.edition}
            kind={part.kind}
            document={part.document}
            known
            {...(mayChange ? { keep } : {})}
          />
        </>
      )}
    </div>
  );
}

/** A part that the catalogue does not have yet. */
export function NewPart({ kind }: { readonly kind: Kind }) {
  const add = async (document: RawPart) => {
    const answer = await addPart(kind, document);
    if (!('why' in answer)) location.hash = hashOf('parts', answer.value.id);
    return answer;
  };
  return (
    <div className="parts-keeping">
      <p>
        <a href={hashOf('parts')}>All parts</a>
      </p>
      <h1>A new {kind}</h1>
      <p>
        Figures as the leaflet has them, each with its unit. What the leaflet does not say is not guessed.
      </p>
      <PartForm kind={kind} document={{ stock: 0, ports: [], wetted: [] }} keep={add} />
    </div>
  );
}

function Prices({
  part,
  load,
}: {
  readonly part: PartOpened;
  readonly load: (day: string) => Promise<void>;
}) {
  const [day, setDay] = useState('');
  const { costCents, priceCents } = part.document as { costCents?: number; priceCents: number };
  return (
    <section aria-label="Prices">
      <h2 className="heading">Prices</h2>
      <p className="part-acts">
        <label>
          On the day{' '}
          <input
            type="date"
            value={day}
            onChange={(e) => {
              setDay(e.target.value);
              void load(e.target.value);
            }}
          />
        </label>
        <span>
          {costCents !== undefined && `costs ${moneyText(costCents)}, `}sold for {moneyText(priceCents)}
        </span>
      </p>
      <ul className="part-prices">
        {part.prices.map((price) => (
          <li key={price.from}>
            {price.from === '0000-01-01' ? 'from the start' : `from ${price.from}`}:{' '}
            {price.costCents !== undefined && `${moneyText(price.costCents)} / `}
            {moneyText(price.priceCents)}
            {price.by === '' ? '' : `, ${price.by}`}
          </li>
        ))}
      </ul>
    </section>
  );
}

function PartForm(given: {
  readonly kind: Kind;
  readonly document: RawPart;
  /** The part is in the catalogue: its id stays, a price may begin later. */
  readonly known?: boolean;
  /** Absent for those who may look at it and no more: they are told no cost either. */
  readonly keep?: (document: RawPart, pricesFrom: string) => Promise<Got<unknown>>;
}) {
  const { kind, document, known = false, keep } = given;
  const shape = PART_SHAPES[kind].describe;
  const [draft, setDraft] = useState<Draft>(() => draftOf(shape, document)!);
  const [from, setFrom] = useState('');
  const [got, setGot] = useState<Got<unknown>>();
  const refused = useMemo(
    () => new Map(got !== undefined && 'why' in got ? got.problems.map((p) => [p.field, p.message]) : []),
    [got],
  );
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    if (keep !== undefined) setGot(await keep(documentOf(shape, draft) as RawPart, from));
  };
  return (
    <form className="part-form" onSubmit={(event) => void submit(event)} noValidate>
      <h2 className="heading">Figures</h2>
      <fieldset className="part-grid" disabled={keep === undefined}>
        <PartFields
          shape={shape}
          name=""
          path=""
          draft={draft}
          change={(next) => setDraft(next ?? {})}
          refused={refused}
          {...(known ? { fixed: 'id' } : {})}
          hides={(name) => keep === undefined && name === 'costCents'}
          beside={(path, rows, change) =>
            path === 'law.curve' && <CurveReader rows={rows as readonly Draft[]} change={change} />
          }
        />
      </fieldset>
      {keep === undefined ? (
        <p className="part-end">Owner and builder change parts.</p>
      ) : (
        <p className="part-acts part-end">
          {known && (
            <label>
              A changed price holds from{' '}
              <input type="date" value={from} onChange={(e) => setFrom(e.target.value)} />{' '}
              <small>today when empty</small>
            </label>
          )}
          <button className="part-button">{known ? 'Keep the change' : 'Add the part'}</button>
        </p>
      )}
      {got !== undefined && 'why' in got && (
        <div role="alert" className="part-why">
          <p>Not kept. {got.problems.length > 1 ? `${got.problems.length} fields are refused:` : got.why}</p>
          {got.problems.length > 1 && (
            <ul>
              {got.problems.map((p) => (
                <li key={p.field + p.message}>{p.message}</li>
              ))}
            </ul>
          )}
        </div>
      )}
    </form>
  );
}
