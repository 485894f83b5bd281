import { LIQUIDS } from '@spraywright/engine/liquids';
import type { Work } from '@spraywright/engine/catalogue';
import { addDuty, addLiquid, aimDuty, outletsOf, removeDuty, removeLiquid } from '@spraywright/engine/rig';
import type { Change } from '@spraywright/engine/quantity';
import type { Answers, RigJson } from '../protocol.ts';
import type { BriefEdit, BriefLists } from '../whole-brief/brief-edits.ts';
import type { Inputs } from './inputs.ts';
import { OUTLET_WORDS } from './outlet-words.ts';

/** What a brief can be filled from, for the work that it is for. */
export function briefLists(rig: RigJson, { catalogue }: Inputs): BriefLists {
  const { work } = rig.brief as { work: Work };
  const lines = new Set(rig.lines.map((l) => l.opens));
  return {
    outlets: outletsOf(work, catalogue.layouts).map((id) => ({
      id,
      name: OUTLET_WORDS[id],
      fitted: lines.has(id),
    })),
    liquids: LIQUIDS.map((l): [string, string] => [l.id, l.name]),
    families: catalogue.layouts.filter((l) => l.works.includes(work)).map((l) => [l.id, l.name]),
  };
}

/** The change that an edit of the brief is, or why it cannot be made. */
export function briefEdit(edit: BriefEdit, rig: RigJson): Answers['brief-edit'] {
  try {
    return { change: changeOf(edit, rig) };
  } catch (error) {
    if (error instanceof RangeError) return { refused: error.message };
    throw error;
  }
}

function changeOf(edit: BriefEdit, rig: RigJson): Change {
  switch (edit.do) {
    case 'add-duty':
      return addDuty(rig, edit);
    case 'remove-duty':
      return removeDuty(rig, edit.id);
    case 'add-liquid':
      return addLiquid(rig, edit);
    case 'remove-liquid':
      return removeLiquid(rig, edit.id);
    case 'aim-duty':
      return aimDuty(rig, edit.id, edit.aim);
  }
}
