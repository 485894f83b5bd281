import { PART_SHAPES, type Kind } from '@spraywright/engine/catalogue';
import type { ShapeDescription } from '@spraywright/engine/quantity';
import { useEffect, useId, useMemo, useRef, useState, type SyntheticEvent } from 'react';
import { documentOf, draftOf, wordsOf, type Draft } from '../part-form/part-draft.ts';
import { PartFields } from '../part-form/part-fields.tsx';
import type { FieldProblem, OwnPartStart, TypedPart } from '../protocol.ts';
import { useStore } from '../ui/desk-context.ts';
import { confirmed, startDraft } from './start-draft.ts';
import '../style/own-part.css';

/** What every part has, in the order in which it is asked; the figures of its kind stand between. */
const BEFORE = ['name'];
const AFTER = ['mass', 'costCents', 'priceCents', 'leadTimeDays', 'size'];
const NOT_ASKED = new Set([...BEFORE, ...AFTER, 'id', 'stock', 'ports', 'wetted', 'supplier', 'note']);

/**
 * The fields that are asked of a part of a kind, connections and materials apart.
 *
 * @param costs whether whoever types is told costs
 */
function askedOf(kind: Kind, costs: boolean): ShapeDescription {
  const fields = PART_SHAPES[kind].describe.fields!.filter((f) => costs || f.name !== 'costCents');
  const named = (names: readonly string[]) => names.flatMap((n) => fields.filter((f) => f.name === n));
  return {
    type: 'object',
    fields: [...named(BEFORE), ...fields.filter((f) => !NOT_ASKED.has(f.name)), ...named(AFTER)],
  };
}

function shapeOf(kind: Kind, name: 'ports' | 'wetted'): ShapeDescription {
  const fields = PART_SHAPES[kind].describe.fields!.filter((f) => f.name === name);
  return { type: 'object', fields };
}

/** Lays a part that no catalogue has into a slot of the rig, with the few figures that its proof needs. */
export function OwnPartForm({ slot, title, close }: { slot: string; title: string; close: () => void }) {
  const store = useStore();
  const [start, setStart] = useState<OwnPartStart>();
  useEffect(() => void store.ask({ about: 'own-part-start', slot }).then(setStart), [store, slot]);
  if (start === undefined) return <p className="note own-part">Looking what could stand here</p>;
  return <Form slot={slot} title={title} start={start} close={close} />;
}

