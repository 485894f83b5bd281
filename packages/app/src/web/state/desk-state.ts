import type { SceneHold } from '@spraywright/engine/drawings';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type {
  BriefTab,
  ChoicesPicture,
  CurvePicture,
  DeskBody,
  Effects,
  FieldProblem,
  LaidPlumbing,
  OddsTold,
  Leaf,
  Pictures,
  PlumbingPicture,
  Spared,
  WayOut,
} from '../protocol.ts';
import type { Job } from './job.ts';
import type { Disagreement, Keeping, Synced } from './job-keeper.ts';
import type { SearchTold } from './search-link.ts';

export type Fold = 'desk' | 'tablet' | 'phone';

export interface DeskState {
  readonly shop: { readonly name: string; readonly address: string } | undefined;
  readonly briefs: readonly BriefTab[];
  /** What a new job begins with, by the kind of work. */
  readonly works: readonly Pick<BriefTab, 'id' | 'name' | 'raw'>[];
  readonly jobs: Readonly<Record<string, Job>>;
  readonly current: string | undefined;
  readonly units: UnitSystem;
  readonly sheet: 'day' | 'night';
  readonly printing: boolean;
  readonly fold: Fold;
  readonly leaf: Leaf;
  readonly duty: string | undefined;
  readonly lit: string | undefined;
  readonly slot: string | undefined;
  readonly working: readonly string[];
  readonly sceneWidth: number;
  readonly sceneHeight: number;
  readonly lineWidth: number;
  readonly hold: SceneHold | undefined;
  readonly outOfSight: readonly Spared[];
  readonly curveWidth: number;
  readonly plumbing: LaidPlumbing | undefined;
  readonly plumbingFailure: string | undefined;
  readonly plumbingPicture: PlumbingPicture | undefined;
  readonly tried: readonly string[];
  readonly compared: readonly string[];
  readonly choices: ChoicesPicture | undefined;
  /** The search of the whole catalogue; absent before one is asked for. */
  readonly search: SearchTold | undefined;
  /** The last good figures; `problems` tells why the newest document gave none. */
  readonly body: DeskBody | undefined;
  readonly pictures: Pictures | undefined;
  readonly curves: readonly CurvePicture[];
  readonly problems: readonly FieldProblem[];
  /** How sure the promises are; absent until drawn for the rig that stands. */
  readonly odds: OddsTold | undefined;
  readonly effects: Effects | undefined;
  readonly ways: Readonly<Record<string, readonly WayOut[]>>;
  /** The brief for which parts are being chosen. */
  readonly choosing: { readonly id: string; readonly title: string } | undefined;
  readonly failure: string | undefined;
  readonly kept: boolean;
  /** What the shop's records have of each job. */
  readonly synced: Readonly<Record<string, Synced>>;
  /** How the job on the desk stands with the records, and why it was refused. */
  readonly keeping: Keeping;
  readonly keepingWhy: string | undefined;
  readonly disagreement: Disagreement | undefined;
  /** The list of jobs lies on the sheet. */
  readonly listing: boolean;
}

/** A desk on which nothing lies yet. */
export const EMPTY: Omit<
  DeskState,
  'jobs' | 'synced' | 'current' | 'units' | 'sheet' | 'fold' | 'leaf' | 'kept'
> & {
  readonly kept: true;
} = {
  shop: undefined,
  briefs: [],
  works: [],
  printing: false,
  duty: undefined,
  lit: undefined,
  slot: undefined,
  working: [],
  sceneWidth: 0,
  sceneHeight: 0,
  lineWidth: 0,
  hold: undefined,
  outOfSight: [],
  curveWidth: 0,
  plumbing: undefined,
  plumbingFailure: undefined,
  plumbingPicture: undefined,
  tried: [],
  compared: [],
  choices: undefined,
  search: undefined,
  body: undefined,
  pictures: undefined,
  curves: [],
  problems: [],
  odds: undefined,
  effects: undefined,
  ways: {},
  choosing: undefined,
  failure: undefined,
  kept: true,
  keeping: 'sending',
  keepingWhy: undefined,
  disagreement: undefined,
  listing: false,
};

/** What is closed when another job is opened. */
export const CLOSED = {
  duty: undefined,
  slot: undefined,
  lit: undefined,
  working: [],
  effects: undefined,
  curves: [],
  plumbingPicture: undefined,
  tried: [],
  compared: [],
  choices: undefined,
  ways: {},
  problems: [],
  odds: undefined,
  failure: undefined,
} as const;
