import { priceText } from '@spraywright/engine/quantity';
import { proveRig, readRig } from '@spraywright/engine/rig';
import type { Answers, Question, RigJson } from '../protocol.ts';
import { briefEdit, briefLists } from './brief-edits.ts';
import type { Inputs } from './inputs.ts';
import { layIn, ownPartStart } from './own-part.ts';

/** Answers what the page asks about a rig beside its drawings. */
export function answerTo(question: Question, rig: RigJson, inputs: Inputs): Answers[Question['about']] {
  switch (question.about) {
    case 'own-part-start':
      return ownPartStart(question.slot, rig, inputs);
    case 'own-part':
      return layIn(question.slot, question.own, rig, inputs);
    case 'brief-lists':
      return briefLists(rig, inputs);
    case 'brief-edit':
      return briefEdit(question.edit, rig);
    case 'price':
      return priceOf(rig, inputs);
  }
}

/** What a rig costs today, and how many of its promises stand how. */
function priceOf(rig: RigJson, { catalogue, shop }: Inputs): Answers['price'] {
  const read = readRig(rig, catalogue);
  if (!read.ok) return {};
  const { bill, counts } = proveRig(read.rig, catalogue, shop, { notes: false });
  return { price: priceText(bill.priceCents), counts };
}
