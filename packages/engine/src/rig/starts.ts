import { valueAt, type Change, type Path } from '../quantity/index.ts';

/**
 * Start values of ours in a brief: a duty, a liquid or the brief itself names in `starts` those of its values that
 * nobody has confirmed yet, each by its path inside it.
 */

type Marks = Readonly<Record<string, true>>;

/** What holds a value of the brief, and the way from there to it: `brief.duties.0` and `target.height`. */
function heldBy(path: Path): { readonly holder: Path; readonly rest: Path } | undefined {
  if (path[0] !== 'brief' || path.length < 2) return undefined;
  const held = (path[1] === 'duties' || path[1] === 'liquids') && path.length > 3 ? 3 : 1;
  return path[held] === 'starts' ? undefined : { holder: path.slice(0, held), rest: path.slice(held) };
}

/** Whether a value of a rig's document is a start value that nobody has confirmed. */
export function isStart(rig: unknown, path: Path): boolean {
  const held = heldBy(path);
  return held !== undefined && valueAt(rig, [...held.holder, 'starts', held.rest.join('.')]) === true;
}

/** Marks for all that a document says, lists and the fields named apart. */
export function marksOf(document: unknown, apart: readonly string[] = []): Marks {
  const marks: Record<string, true> = {};
  const look = (value: unknown, path: readonly string[]) => {
    if (apart.includes(path.join('.')) || Array.isArray(value)) return;
    if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) look(inner, [...path, key]);
    else marks[path.join('.')] = true;
  };
  look(document, []);
  return marks;
}

/**
 * The change, and the marks gone of every value that it sets: whoever sets a value, if only to what it was, has confirmed
 * it. Where it puts several values as one, those that stay as they were keep their marks.
 */
export function confirming(rig: unknown, change: Change): Change {
  const gone = change.puts.flatMap(({ path, value }) => {
    const held = heldBy(path);
    if (held === undefined) return [];
    const starts = [...held.holder, 'starts'];
    const name = held.rest.join('.');
    return Object.keys(valueAt(rig, starts) ?? {})
      .filter(
        (mark) => mark === name || (mark.startsWith(`${name}.`) && differs(mark.slice(name.length + 1))),
      )
      .map((mark) => ({ path: [...starts, mark] }));
    function differs(inside: string): boolean {
      const way = inside.split('.');
      return valueAt(rig, [...path, ...way]) !== valueAt(value, way);
    }
  });
  return gone.length === 0 ? change : { ...change, puts: [...change.puts, ...gone] };
}

/** Values of a brief that are start values still, by their path inside the brief. */
export function startValuesOf(brief: unknown): string[] {
  const at = (path: Path) =>
    Object.keys(valueAt(brief, [...path, 'starts']) ?? {}).map((p) => [...path, p].join('.'));
  const places = (list: 'duties' | 'liquids') =>
    ((valueAt(brief, [list]) ?? []) as readonly unknown[]).map((_, i): Path => [list, i]);
  return [[], ...places('liquids'), ...places('duties')].flatMap(at);
}
