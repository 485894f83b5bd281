import type { Catalogue } from '../catalogue/index.ts';
import { list, read, type Shape } from '../quantity/index.ts';
import { briefProblems, dutyShape } from './brief.ts';
import { bindRig, itemShape, readRig, type Rig } from './rig-document.ts';

type Read = ReturnType<typeof readRig>;
type Fields = Readonly<Record<string, unknown>>;

/**
 * Makes a reader for documents that differ little from one that has been read: what is the same object in both is
 * taken over as read. It gives what `readRig` gives.
 */
export function rereader(rawRead: Fields, rigRead: Rig, catalogue: Catalogue): (raw: Fields) => Read {
  const { document, brief } = rigRead;
  const briefRaw = rawRead.brief as Fields;
  const itemsAgain = againOf(itemShape, rawRead.items, document.items);
  const dutiesAgain = againOf(dutyShape, briefRaw.duties, brief.duties);
  return (raw) => {
    if (!alikeBut(['items', 'brief'], raw, rawRead) || !alikeBut(['duties'], raw.brief, briefRaw))
      return readRig(raw, catalogue);
    const items = itemsAgain(raw.items);
    const duties = dutiesAgain((raw.brief as Fields).duties);
    // What is wrong is said with the place it has in the whole document.
    if (items === undefined || duties === undefined) return readRig(raw, catalogue);
    const next = duties === brief.duties ? brief : { ...brief, duties };
    if (next !== brief && briefProblems(next).length > 0) return readRig(raw, catalogue);
    return bindRig({ ...document, brief: next, items }, catalogue);
  };
}

/** Reads a list as long as one that was read, its new members alone; undefined where that does not do. */
function againOf<T>(shape: Shape<T>, rawRead: unknown, values: readonly T[]) {
  const before = rawRead as readonly unknown[];
  const known = new Map(before.map((raw, i) => [raw, values[i]!]));
  const one = list(shape);
  return (raw: unknown): readonly T[] | undefined => {
    if (raw === before) return values;
    if (!Array.isArray(raw) || raw.length !== before.length) return undefined;
    const again: T[] = [];
    for (const entry of raw as readonly unknown[]) {
      const fresh = known.has(entry) ? undefined : read(one, [entry]);
      if (fresh?.ok === false) return undefined;
      again.push(fresh === undefined ? known.get(entry)! : fresh.value[0]!);
    }
    return again;
  };
}

/** Whether two objects have the same fields with the very same values, but for some. */
function alikeBut(names: readonly string[], raw: unknown, before: Fields): boolean {
  if (typeof raw !== 'object' || raw === null) return false;
  const keys = Object.keys(before);
  return (
    Object.keys(raw).length === keys.length &&
    keys.every((key) => names.includes(key) || (raw as Fields)[key] === before[key])
  );
}
