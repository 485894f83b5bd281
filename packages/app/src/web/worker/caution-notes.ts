import type { CautionPlace } from '@spraywright/engine/physics';
import type { Proof } from '@spraywright/engine/rig';
import type { CautionNote } from '../protocol.ts';

/** Where on the sheet the work of a caution is. */
const PLACES: Readonly<Record<CautionPlace, CautionNote['place']>> = {
  mixing: 'brief',
  filling: 'brief',
  roof: 'scene',
  spraying: 'scene',
  plumbing: 'line',
  drive: 'parts',
  electrics: 'parts',
  towing: 'parts',
  lifting: 'parts',
  storage: 'parts',
};

/** Cautions of the proof, each once, where its work is on the sheet; a cause that nobody stated is told as not ruled out. */
export function cautionNotes({ cautions }: Proof): CautionNote[] {
  return cautions.map(({ caution, state, because }) => ({
    id: caution.id,
    place: PLACES[caution.place],
    danger: state === 'unknown' ? `${caution.danger} (Not ruled out: ${because}.)` : caution.danger,
    act: caution.act,
    source: caution.origin.source,
  }));
}
