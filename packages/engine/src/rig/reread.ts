import type { Catalogue } from '../catalogue/index.ts';
import { list, read } from '../quantity/index.ts';
import { bindRig, itemShape, readRig, type Rig, type RigDocument, type RigItem } from './rig-document.ts';

type Read = ReturnType<typeof readRig>;
type Raw = Readonly<Record<string, unknown>> & { readonly items: readonly unknown[] };

const oneItem = list(itemShape);

/**
 * Makes a reader for documents that differ little from one that has been read: what is the same object in both is
 * taken over as read. It gives what `readRig` gives.
 */
export function rereader(rawRead: Raw, rigRead: Rig, catalogue: Catalogue): (raw: Raw) => Read {
  const items = new Map(rawRead.items.map((raw, i) => [raw, rigRead.document.items[i]!]));
  const others = Object.keys(rawRead).filter((key) => key !== 'items');
  return (raw) => {
    const alike =
      raw.items.length === rawRead.items.length &&
      Object.keys(raw).length === others.length + 1 &&
      others.every((key) => raw[key] === rawRead[key]);
    if (!alike) return readRig(raw, catalogue);
    const entries: RigItem[] = [];
    for (const entry of raw.items) {
      const known = items.get(entry);
      const fresh = known === undefined ? read(oneItem, [entry]) : undefined;
      // What is wrong is said with the place it has in the whole document.
      if (fresh?.ok === false) return readRig(raw, catalogue);
      entries.push(known ?? fresh!.value[0]!);
    }
    const document: RigDocument = { ...rigRead.document, items: entries };
    return bindRig(document, catalogue);
  };
}
