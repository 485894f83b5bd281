import type { ShapeDescription } from '@spraywright/engine/quantity';
import { draftOf, fieldsOf, type Draft } from '../part-form/part-draft.ts';

/** What leaflets seldom say: it begins as the part that is there has it. */
const SELDOM_SAID: ReadonlySet<string> = new Set([
  'length',
  'width',
  'height',
  'roughness',
  'peukert',
  'velocityCoefficient',
  'slipAtMaxPressure',
  'efficiency',
  'overridePressure',
  'shutPeak',
  'dirtyFactor',
  'amplification',
  'bendRadius',
  'longestPiece',
  'npshRequired',
]);
/** Rows that a list of figures, such as a pump curve, begins with. */
const FIRST_ROWS = 3;

/** Where a value comes from that nobody has confirmed, as the sheet writes it: in brackets. */
const bracketed = (text: string) => (text === '' ? '' : `(${text})`);

/**
 * The fields of a part before anything is typed: choices as the part alike has them, what leaflets seldom say in brackets,
 * all else empty.
 */
export function startDraft(shape: ShapeDescription, alike: unknown): Draft {
  return emptied(shape, draftOf(shape, alike) ?? {}, '');
}

function emptied(shape: ShapeDescription, draft: Draft, name: string): Draft {
  switch (shape.type) {
    case 'object':
    case 'tagged': {
      const from = draft as Readonly<Record<string, Draft>>;
      return Object.fromEntries(
        fieldsOf(shape, from).flatMap((field): [string, Draft][] => {
          const value = from[field.name];
          return value === undefined ? [] : [[field.name, emptied(field.shape, value, field.name)]];
        }),
      );
    }
    case 'list':
      return (draft as readonly Draft[]).slice(0, FIRST_ROWS).map((row) => emptied(shape.of!, row, ''));
    case 'flag':
    case 'choice':
      return draft;
    default:
      return SELDOM_SAID.has(name) && typeof draft === 'string' ? bracketed(draft) : '';
  }
}

/** The draft with brackets taken off, and the names of the fields that stood in them. */
export function confirmed(draft: Draft, name = ''): { draft: Draft; unconfirmed: readonly string[] } {
  if (typeof draft === 'string') {
    const inner = /^\((.*)\)$/.exec(draft.trim())?.[1];
    return inner === undefined ? { draft, unconfirmed: [] } : { draft: inner, unconfirmed: [name] };
  }
  if (typeof draft === 'boolean') return { draft, unconfirmed: [] };
  const entries = Object.entries(draft).map(([key, value]) => ({
    key,
    ...confirmed(value, Array.isArray(draft) ? name : key),
  }));
  return {
    draft: Array.isArray(draft)
      ? entries.map((e) => e.draft)
      : Object.fromEntries(entries.map((e) => [e.key, e.draft])),
    unconfirmed: [...new Set(entries.flatMap((e) => e.unconfirmed))],
  };
}
