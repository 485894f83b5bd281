import type { PartOf } from '../../catalogue/index.ts';
import type { DutyLiquid } from './liquid.ts';
import type { Site } from './site.ts';
import { display, type Dimension, type UnitSystem } from '../../quantity/index.ts';
import type { Bill } from '../bill/index.ts';
import type { Duty } from '../brief.ts';
import type { Drive } from '../drive.ts';
import type { dutySolver, DutyStates } from '../duty-state.ts';
import type { Rig } from '../rig-document.ts';

/** One duty with its solved conditions. */
export interface ProvenDuty extends DutyStates {
  readonly duty: Duty;
  readonly liquid: DutyLiquid;
}

/** What the promises of the work itself are computed from. */
export interface WorkContext {
  readonly rig: Rig;
  readonly site: Site;
  readonly drive: Drive | undefined;
  readonly tank: PartOf<'tank'>;
  readonly duties: readonly ProvenDuty[];
  readonly units: UnitSystem;
}

/** Everything a promise is computed from. */
export interface ProofContext extends WorkContext {
  readonly bill: Bill;
}

export interface ProveOptions {
  readonly units?: UnitSystem;
  /** The solver's notes for a person; without them a proof is quicker. */
  readonly notes?: boolean;
  /** Solves the duties of a rig; one that knows a rig much like it need not begin from nothing. */
  readonly solver?: typeof dutySolver;
}

/** A figure as the reader's unit system shows it. */
export function say(context: WorkContext, value: number, dimension: Dimension): string {
  return display(value, dimension, context.units);
}

/** A value that somebody gave, in a sentence: a whole figure is said whole, "52 ft" and not "52.0 ft". */
export function sayGiven(context: WorkContext, value: number, dimension: Dimension): string {
  return say(context, value, dimension).replace(/\.0(?= |$)/, '');
}
