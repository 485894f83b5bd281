import { object, oneOf, text, type Infer, type Problem } from '../quantity/index.ts';
import { rawPart, readPart, type Catalogue } from './catalogue.ts';
import { KINDS, type Part } from './part.ts';

/** A part laid into one rig that is in no catalogue: what the customer brings, or a leaflet names. */
export const ownPartShape = object({
  kind: oneOf(...KINDS),
  /** Who says these figures: a leaflet and its date, a measurement, the customer. */
  figuresFrom: text({ min: 3, max: 120 }),
  /** The fields that a catalogue has for this kind. */
  part: rawPart,
});

/** A part that is in no catalogue, and who says its figures. */
export interface OwnPart {
  readonly part: Part;
  readonly figuresFrom: string;
}

/**
 * Reads the parts that a document brings itself, by id.
 *
 * @returns problems with paths below `path` when a part cannot be read, or its id is taken by another or by the catalogue
 */
export function readOwnParts(
  raws: readonly Infer<typeof ownPartShape>[],
  catalogue: Catalogue,
  path: readonly (string | number)[],
): { parts: ReadonlyMap<string, OwnPart>; problems: Problem[] } {
  const problems: Problem[] = [];
  const parts = new Map<string, OwnPart>();
  raws.forEach(({ kind, figuresFrom, part: raw }, i) => {
    const at = [...path, i, 'part'];
    const part = readPart(kind, raw, at, problems);
    if (part === undefined) return;
    const taken = parts.has(part.id)
      ? 'another own part'
      : catalogue.parts.has(part.id)
        ? `the catalogue '${catalogue.name}'`
        : undefined;
    if (taken === undefined) parts.set(part.id, { part, figuresFrom });
    else
      problems.push({
        path: [...at, 'id'],
        code: 'duplicate',
        message: `id '${part.id}' is already used in ${taken}`,
      });
  });
  return { parts, problems };
}