function Form(given: { slot: string; title: string; start: OwnPartStart; close: () => void }) {
  const { slot, title, start, close } = given;
  const { there, costsTold } = start;
  const asked = (of: Kind) => askedOf(of, costsTold);
  const store = useStore();
  const heading = useId();
  const [kind, setKind] = useState<Kind>(there?.kind ?? start.kinds[0]!);
  const [figuresFrom, setFiguresFrom] = useState(there?.figuresFrom ?? '');
  const [refused, setRefused] = useState<readonly FieldProblem[]>([]);
  const alike = start.like[kind];
  const alikeName = typeof alike?.name === 'string' ? alike.name : undefined;
  const changing = there?.kind === kind ? there.part : undefined;
  const [draft, setDraft] = useState<Draft>(() => firstDraft(asked(kind), changing, alike));
  const [joins, setJoins] = useState<Draft>(() => draftOf(shapeOf(kind, 'ports'), changing ?? {})!);
  const [wetted, setWetted] = useState<Draft>(() => draftOf(shapeOf(kind, 'wetted'), changing ?? {})!);
  const [sameJoins, setSameJoins] = useState(changing === undefined && alikeName !== undefined);
  const [sameWetted, setSameWetted] = useState(false);
  const first = useRef<HTMLFormElement>(null);
  useEffect(() => first.current?.querySelector('input')?.focus(), []);
  useEffect(() => first.current?.querySelector<HTMLElement>('[aria-invalid=true]')?.focus(), [refused]);
  const byField = useMemo(() => new Map(refused.map((p) => [p.path, p.message])), [refused]);

  const turnTo = (next: Kind) => {
    setKind(next);
    setDraft(firstDraft(asked(next), undefined, start.like[next]));
    setSameJoins(start.like[next] !== undefined);
    setRefused([]);
  };
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    const { draft: said, unconfirmed } = confirmed(draft);
    const takenOver = [
      ...unconfirmed.map(wordsOf),
      ...(sameJoins ? ['connections'] : []),
      ...(sameWetted ? ['materials'] : []),
    ];
    const part = {
      ...(documentOf(asked(kind), said) as object),
      ...(changing === undefined ? {} : { id: changing.id }),
      stock: 0,
      ports: sameJoins
        ? alike?.ports
        : (documentOf(shapeOf(kind, 'ports'), joins) as TypedPart['part']).ports,
      wetted: sameWetted
        ? alike?.wetted
        : (documentOf(shapeOf(kind, 'wetted'), wetted) as TypedPart['part']).wetted,
      ...(takenOver.length === 0 || alikeName === undefined
        ? {}
        : { note: `As ${alikeName} has it, not confirmed: ${takenOver.join(', ')}`.slice(0, 300) }),
    };
    const why = await store.layIn(slot, { kind, figuresFrom: figuresFrom.trim(), part });
    setRefused(why.map(inWords));
    if (why.length === 0) close();
  };
  const fields = (shape: ShapeDescription, value: Draft, change: (next: Draft) => void) => (
    <PartFields
      shape={shape}
      name=""
      path=""
      draft={value}
      change={(next) => change(next ?? {})}
      refused={byField}
      lists={{ material: start.materials }}
    />
  );
  return (
    <form
      className="own-part"
      ref={first}
      aria-labelledby={heading}
      noValidate
      onSubmit={(event) => void submit(event)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      <h3 className="heading" id={heading}>
        {changing === undefined ? `Another ${title}, in no catalogue` : `Figures of this ${title}`}
      </h3>
      <p className="note">
        Type what its leaflet or its plate says, each figure with its unit. What is (in brackets) is taken
        over from {alikeName ?? 'a part like it'}: type over it where you know better.
        {PER_FOOT.has(kind) && ' Weight, cost and price are for one foot.'}
      </p>
      <div className="part-grid">
        {start.kinds.length > 1 && (
          <div className="part-leaf">
            <label htmlFor={`${heading}-kind`}>what kind of part</label>
            <select
              id={`${heading}-kind`}
              value={kind}
              onChange={(event) => turnTo(event.target.value as Kind)}
            >
              {start.kinds.map((k) => (
                <option key={k} value={k}>
                  {k.replaceAll('-', ' ')}
                </option>
              ))}
            </select>
          </div>
        )}
        <div className="part-leaf">
          <label htmlFor={`${heading}-from`}>who says its figures</label>
          <input
            id={`${heading}-from`}
            value={figuresFrom}
            placeholder="leaflet of 2026, its plate, measured"
            autoComplete="off"
            aria-invalid={byField.has('figuresFrom')}
            aria-describedby={byField.has('figuresFrom') ? `${heading}-from-why` : undefined}
            onChange={(event) => setFiguresFrom(event.target.value)}
          />
          {byField.has('figuresFrom') && (
            <p className="part-why" id={`${heading}-from-why`}>
              {byField.get('figuresFrom')}
            </p>
          )}
        </div>
        {fields(asked(kind), draft, setDraft)}
        {alikeName !== undefined && (
          <SameAs what={`connections as ${alikeName}`} same={sameJoins} turn={setSameJoins} />
        )}
        {!sameJoins && fields(shapeOf(kind, 'ports'), joins, setJoins)}
        {alikeName !== undefined && (
          <SameAs what={`materials as ${alikeName}`} same={sameWetted} turn={setSameWetted} />
        )}
        {!sameWetted && fields(shapeOf(kind, 'wetted'), wetted, setWetted)}
      </div>
      {refused.length > 0 && (
        <p role="alert" className="part-why">
          Not laid in: {refused.length === 1 ? 'one field is' : `${refused.length} fields are`} refused.{' '}
          {refused[0]!.message}.
        </p>
      )}
      <p className="own-part-acts">
        <button className="part-button">{changing === undefined ? 'Lay it in' : 'Keep these figures'}</button>
        <button type="button" className="word" onClick={close}>
          Leave it
        </button>
        <span className="note">Without materials the proof asks about them.</span>
      </p>
    </form>
  );
}

/** Whether something is as the part alike has it. */
function SameAs({ what, same, turn }: { what: string; same: boolean; turn: (same: boolean) => void }) {
  return (
    <label className="part-flag wide">
      <input type="checkbox" checked={same} onChange={(event) => turn(event.target.checked)} />
      same {what}
    </label>
  );
}

const PER_FOOT: ReadonlySet<Kind> = new Set(['hose']);

function firstDraft(shape: ShapeDescription, changing: unknown, alike: unknown): Draft {
  return changing === undefined ? startDraft(shape, alike ?? {}) : draftOf(shape, changing)!;
}

/** A refusal with its field as the form calls it. */
function inWords({ path, message }: FieldProblem): FieldProblem {
  const name = /([A-Za-z]+)(\[\d+\])?$/.exec(path)?.[1] ?? '';
  const words = name === 'figuresFrom' ? 'who says its figures' : wordsOf(name);
  const said = message.startsWith(`${name} `) ? `${words}${message.slice(name.length)}` : message;
  return {
    path,
    message: name.endsWith('Cents') ? said.replace('a whole number', 'dollars and cents') : said,
  };
}
