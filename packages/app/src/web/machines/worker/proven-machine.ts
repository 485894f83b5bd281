import type { AsBuilt, Proof } from '@spraywright/engine/rig';
import type { Inputs } from '../../worker/inputs.ts';
import type { AskedMachine } from './protocol.ts';

/** A machine as the engine has it. */
export interface ProvenMachine extends AsBuilt {
  readonly proof: Proof;
  readonly inputs: Inputs;
  readonly asked: AskedMachine;
}
