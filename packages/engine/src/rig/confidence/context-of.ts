import { driveOf } from '../drive.ts';
import type { ProofContext } from '../proof/context.ts';
import { liquidOf } from '../proof/liquid.ts';
import type { Proof } from '../proof/prove.ts';
import { first, type Rig } from '../rig-document.ts';

/** What the functions of a proof are asked with, of a rig that was proven. */
export function contextOf(rig: Rig, proof: Proof): ProofContext {
  return {
    rig,
    site: proof.site,
    drive: driveOf(rig),
    tank: first(rig, 'tank')!.part,
    duties: proof.duties.map(({ duty, open, dirty, shut }) => ({
      duty,
      liquid: liquidOf(rig.brief, duty.liquid, proof.site),
      open,
      dirty,
      shut,
    })),
    bill: proof.bill,
    units: 'us',
  };
}
