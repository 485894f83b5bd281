import type { Design } from '@spraywright/engine/rig';

/** A rig as it is written to a file: what the page edits. */
export type RigJson = Extract<Design, { ok: true }>['rig'];

export interface FieldProblem {
  /** Steps of the field's path with points between them: `brief.duties.0.target.height`. */
  readonly path: string;
  readonly message: string;
}

/** A value that somebody gave, or may give: it is boxed and can be changed. */
export interface Given {
  readonly path: string;
  readonly sort: 'quantity' | 'number' | 'money' | 'flag' | 'choice' | 'text';
  /** What it is, for those who do not see where it stands. */
  readonly label: string;
  /** As read in the chosen units. */
  readonly shown: string;
  /** A start value of ours that nobody has confirmed. */
  readonly start?: boolean;
  readonly choices?: readonly (readonly [value: string, label: string])[];
  /** A second field that says the same. */
  readonly also?: string;
  /** The field that goes when the box is emptied; only what may be left unsaid has one. */
  readonly clears?: string;
}

export type Prose = readonly (string | Given)[];
