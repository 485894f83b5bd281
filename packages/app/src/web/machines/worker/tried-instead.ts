import { partsInstead, proveSubstitution, type PromiseChange } from '@spraywright/engine/rig';
import type { ProvenMachine } from './proven-machine.ts';
import type { Questions, TriedPart } from './protocol.ts';

/** Every other part of a slot with what the whole rig says of it: those that it keeps all with first. */
export function triedParts(machine: ProvenMachine, { slot }: Questions['instead']['asks']): TriedPart[] {
  const { raw, rig, proof, catalogue, inputs, asked } = machine;
  const tried = partsInstead(rig, catalogue, slot).map((part): TriedPart => {
    const { units } = asked;
    const { allowed, also, effect } = proveSubstitution({ raw, rig, proof }, catalogue, inputs.shop, {
      slot,
      part,
      units,
    });
    return {
      part: part.id,
      name: part.name,
      allowed,
      also,
      worse: [...effect.breaks, ...effect.doubts].map(sentenceOf),
    };
  });
  return [...tried.filter((t) => t.allowed), ...tried.filter((t) => !t.allowed)];
}

function sentenceOf({ after }: PromiseChange): string {
  return after === undefined
    ? ''
    : `${after.state === 'unknown' ? 'unknown' : 'broken'}: ${after.sentence}: ${after.cause}`;
}
