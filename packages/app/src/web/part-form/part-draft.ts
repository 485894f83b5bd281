import type { ShapeDescription } from '@spraywright/engine/quantity';
import { FIELD_WORDS } from './field-words.ts';

/** A part while it is being typed: every figure as text, so that nothing typed is lost, and nothing half typed is read. */
export type Draft = string | boolean | readonly Draft[] | { readonly [field: string]: Draft };

const isCents = (name: string) => /Cents(PerHour)?$/.test(name);

/** What stands in the fields for a value of the document; undefined where an optional field is left out. */
export function draftOf(shape: ShapeDescription, raw: unknown, name = ''): Draft | undefined {
  switch (shape.type) {
    case 'object':
    case 'tagged': {
      if (raw === undefined && shape.optional === true) return undefined;
      const from = (raw ?? {}) as Readonly<Record<string, unknown>>;
      const entries = fieldsOf(shape, from).flatMap((field): [string, Draft][] => {
        const draft = draftOf(field.shape, from[field.name], field.name);
        return draft === undefined ? [] : [[field.name, draft]];
      });
      return Object.fromEntries(entries);
    }
    case 'list':
      return (Array.isArray(raw) ? (raw as unknown[]) : []).map((one) => draftOf(shape.of!, one) ?? '');
    case 'flag':
      return raw === true;
    case 'choice':
      return typeof raw === 'string' ? raw : shape.optional === true ? '' : (shape.choices?.[0] ?? '');
    default:
      if (isCents(name) && typeof raw === 'number') return (raw / 100).toFixed(2);
      return typeof raw === 'string' || typeof raw === 'number' ? String(raw) : '';
  }
}

/** The document that the fields make; what cannot be read goes in as typed, for the engine to refuse by name. */
export function documentOf(shape: ShapeDescription, draft: Draft | undefined, name = ''): unknown {
  switch (shape.type) {
    case 'object':
    case 'tagged': {
      if (draft === undefined) return undefined;
      const from = draft as Readonly<Record<string, Draft>>;
      return Object.fromEntries(
        fieldsOf(shape, from).flatMap((field) => {
          const value = documentOf(field.shape, from[field.name], field.name);
          return value === undefined ? [] : [[field.name, value]];
        }),
      );
    }
    case 'list': {
      const rows = (draft ?? []) as readonly Draft[];
      // A list that may be left out is left out when nothing stands in it.
      if (rows.length === 0 && shape.optional === true) return undefined;
      // An empty line says nothing.
      const told =
        shape.of!.type === 'text' ? rows.filter((row) => typeof row !== 'string' || row.trim() !== '') : rows;
      return told.map((one) => documentOf(shape.of!, one));
    }
    case 'flag':
      return draft === true;
    default:
      return figureOf(shape, draft, name);
  }
}

function figureOf(shape: ShapeDescription, draft: Draft | undefined, name: string): unknown {
  const text = typeof draft === 'string' ? draft.trim() : '';
  if (text === '') return undefined;
  if (isCents(name)) {
    const figure = text.replace(/^\$\s*/, '').replace(/,(?=\d{3}(\D|$))/g, '');
    return /^\d+(\.\d{1,2})?$/.test(figure) ? Math.round(Number(figure) * 100) : text;
  }
  const number = shape.type === 'integer' || shape.type === 'number';
  return number && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

/** The fields of an object, or of the case that its tag names with the tag first. */
export function fieldsOf(
  shape: ShapeDescription,
  value: Readonly<Record<string, unknown>>,
): readonly { readonly name: string; readonly shape: ShapeDescription }[] {
  if (shape.type !== 'tagged') return shape.fields ?? [];
  const { tag = '', choices = [], cases = {} } = shape;
  const given = value[tag];
  const word = typeof given === 'string' && choices.includes(given) ? given : (choices[0] ?? '');
  return [{ name: tag, shape: { type: 'choice', choices } }, ...(cases[word]?.fields ?? [])];
}

/** "maxPressure" as people say it: "max pressure"; cents are typed as dollars. */
export function wordsOf(name: string): string {
  const known = FIELD_WORDS[name];
  if (known !== undefined) return known;
  const words = name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return isCents(name) ? words.replace(/ cents$/, ' [$]') : words;
}
