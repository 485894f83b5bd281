import { useId, type ReactNode } from 'react';
import type { ShapeDescription } from '@spraywright/engine/quantity';
import { draftOf, fieldsOf, wordsOf, type Draft } from './part-draft.ts';

interface FieldGiven {
  readonly shape: ShapeDescription;
  readonly name: string;
  /** Place in the document as refusals name it: `law.curve[2].head`. */
  readonly path: string;
  readonly draft: Draft | undefined;
  readonly change: (draft: Draft | undefined) => void;
  /** What was refused, by place. */
  readonly refused: ReadonlyMap<string, string>;
  /** What a field of words may say, by its name: the value and how it is read. */
  readonly lists?: Readonly<Record<string, readonly (readonly [value: string, words: string])[]>>;
  /** What else stands beside a list, by its name. */
  readonly beside?: (name: string, draft: Draft | undefined, change: (draft: Draft) => void) => ReactNode;
}

/** One field of a part, whatever its shape; a list or a piece is a frame with its own fields. */
function PartField(given: FieldGiven) {
  switch (given.shape.type) {
    case 'object':
    case 'tagged':
      return <Piece {...given} />;
    case 'list':
      return <List {...given} />;
    default:
      return <Leaf {...given} />;
  }
}

/** The fields of a whole part, or of a piece of one. */
export function PartFields({ fixed, ...given }: FieldGiven & { readonly fixed?: string }) {
  const { shape, draft, path, change } = given;
  const from = (draft ?? {}) as Readonly<Record<string, Draft>>;
  return fieldsOf(shape, from)
    .filter(({ name }) => name !== fixed)
    .map((field) => (
      <PartField
        {...given}
        key={field.name}
        shape={field.shape}
        name={field.name}
        path={path === '' ? field.name : `${path}.${field.name}`}
        draft={from[field.name]}
        change={(next) => {
          const { [field.name]: _, ...rest } = from;
          change(next === undefined ? rest : { ...from, [field.name]: next });
        }}
      />
    ));
}

function Piece(given: FieldGiven) {
  const { shape, name, draft, change } = given;
  const there = draft !== undefined;
  return (
    <fieldset className="part-piece">
      <legend>{wordsOf(name)}</legend>
      {shape.optional === true && (
        <label className="part-flag">
          <input
            type="checkbox"
            checked={there}
            onChange={(e) =>
              change(e.target.checked ? draftOf({ ...shape, optional: false }, {}) : undefined)
            }
          />
          has {wordsOf(name)}
        </label>
      )}
      {there && <PartFields {...given} />}
    </fieldset>
  );
}

function List(given: FieldGiven) {
  const { shape, name, path, draft, change, refused, beside } = given;
  const rows = (draft ?? []) as readonly Draft[];
  const of = shape.of!;
  const why = refused.get(path);
  const put = (i: number, next: Draft | undefined) =>
    change(
      next === undefined ? rows.filter((_, k) => k !== i) : rows.map((row, k) => (k === i ? next : row)),
    );
  return (
    <fieldset className="part-piece">
      <legend>{wordsOf(name)}</legend>
      {rows.map((row, i) => (
        <div className="part-row" key={i} role="group" aria-label={`${wordsOf(name)} ${i + 1}`}>
          {of.type === 'object' || of.type === 'tagged' ? (
            <PartFields {...given} shape={of} path={`${path}[${i}]`} draft={row} change={(d) => put(i, d)} />
          ) : (
            <Leaf {...given} shape={of} path={`${path}[${i}]`} draft={row} change={(d) => put(i, d ?? '')} />
          )}
          <button
            type="button"
            className="part-button"
            aria-label={`Take out ${wordsOf(name)} ${i + 1}`}
            onClick={() => put(i, undefined)}
          >
            Take out
          </button>
        </div>
      ))}
      {why !== undefined && <p className="part-why">{why}</p>}
      <p className="part-acts">
        <button
          type="button"
          className="part-button"
          onClick={() => change([...rows, draftOf({ ...of, optional: false }, undefined) ?? ''])}
        >
          Add to {wordsOf(name)}
        </button>
      </p>
      {beside?.(path, draft, change)}
    </fieldset>
  );
}

function Leaf({ shape, name, path, draft, change, refused, lists }: FieldGiven) {
  const id = useId();
  const why = refused.get(path);
  const told = {
    id,
    'aria-invalid': why !== undefined,
    'aria-describedby': why === undefined ? undefined : `${id}-why`,
  };
  if (shape.type === 'flag')
    return (
      <label className="part-flag">
        <input
          type="checkbox"
          {...told}
          checked={draft === true}
          onChange={(e) => change(e.target.checked)}
        />
        {wordsOf(name)}
      </label>
    );
  const text = typeof draft === 'string' ? draft : '';
  const choices =
    lists?.[name] ?? shape.choices?.map((choice) => [choice, choice.replaceAll('-', ' ')] as const);
  return (
    <div className="part-leaf">
      <label htmlFor={id}>
        {wordsOf(name)}
        {shape.optional === true && <small> if any</small>}
      </label>
      {choices !== undefined ? (
        <select {...told} value={text} onChange={(e) => change(e.target.value)}>
          {(shape.optional === true || shape.type !== 'choice') && <option value="">not said</option>}
          {choices.map(([choice, words]) => (
            <option key={choice} value={choice}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...told}
          value={text}
          placeholder={exampleOf(shape)}
          autoComplete="off"
          spellCheck={false}
          onChange={(e) => change(e.target.value)}
        />
      )}
      {why !== undefined && (
        <p className="part-why" id={`${id}-why`}>
          {why}
        </p>
      )}
    </div>
  );
}

/** The example out of "a mass such as '12 lb'". */
function exampleOf({ expected = '' }: ShapeDescription): string {
  const example = /'([^']+)'/.exec(expected)?.[1];
  return example === undefined ? '' : `such as ${example}`;
}
