/** What a solve says about itself and about the elements. */

export type FailureCode = 'pump-recirculates' | 'no-convergence' | 'not-finite';

export interface Reason {
  readonly code: FailureCode;
  readonly message: string;
  /** Elements or nodes concerned. */
  readonly ids: readonly string[];
}

/** The network's own object, rewritten by every solve. */
export interface Solution {
  readonly status: 'converged' | 'failed';
  readonly reason: Reason | undefined;
  readonly iterations: number;
  /** Largest imbalance at a node over the largest flow [-]. */
  readonly residual: number;
}

/**
 * shut: closed valve, or a part that does not open. flowing: passes liquid. idle: open, no flow. holding: a regulator at
 * its set pressure. wide-open: a regulator at its capacity. cycling: a demand pump switching on and off. dead-head: a
 * pump that turns against a shut line.
 */
export type ElementState = 'shut' | 'flowing' | 'idle' | 'holding' | 'wide-open' | 'cycling' | 'dead-head';

export type NoteCode =
  | 'isolated'
  | 'dead-head'
  | 'guessed-loss'
  | 'no-coil-law'
  | 'above-rating'
  | 'cycling'
  | 'check-valves-facing'
  | 'transitional-flow'
  | 'curve-extended'
  | 'viscosity-above-curve'
  | 'shear-rate-outside-fit';

/** Something a person should know about a converged solution. */
export interface Note {
  readonly code: NoteCode;
  readonly message: string;
  readonly ids: readonly string[];
}

/** Pressures along one element, in the direction from -> to, each at the element's own bore. */
export interface ElementReading {
  readonly flow: number;
  /** Mean velocity in its own bore [m/s]; null when it has none. */
  readonly velocity: number | null;
  /** Loss of total head expressed as pressure [Pa]; negative across a pump; null when isolated. */
  readonly pressureDrop: number | null;
  /** Static gauge pressure just inside each end [Pa]; null when isolated. */
  readonly pressureIn: number | null;
  readonly pressureOut: number | null;
  readonly state: ElementState;
}

export type ModelProblemCode =
  | 'duplicate-id'
  | 'unknown-node'
  | 'self-loop'
  | 'out-of-range'
  | 'two-kinds-of-node'
  | 'drooping-curve'
  | 'bad-curve'
  | 'no-path-to-tank-or-atmosphere'
  | 'no-elements';

export interface ModelProblem {
  readonly code: ModelProblemCode;
  readonly message: string;
  readonly ids: readonly string[];
}

/** The steady flow band of a demand pump that switches on and off. */
export interface CyclingBand {
  /** [m3/s] at switch-on and switch-off pressure, through the outlets as they are. */
  readonly flowAtSwitchOn: number;
  readonly flowAtSwitchOff: number;
}
