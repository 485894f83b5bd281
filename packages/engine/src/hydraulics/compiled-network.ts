import type { NetworkLiquid } from './network-model.ts';
import type { CyclingBand, ElementReading, ElementState, Note, Solution } from './solution.ts';

/** Parameters that can be changed without compiling again. They carry the names of the laws' fields. */
export type ElementParameter =
  | 'length'
  | 'bore'
  | 'roughness'
  | 'lossCoefficient'
  | 'coilDiameter'
  | 'laminarCoefficient'
  | 'k'
  | 'orifices'
  | 'crackingPressure'
  | 'displacement'
  | 'speed'
  | 'slip'
  | 'constantSlip'
  | 'ratedPressure'
  | 'switchOff'
  | 'switchOn'
  | 'setPressure'
  | 'gradient'
  | 'count';

export interface SolveOptions {
  /** `warm` (default) starts from the last solution when there is one; `cold` forgets it. */
  readonly start?: 'cold' | 'warm';
}

/** One column of a batch: which number varies. */
export type Variable =
  | { readonly element: number; readonly parameter: ElementParameter }
  | { readonly node: number; readonly parameter: 'surface' };

/** A network prepared once for many solves. Indices are those of the model's `elements` and `nodes`. */
export interface CompiledNetwork {
  readonly elementCount: number;
  readonly nodeCount: number;
  elementIndex(id: string): number;
  nodeIndex(id: string): number;

  /** @throws RangeError naming element, parameter, value and limit. */
  set(element: number, parameter: ElementParameter, value: number): void;
  get(element: number, parameter: ElementParameter): number;
  /** Surface of a tank [m]. */
  setSurface(node: number, surface: number): void;
  /** Height of a node [m]; one that is open to the atmosphere discharges there. A tank's surface stays where it is. */
  setElevation(node: number, elevation: number): void;
  setLiquid(liquid: NetworkLiquid): void;
  /** Opens or shuts an element. Rebuilds the topology unless that state was seen before. */
  open(element: number, open: boolean): void;

  /** The same object every time, rewritten. */
  solve(options?: SolveOptions): Solution;
  /**
   * Flows for many variations. `values` holds rows of `variables.length` numbers; the flows of the elements in `outputs`
   * are written row by row into `flows`, within 1e-6 of single solves. With up to three variables, where the flows are
   * smooth, they come from polynomials fitted to some solves and checked against others; elsewhere every row is solved.
   * The network ends with the values it had before.
   * @returns how many rows did not converge; their flows are written as zero, and 1 in `failed`.
   * @throws RangeError naming element, row, value and limit, before anything is changed.
   */
  solveMany(
    variables: readonly Variable[],
    values: Float64Array,
    outputs: readonly number[],
    flows: Float64Array,
    failed?: Uint8Array,
  ): number;

  /** [m3/s] positive from -> to, sum over `count`. */
  flow(element: number): number;
  /** Total head [m]; null where nothing defines it. */
  head(node: number): number | null;
  /** Gauge pressure of the liquid at rest at the node (total head less elevation) [Pa]; null where nothing defines it. */
  pressure(node: number): number | null;
  /** Static gauge pressure at the node in a pipe of this bore carrying this flow [Pa]. */
  staticPressure(node: number, flow: number, bore: number): number | null;
  state(element: number): ElementState;
  reading(element: number): ElementReading;
  /** Flow an eductor draws in at the present solution [m3/s]; zero for other elements. */
  suctionFlow(element: number): number;
  /** Present for a demand pump whose state is `cycling`. Costs further solves. */
  cyclingBand(pump: number, outlet: number): CyclingBand | null;
  /** What a person should know about the last solution. Not for inner loops. */
  notes(): Note[];
}
