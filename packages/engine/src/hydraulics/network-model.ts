/** What a network is made of. SI units throughout: m, m3/s, Pa (gauge), Pa.s, rad/s. */

export interface PowerLaw {
  /** Consistency K of tau = K (shear rate)^n [Pa s^n]. */
  readonly consistency: number;
  /** Flow index n [-]. */
  readonly index: number;
  /** Range of shear rates [1/s] in which K and n were fitted. Below the lower end the viscosity is held constant. */
  readonly shearRateMin?: number;
  readonly shearRateMax?: number;
}

export interface NetworkLiquid {
  /** [kg/m3] */
  readonly density: number;
  /** Dynamic viscosity [Pa.s]; ignored in pipes when a power law is given. */
  readonly viscosity: number;
  readonly powerLaw?: PowerLaw;
}

/**
 * Friction law of straight pipes. `colebrook` is the law to use: laminar to Re 2300, C1 blend to 4000,
 * Colebrook-White above. `swamee-jain` (laminar to 2000, Dunlop's cubic to 4000, Swamee-Jain above) exists to
 * compare like with like against programs that use it.
 */
export type FrictionLaw = 'colebrook' | 'swamee-jain';

export interface NetworkModel {
  readonly liquid: NetworkLiquid;
  readonly nodes: readonly NetworkNode[];
  readonly elements: readonly NetworkElement[];
  /** Default `colebrook`. */
  readonly friction?: FrictionLaw;
}

export interface NetworkNode {
  readonly id: string;
  /** Height of the node [m]. */
  readonly elevation: number;
  /** The node is in a tank whose liquid surface stands at this elevation [m]. */
  readonly surface?: number;
  /** The node is open to the atmosphere at its elevation: where a tip or an open end discharges. */
  readonly atmosphere?: true;
}

export interface NetworkElement {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly law: ElementLaw;
  /** False: shut, passes nothing. Default true. */
  readonly open?: boolean;
  /** This element stands for `count` equal ones side by side; its flow is the sum of all of them. Default 1. */
  readonly count?: number;
}

/** Hose or pipe. */
export interface PipeLaw {
  readonly kind: 'pipe';
  readonly length: number;
  readonly bore: number;
  readonly roughness: number;
  /** Sum of the K of its fittings, on its own velocity [-]. Default 0. */
  readonly lossCoefficient?: number;
  /** Centreline diameter of the drum turns [m] when wound up: friction is the larger of the coil's and the straight law. */
  readonly coilDiameter?: number;
}

/** Fitting: K on the velocity in `bore`, plus the laminar term of Hooper's 2-K form, K1/Re + K. */
export interface FittingLaw {
  readonly kind: 'fitting';
  readonly bore: number;
  readonly lossCoefficient: number;
  /** K1 [-]. Default 0. */
  readonly laminarCoefficient?: number;
  /** Band of a loss coefficient that is a guess, since nobody measured it: a note says so. */
  readonly guess?: readonly [low: number, high: number];
}

/** q = k sqrt(dp/SG), either direction; k in m3/s per sqrt(Pa) with SG = density / 1000 kg/m3. */
export interface FlowFactorLaw {
  readonly kind: 'flow-factor' | 'strainer';
  readonly k: number;
}

/** Tip, jet or other outlet: as `flow-factor` but one-way, since a tip never draws air in. */
export interface OrificeLaw {
  readonly kind: 'orifice';
  readonly k: number;
}

/** Motive nozzle of a tank-mixing jet: hydraulically an orifice. `k` as for `flow-factor`. */
export interface JetAgitatorLaw {
  readonly kind: 'jet-agitator';
  readonly k: number;
}

/**
 * Pipe with `orifices` equal holes, each of flow factor `k`, taken as one outlet at the pipe's inlet pressure.
 * `orificeLadder` expands it into pipe pieces when the drop along the pipe matters.
 */
export interface SpargerLaw {
  readonly kind: 'sparger';
  readonly k: number;
  readonly orifices: number;
}

/** Passes from `from` to `to` only; needs `crackingPressure` (default 0) before it opens. */
export interface CheckValveLaw {
  readonly kind: 'check-valve';
  readonly bore: number;
  readonly lossCoefficient: number;
  readonly crackingPressure?: number;
}

/**
 * q = displacement * speed * (1 - constantSlip) - slip * dp * (referenceViscosity / viscosity)^viscosityExponent.
 * The slip slope is always positive, so a dead-headed pump has a finite, reportable pressure.
 */
