import { list, object, oneOf, read, type Infer, type Problem } from '../quantity/index.ts';
import { catalogueOf, rawPart, readPart, type Catalogue } from './catalogue.ts';
import { KINDS, type Part } from './part.ts';

const frozenShape = object({
  parts: list(object({ kind: oneOf(...KINDS), part: rawPart }), { max: 400 }),
});

/** A catalogue part as its leaflet stood when a machine was built: the kind, and the fields as typed. */
export type FrozenPart = Infer<typeof frozenShape>['parts'][number];

/** The part of a catalogue's files with this id, as typed, ready to be kept with a machine. */
export function frozenPart(files: readonly { raw: unknown }[], id: string): FrozenPart | undefined {
  for (const { raw } of files) {
    const { kind, supplier, parts } = (raw ?? {}) as {
      kind?: FrozenPart['kind'];
      supplier?: unknown;
      parts?: unknown;
    };
    const part = (Array.isArray(parts) ? (parts as { id?: unknown }[]) : []).find((p) => p?.id === id);
    if (kind !== undefined && part !== undefined)
      return { kind, part: { ...(supplier === undefined ? {} : { supplier }), ...part } };
  }
  return undefined;
}

/**
 * A catalogue in which the parts that a machine was built of stand as they were then, whatever the catalogue says now.
 *
 * @param catalogue of today: what the machine brings no copy of is taken from it
 * @param raw list of `FrozenPart`, as stored
 */
export function withFrozenParts(
  catalogue: Catalogue,
  raw: unknown,
): { ok: true; catalogue: Catalogue } | { ok: false; problems: Problem[] } {
  const found = read(frozenShape, { parts: raw });
  if (!found.ok) return found;
  const problems: Problem[] = [];
  const parts = new Map<string, Part>(catalogue.parts);
  found.value.parts.forEach(({ kind, part }, i) => {
    const own = readPart(kind, part, ['parts', i, 'part'], problems);
    if (own !== undefined) parts.set(own.id, own);
  });
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, catalogue: catalogueOf(catalogue.name, catalogue.version, parts.values(), catalogue) };
}
