import type { Change } from '../../quantity/index.ts';
import type { Part } from '../../catalogue/index.ts';
import type { RawRig } from '../design/assemble.ts';
import { putPart } from '../part-edit.ts';
import type { Rig } from '../rig-document.ts';
import { effectOf, type Effect } from './effect.ts';
import { settingsOf } from './settings.ts';
import { partsInstead, slotsOf } from './slot-alternatives.ts';
import type { Trials } from './trials.ts';

/** One change of a rig: another part in a slot, or a part set otherwise. */
export interface SingleChange {
  readonly slot: string;
  readonly name: string;
  /** The part it puts in; absent for a setting. */
  readonly part?: Part;
  /** Makes the change of a document, which may have been changed before. */
  readonly make: (raw: RawRig) => { readonly change: Change; readonly also: readonly string[] };
}

export interface TriedChange extends SingleChange {
  readonly effect: Effect;
}

/**
 * Every single change of a rig that still gives what the brief wishes: settings first, then the parts of each slot. What
 * is pinned stays as it is.
 */
export function singleChanges(trials: Trials): SingleChange[] {
  const { rig, catalogue } = trials;
  const loose = (slot: string) => rig.items.get(slot)?.item.pinned !== true;
  const settings = settingsOf(trials).map(({ slot, name, change }): SingleChange => ({
    slot,
    name,
    make: (raw) => ({ change: change(raw), also: [] }),
  }));
  const parts = slotsOf(rig).flatMap(({ id }) =>
    partsInstead(rig, catalogue, id)
      .filter((part) => asWished(rig, part))
      .map((part): SingleChange => ({
        slot: id,
        name: part.name,
        part,
        make: (raw) => putPart(raw, catalogue, id, part),
      })),
  );
  return [...settings, ...parts].filter(({ slot }) => loose(slot));
}

/** Tries one change; undefined when it gives no rig. */
export function tried(trials: Trials, single: SingleChange): TriedChange | undefined {
  const proof = trials.prove(single.make(trials.raw).change);
  return proof === undefined ? undefined : { ...single, effect: effectOf(trials.proof, proof) };
}

/** Share of a wished volume that a tank may be smaller: tanks are named by round figures (common practice, no source). */
const AS_LARGE = 0.98;

/** Whether a part gives what was wished: as large a tank, a reel that winds itself. */
function asWished({ brief }: Rig, part: Part): boolean {
  const { tank, rewind } = brief.wishes;
  if (part.kind === 'tank') return tank === undefined || part.volume >= tank * AS_LARGE;
  if (part.kind === 'reel') return rewind !== 'electric' || part.rewind === 'electric';
  return true;
}