export interface PositiveDisplacementPumpLaw {
  readonly kind: 'positive-displacement-pump';
  /** [m3/rad] */
  readonly displacement: number;
  /** [rad/s] */
  readonly speed: number;
  /** Leakage per pressure rise [m3/(s.Pa)] at the reference viscosity, above zero. */
  readonly slip: number;
  /** 0 for pumps with valves (default), 1 for gap pumps such as roller and gear pumps. */
  readonly viscosityExponent?: number;
  /** Default 0.001 Pa.s. */
  readonly referenceViscosity?: number;
  /** Share of the displaced flow lost whatever the pressure [-]. Default 0. */
  readonly constantSlip?: number;
  /** Highest pressure it may work at [Pa]; only reported against. */
  readonly ratedPressure?: number;
}

export interface HeadPoint {
  readonly flow: number;
  /** [m of the liquid] */
  readonly head: number;
}

export interface PressurePoint {
  readonly flow: number;
  /** [Pa] */
  readonly pressure: number;
}

/** H = shutOffHead - coefficient q^exponent. */
export interface PowerCurve {
  readonly shutOffHead: number;
  readonly coefficient: number;
  readonly exponent: number;
}

/** Rotodynamic pump, one-way. Affinity: q ~ speed, H ~ speed^2, with `speed` relative to the curve's. */
export interface CentrifugalPumpLaw {
  readonly kind: 'centrifugal-pump';
  readonly curve: readonly HeadPoint[] | PowerCurve;
  /** How points are joined: straight lines (default) or a smooth curve that keeps falling. */
  readonly interpolation?: 'linear' | 'smooth';
  /** What to do with a curve whose head rises with flow somewhere: refuse (default), or level it to its lower envelope. */
  readonly drooping?: 'refuse' | 'level';
  /** [-] default 1 */
  readonly speed?: number;
  /** Highest kinematic viscosity [m2/s] at which the curve holds; beyond it a note is made. Default 1e-5. */
  readonly viscosityLimit?: number;
  readonly ratedPressure?: number;
}

/** 12 V on-demand pump: pressure rise against flow, and a switch on the gauge pressure at its outlet. */
export interface DemandPumpLaw {
  readonly kind: 'demand-pump';
  readonly curve: readonly PressurePoint[];
  readonly switchOff: number;
  readonly switchOn: number;
  /** Motor speed relative to the curve's [-]; flow goes with it at equal pressure. Default 1. */
  readonly speed?: number;
}

/** Any other part measured as head loss [m of the liquid] against flow; starts at the origin; odd in q unless one-way. */
export interface CurveLaw {
  readonly kind: 'curve';
  readonly curve: readonly HeadPoint[];
  readonly oneWay?: boolean;
}

/** Reliefs, unloaders and bypass regulators share this law. Set pressure is that of the liquid at rest at the inlet (stagnation). */
export interface BackPressureRegulatorLaw {
  readonly kind: 'back-pressure-regulator' | 'unloader' | 'relief-valve';
  /** Gauge [Pa]. */
  readonly setPressure: number;
  /** Rise of the held pressure per flow [Pa/(m3/s)], at least a small positive one. Default: the smallest kept. */
  readonly gradient?: number;
  /** Flow factor when wide open [m3/s per sqrt(Pa)]: its capacity. */
  readonly k: number;
  /** `atmosphere` (default): the spring works against the atmosphere. `outlet`: against the outlet pressure. */
  readonly reference?: 'atmosphere' | 'outlet';
}

/** Holds the pressure at its outlet at `setPressure` less `gradient` * q, as long as the inlet can give it. */
export interface ReducingRegulatorLaw {
  readonly kind: 'reducing-regulator';
  readonly setPressure: number;
  readonly gradient?: number;
  readonly k: number;
}

/** Venturi in the line: loss across it, and what it draws in at that loss (taken afterwards, not fed back). */
export interface EductorLaw {
  readonly kind: 'eductor';
  /** Motive flow against pressure difference, measured with water (1000 kg/m3). */
  readonly curve: readonly PressurePoint[];
  /** Pressure difference against suction flow; below the first point nothing is drawn in. */
  readonly suction?: readonly PressurePoint[];
}

export type ElementLaw =
  | PipeLaw
  | FittingLaw
  | FlowFactorLaw
  | OrificeLaw
  | JetAgitatorLaw
  | SpargerLaw
  | CheckValveLaw
  | PositiveDisplacementPumpLaw
  | CentrifugalPumpLaw
  | DemandPumpLaw
  | CurveLaw
  | BackPressureRegulatorLaw
  | ReducingRegulatorLaw
  | EductorLaw;

export type ElementKind = ElementLaw['kind'];
