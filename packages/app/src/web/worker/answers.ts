import type { Answers, Question, RigJson } from '../protocol.ts';
import type { Inputs } from './inputs.ts';
import { layIn, ownPartStart } from './own-part.ts';

/** Answers what the page asks about a rig beside its drawings. */
export function answerTo(question: Question, rig: RigJson, inputs: Inputs): Answers[Question['about']] {
  switch (question.about) {
    case 'own-part-start':
      return ownPartStart(question.slot, rig, inputs);
    case 'own-part':
      return layIn(question.slot, question.own, rig, inputs);
  }
}
