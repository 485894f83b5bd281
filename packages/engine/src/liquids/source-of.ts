import type { Source } from './source.ts';
import { SOURCES, type SourceId } from './sources.data.ts';

const BY_ID = new Map<string, Source>(SOURCES.map((s) => [s.id, s]));

/** The text behind a source id. */
export function sourceOf(id: SourceId): Source {
  const source = BY_ID.get(id);
  if (source === undefined) throw new RangeError(`source '${id}' is not in the list of sources`);
  return source;
}

/** Who and what, in one line, as a proof prints it; says so when the text was only recalled. */
export function citation(id: SourceId): string {
  const { organisation, title, seen } = sourceOf(id);
  return `${organisation}, ${title}${seen ? '' : ' (from memory, not read)'}`;
}
