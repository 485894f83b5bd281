import { useId, type ReactNode } from 'react';
import type { ShapeDescription } from '@spraywright/engine/quantity';
import { draftOf, fieldsOf, wordsOf, type Draft } from './part-draft.ts';

export interface FieldWords {
  readonly label: (place: string) => string | undefined;
  readonly choice: (place: string, choice: string) => string | undefined;
}

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
  /** What people call a field or a choice, by its place without numbers; else it is called as the document calls it. */
  readonly words?: FieldWords;
  /** Fields that nobody types here. */
  readonly hides?: (name: string, beside: Readonly<Record<string, Draft>>) => boolean;
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
      if (given.shape.of?.type === 'choice') return <Choices {...given} />;
      return given.shape.of?.type === 'text' ? <Lines {...given} /> : <List {...given} />;
    default:
      return <Leaf {...given} />;
  }
}

/** The fields of a whole part, or of a piece of one. */
export function PartFields({ fixed, ...given }: FieldGiven & { readonly fixed?: string }) {
  const { shape, draft, path, change, hides } = given;
  const from = (draft ?? {}) as Readonly<Record<string, Draft>>;
  return fieldsOf(shape, from)
    .filter(({ name }) => name !== fixed && hides?.(name, from) !== true)
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
  const { shape, draft, change, words } = given;
  const there = draft !== undefined;
  return (
    <fieldset className="part-piece">
      {(words === undefined || shape.optional !== true) && <legend>{labelOf(given)}</legend>}
      {shape.optional === true && (
        <label className="part-flag">
          <input
            type="checkbox"
            checked={there}
            onChange={(e) =>
              change(e.target.checked ? draftOf({ ...shape, optional: false }, {}) : undefined)
            }
          />
          {words === undefined ? `has ${labelOf(given)}` : labelOf(given)}
        </label>
      )}
      {there && <PartFields {...given} />}
    </fieldset>
  );
}

function List(given: FieldGiven) {
  const { shape, path, draft, change, refused, beside } = given;
  const label = labelOf(given);
  const rows = (draft ?? []) as readonly Draft[];
  const of = shape.of!;
  const why = refused.get(path);
  const put = (i: number, next: Draft | undefined) =>
    change(
      next === undefined ? rows.filter((_, k) => k !== i) : rows.map((row, k) => (k === i ? next : row)),
    );
  return (
    <fieldset className="part-piece">
      <legend>{label}</legend>
      {rows.map((row, i) => (
        <div className="part-row" key={i} role="group" aria-label={`${label} ${i + 1}`}>
          {of.type === 'object' || of.type === 'tagged' ? (
            <PartFields {...given} shape={of} path={`${path}[${i}]`} draft={row} change={(d) => put(i, d)} />
          ) : (
            <Leaf {...given} shape={of} path={`${path}[${i}]`} draft={row} change={(d) => put(i, d ?? '')} />
          )}
          <button
            type="button"
            className="part-button"
            aria-label={`Take out ${label} ${i + 1}`}
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
          {given.words?.label(`${placeOf(path)} add`) ?? `Add to ${label}`}
        </button>
      </p>
      {beside?.(path, draft, change)}
    </fieldset>
  );
}

function Leaf(given: FieldGiven) {
  const { shape, name, path, draft, change, refused, lists, words } = given;
  const label = labelOf(given);
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
        {label}
      </label>
    );
  const text = typeof draft === 'string' ? draft : '';
  const choices =
    lists?.[name] ?? shape.choices?.map((choice) => [choice, choice.replaceAll('-', ' ')] as const);
  return (
    <div className="part-leaf">
      <label htmlFor={id}>
        {label}
        {shape.optional === true && (shape.fallback ?? 0) === 0 && <small> if any</small>}
      </label>
      {choices !== undefined ? (
        <select {...told} value={text} onChange={(e) => change(e.target.value)}>
          {(shape.optional === true || shape.type !== 'choice') && <option value="">not said</option>}
          {choices.map(([choice, called]) => (
            <option key={choice} value={choice}>
              {words?.choice(placeOf(path), choice) ?? called}
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

/** Sentences, one a line. */
function Lines(given: FieldGiven) {
  const { path, draft, change, refused } = given;
  const id = useId();
  const whys = [...refused].filter(([field]) => field === path || field.startsWith(`${path}[`));
  const lines = ((draft ?? []) as readonly Draft[]).map(String);
  return (
    <div className="part-leaf part-lines">
      <label htmlFor={id}>{labelOf(given)}</label>
      <textarea
        id={id}
        rows={Math.max(3, lines.length + 1)}
        value={lines.join('\n')}
        aria-invalid={whys.length > 0}
        onChange={(e) => change(e.target.value === '' ? [] : e.target.value.split('\n'))}
      />
      {whys.map(([field, why]) => (
        <p className="part-why" key={field}>
          {why}
        </p>
      ))}
    </div>
  );
}

/** Some of a fixed list: folded, since the list is long and seldom changed. */
function Choices(given: FieldGiven) {
  const { shape, path, draft, change, refused, words } = given;
  const chosen = ((draft ?? []) as readonly Draft[]).map(String);
  const why = refused.get(path);
  const called = (choice: string) => words?.choice(placeOf(path), choice) ?? choice;
  return (
    <details className="part-choices">
      <summary>
        {labelOf(given)}: {chosen.length === 0 ? 'all' : chosen.map(called).join(', ')}
      </summary>
      {shape.of?.choices?.map((choice) => (
        <label className="part-flag" key={choice}>
          <input
            type="checkbox"
            checked={chosen.includes(choice)}
            onChange={(e) =>
              change(e.target.checked ? [...chosen, choice] : chosen.filter((one) => one !== choice))
            }
          />
          {called(choice)}
        </label>
      ))}
      {why !== undefined && <p className="part-why">{why}</p>}
    </details>
  );
}

/** `pricing.floorsByRole[2].role` without its numbers. */
function placeOf(path: string): string {
  return path.replace(/\[\d+\]/g, '');
}

function labelOf({ name, path, words }: FieldGiven): string {
  return words?.label(placeOf(path)) ?? wordsOf(name);
}

/** The example out of "a mass such as '12 lb'". */
function exampleOf({ expected = '' }: ShapeDescription): string {
  const example = /'([^']+)'/.exec(expected)?.[1];
  return example === undefined ? '' : `such as ${example}`;
}
