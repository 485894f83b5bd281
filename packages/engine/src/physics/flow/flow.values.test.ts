import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  coilCriticalReynoldsIto,
  coilCriticalReynoldsSchmidt,
  coilCriticalReynoldsSethStahel,
  coilCriticalReynoldsSrinivasan,
  coilFrictionRatioSchmidt,
  criticalReynoldsRyanJohnson,
  cvFromFlowAtOneBar,
  dcMotorPump,
  deanNumber,
  dischargeCoefficientOrificePlate,
  dischargeCoefficientSharpOrifice,
  fireHoseCoefficient,
  fireHoseLoss,
  fittingLoss,
  flowAtOneBarFromKv,
  flowCoefficientLoss,
  fluidPower,
  frictionFactorBlend,
  frictionFactorCoil,
  frictionFactorCoilLaminarWhite,
  frictionFactorColebrook,
  frictionFactorCrane,
  frictionFactorDodgeMetzner,
  frictionFactorPowerLaw,
  frictionLossPoiseuille,
  frictionLossPowerLaw,
  headOfPressure,
  hoseLoss,
  hooperConstants,
  leastStaticHead,
  lossCoefficientBallValve,
  lossCoefficientBallValveReduced,
  lossCoefficientBend,
  lossCoefficientContraction,
  lossCoefficientContractionRennels,
  lossCoefficientDarby,
  lossCoefficientElbow90,
  lossCoefficientEntrance,
  lossCoefficientEntranceRounded,
  lossCoefficientExit,
  lossCoefficientExpansion,
  lossCoefficientFromFlowAtOneBar,
  lossCoefficientGateValve,
  lossCoefficientHooper,
  lossCoefficientLiftCheck,
  lossCoefficientScreen,
  lossCoefficientScreenBlevins,
  lossCoefficientSwingCheck,
  lossCoefficientTeeBranch,
  lossCoefficientTeeRun,
  lossCoefficientThreeWayStraight,
  lossCoefficientThreeWayTurned,
  npshAvailable,
  orificePlateFlow,
  orificeReynolds,
  pressureOfHead,
  pumpShaftPower,
  reynoldsMetznerReed,
  reynoldsNumber,
  standardAtmospherePressure,
  standardAtmosphereTemperature,
  teeDividingLoss,
  teeJoiningLoss,
  tipDensityFactor,
  tipFlow,
  wallRoughness,
  wallShearRate,
  waterDensity,
  waterVapourPressure,
  waterViscosity,
  type FireHoseSize,
} from '../index.ts';

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

interface Entry {
  readonly id: string;
  readonly what: string;
  readonly inputs: Readonly<Record<string, Quantity>>;
  readonly expected: Readonly<Record<string, Quantity>>;
  readonly tolerance: string;
  readonly source: string;
  readonly note: string;
}

/** Written here on purpose, so that the program's own unit table is not its own judge. */
const SI: Readonly<Record<string, number>> = {
  '-': 1,
  m: 1,
  mm: 1e-3,
  in: 0.0254,
  ft: 0.3048,
  in2: 0.0254 ** 2,
  'L/min': 1e-3 / 60,
  'm3/h': 1 / 3600,
  'US gpm': (231 * 0.0254 ** 3) / 60,
  'm2/s': 1,
  deg: Math.PI / 180,
  'm3/h/bar^0.5': 1,
  'gpm/psi^0.5': 1,
  'L/min/bar^0.5': 1e-3 / 60,
  Pa: 1,
  'Pa/m': 1,
  kPa: 1e3,
  MPa: 1e6,
  bar: 1e5,
  atm: 101325,
  psi: (0.45359237 * 9.80665) / 0.0254 ** 2,
  'lb/US gal': 0.45359237 / (231 * 0.0254 ** 3),
  'lb/ft3': 0.45359237 / 0.3048 ** 3,
  'kg/m3': 1,
  'Pa s': 1,
  'Pa s^n': 1,
  degC: 1,
  K: 1,
  W: 1,
  kW: 1e3,
  hp: 550 * 0.3048 * 0.45359237 * 9.80665,
  '1/s': 1,
  V: 1,
  A: 1,
  ohm: 1,
  'V s/rad = N m/A': 1,
  'm3/rev': 1,
  'N m': 1,
  rpm: Math.PI / 30,
  'mm nominal': 1e-3,
};

const DENSITY = 998.2;

type Numbers = Record<string, number>;

const families: readonly (readonly [RegExp, (i: Numbers, entry: Entry) => Numbers])[] = [
  [
    /^coil-D/,
    (i) => {
      const reynolds = (4 * i.flow!) / (Math.PI * i.hose_bore! * i.kinematic_viscosity!);
      const relative = i.roughness! / i.hose_bore!;
      return {
        Re: reynoldsNumber(i.flow!, i.hose_bore!, DENSITY, i.kinematic_viscosity! * DENSITY),
        Re_critical_Schmidt: coilCriticalReynoldsSchmidt(i.hose_bore!, i.coil_centreline_diameter!),
        darcy_f_coil: frictionFactorCoil(reynolds, i.hose_bore!, i.coil_centreline_diameter!, relative),
        ratio_to_straight_Colebrook: coilFrictionRatioSchmidt(
          reynolds,
          i.hose_bore!,
          i.coil_centreline_diameter!,
        ),
      };
    },
  ],
  [
    /^coil-Rec-/,
    (i) => ({
      Schmidt: coilCriticalReynoldsSchmidt(i.hose_bore!, i.coil_centreline_diameter!),
      Ito: coilCriticalReynoldsIto(i.hose_bore!, i.coil_centreline_diameter!),
      Srinivasan: coilCriticalReynoldsSrinivasan(i.hose_bore!, i.coil_centreline_diameter!),
      Seth_Stahel: coilCriticalReynoldsSethStahel(i.hose_bore!, i.coil_centreline_diameter!),
    }),
  ],
  [
    /^coil-laminar-White-/,
    (i) => {
      const f = frictionFactorCoilLaminarWhite(i.Re!, i.hose_bore!, i.coil_centreline_diameter!);
      return {
        dean_number: deanNumber(i.Re!, i.hose_bore!, i.coil_centreline_diameter!),
        darcy_f: f,
        ratio: f / (64 / i.Re!),
      };
    },
  ],
  [/^crane-ft-/, (i) => ({ fT: frictionFactorCrane(i.bore!) })],
  [/^K-ball-full-/, (i) => ({ K: lossCoefficientBallValve(i.bore!) })],
  [
    /^K-ball-standard-/,
    (i) => ({ K: lossCoefficientBallValveReduced(i.pipe_bore!, i.valve_bore!, i.included_angle!) }),
  ],
  [
    /^K-swing-check-/,
    (i) => ({ K_swing: lossCoefficientSwingCheck(i.bore!), K_lift: lossCoefficientLiftCheck(i.bore!) }),
  ],
  [
    /^K-elbow-std-/,
    (i) => ({
      K_elbow90: lossCoefficientElbow90(i.bore!),
      K_tee_run: lossCoefficientTeeRun(i.bore!),
      K_tee_branch: lossCoefficientTeeBranch(i.bore!),
    }),
  ],
  [
    /^K-3way-straight-/,
    (i) => ({
      K_straight: lossCoefficientThreeWayStraight(i.bore!),
      K_branch: lossCoefficientThreeWayTurned(i.bore!),
    }),
  ],
  [
    /^K-contraction-/,
    (i) => ({
      K_contraction_Crane: lossCoefficientContraction(i.small_bore!, i.large_bore!),
      K_contraction_Rennels: lossCoefficientContractionRennels(i.small_bore!, i.large_bore!),
      K_expansion: lossCoefficientExpansion(i.small_bore!, i.large_bore!),
    }),
  ],
  [
    /^K-entrance-sharp$/,
    () => ({
      K_sharp_Rennels: lossCoefficientEntrance('flush'),
      K_sharp_Crane: lossCoefficientEntrance('flush-crane'),
      K_projecting_Crane: lossCoefficientEntrance('projecting'),
      'K_rounded_0.10': lossCoefficientEntranceRounded(0.1),
    }),
  ],
  [
    /^K-hooper-/,
    (i, entry) => {
      const byName = hooperConstants(hooperName(entry.id));
      return {
        K: lossCoefficientHooper(i.K1!, i.Kinf!, i.Re!, i.Di!),
        K_library: lossCoefficientHooper(byName.laminar, byName.turbulent, i.Re!, i.Di!),
      };
    },
  ],
  [
    /^K-darby-elbow-/,
    (i) => ({
      K: lossCoefficientDarby({
        laminarConstant: 800,
        turbulentConstant: 0.14,
        sizeConstant: 4,
        reynolds: i.Re!,
        nominalSize: i.NPS!,
      }),
    }),
  ],
  [
    /^Kv-/,
    (i) => {
      const flowAtOneBar = flowAtOneBarFromKv(i.Kv!);
      return {
        K: lossCoefficientFromFlowAtOneBar(flowAtOneBar, i.bore!),
        Cv: cvFromFlowAtOneBar(flowAtOneBar),
        dp: flowCoefficientLoss(i.flow!, flowAtOneBar, 1000 * i.SG!),
      };
    },
  ],
  [
    /^screen-/,
    (i) => ({
      K_on_approach_velocity: lossCoefficientScreenBlevins(i.open_area_fraction!, i.wire_Re!),
      'K_Idelchik_1.3(1-a)+(1/a-1)^2': lossCoefficientScreen(i.open_area_fraction!),
    }),
  ],
  [
    /^tee-diverging-/,
    (i) => {
      const k = teeDividingLoss(i.branch_fraction!);
      return { K_branch: k.branch, K_run: k.run };
    },
  ],
  [
    /^tee-converging-/,
    (i) => {
      const k = teeJoiningLoss(i.branch_fraction!);
      return { K_branch: k.branch, K_run: k.run };
    },
  ],
  [
    /^orifice-RHG-/,
    (i) => ({ C: dischargeCoefficientOrificePlate(i.beta!, i.pipe_Re!, i.pipe_bore!, 'corner') }),
  ],
  [
    /^orifice-free-/,
    (i) => {
      // The table does not say how warm the water was; 15 degC is taken.
      const density = waterDensity(15);
      const diameter = Math.sqrt((4 * i.orifice_area!) / Math.PI);
      const pressure = pressureOfHead(i.head!, density);
      return {
        Cd: dischargeCoefficientSharpOrifice(
          orificeReynolds(pressure, diameter, density, waterViscosity(15)),
        ),
      };
    },
  ],
  [/^tip-law-/, (i) => ({ q: tipFlow(i.k!, i.p!, 1000 * i.SG!) })],
  [
    /^density-factor-/,
    (i) => ({
      factor: tipDensityFactor(((1000 * i.weight!) / (8.345 * 0.45359237)) * (231 * 0.0254 ** 3)),
      sqrt_SG: tipDensityFactor(1000 * i.specific_gravity!),
    }),
  ],
  [
    /^water-\d+C$/,
    (i) => ({
      rho: waterDensity(i.T!),
      mu: waterViscosity(i.T!),
      nu: waterViscosity(i.T!) / waterDensity(i.T!),
      p_vapour: waterVapourPressure(i.T!),
    }),
  ],
  [/^water-check-/, (i) => ({ rho: waterDensity(i.T! - 273.15), mu: waterViscosity(i.T! - 273.15) })],
  [
    /^atmosphere-/,
    (i) => ({ p: standardAtmospherePressure(i.altitude!), T: standardAtmosphereTemperature(i.altitude!) }),
  ],
  [
    /^npsha-\d+m-/,
    (i) => {
      const density = waterDensity(i.T!);
      const air = standardAtmospherePressure(i.altitude!);
      const vapour = waterVapourPressure(i.T!);
      return {
        h_atm: headOfPressure(air, density),
        h_vap: headOfPressure(vapour, density),
        NPSHa: npshAvailable(air, vapour, density, i.static_head!, i.suction_loss!),
      };
    },
  ],
  [
    /^npsha-book-[12]$/,
    (i) => ({
      NPSHa: npshAvailable(
        pressureOfHead(i.Ha!, DENSITY),
        pressureOfHead(i.Hvp!, DENSITY),
        DENSITY,
        i.Hs!,
        i.Hf! + i.Hi!,
      ),
    }),
  ],
  [
    /^npsha-book-4$/,
    (i) => ({
      h_s: leastStaticHead(
        i.NPSHr!,
        pressureOfHead(i.h_a!, DENSITY),
        pressureOfHead(i.h_vap!, DENSITY),
        DENSITY,
        i.h_f!,
      ),
    }),
  ],
  [
    /^npsha-crane-7\.32$/,
    (i) => ({ NPSHa: npshAvailable(i.p_atm! + i.tank_gauge!, i.p_v!, i.rho!, -i.lift!, i.loss!) }),
  ],
  [
    /^power-/,
    (i) => ({
      hydraulic_hp: fluidPower(i.flow!, i.pressure!),
      rule_gpm_psi_over_1714: fluidPower(i.flow!, i.pressure!),
      shaft_kW: pumpShaftPower(i.flow!, i.pressure!, i.efficiency!),
    }),
  ],
  [/^crane-7\.15$/, crane715],
  [
    /^crane-7\.34$/,
    (i) => {
      // Density of the example: 62.364 lb/ft3.
      const pressure = pressureOfHead(i.head!, 62.364 * SI['lb/ft3']!);
      const brake = pumpShaftPower(i.flow!, pressure, i.eta_pump!);
      return { brake_power: brake, electric_power: brake / (i.eta_motor! * i.eta_drive!) };
    },
  ],
  [
    /^crane-7\.1$/,
    (i) => {
      // 50 mm nominal, schedule 40: 52.48 mm inside.
      const bore = 0.05248;
      const reynolds = reynoldsNumber(i.flow!, bore, waterDensity(i.T!), waterViscosity(i.T!));
      return {
        Re: reynolds,
        darcy_f: frictionFactorColebrook(reynolds, wallRoughness('plastic').typical / bore),
      };
    },
  ],
  [
    /^crane-7\.35$/,
    (i) => {
      const k = teeJoiningLoss(i.Q_branch! / (i.Q_run! + i.Q_branch!));
      return { K_branch: k.branch, K_run: k.run };
    },
  ],
  [
    /^crane-7\.29$/,
    (i) => ({
      Q: orificePlateFlow({
        pressureDifference: i.dp!,
        orificeDiameter: i.Do!,
        pipeBore: i.D!,
        density: i.rho!,
        viscosity: waterViscosity(15),
        taps: 'd-and-half-d',
      }),
    }),
  ],
  [/^crane-7\.11$/, crane711],
  [
    /^firehose-/,
    (i, entry) => {
      const size = fireHoseSize(entry.id);
      expect(fireHoseCoefficient(size)).toBe(i.C);
      return {
        FL_rule: fireHoseLoss(i.flow!, i.length!, fireHoseCoefficient(size)),
        'FL_darcy_eps_0.01mm': hoseLoss({
          flow: i.flow!,
          bore: i.nominal_bore!,
          length: i.length!,
          roughness: 1e-5,
          density: waterDensity(20),
          viscosity: waterViscosity(20),
        }).pressureLoss,
      };
    },
  ],
  [/^roughness-/, (_, entry) => ({ epsilon: roughnessNamed(entry.id) })],
  [
    /^bore-sensitivity-/,
    (i) => {
      const lossOf = (bore: number): number =>
        hoseLoss({
          flow: i.flow!,
          bore,
          length: 1,
          roughness: i.roughness!,
          density: waterDensity(20),
          viscosity: waterViscosity(20),
        }).pressureLoss;
      const nominal = lossOf(i.bore!);
      const narrow = lossOf(i.bore! + i.bore_error!);
      return { dp_nominal: nominal, dp_small_bore: narrow, ratio: narrow / nominal };
    },
  ],
  [/^white-6\.17$/, white617],
  [
    /^dodge-metzner-/,
    (i) => {
      const f = frictionFactorDodgeMetzner(i.Re_MR!, i.n!);
      return { fanning_f: f / 4, darcy_f: f };
    },
  ],
  [
    /^powerlaw-/,
    (i) => {
      const reynolds = reynoldsMetznerReed(i.flow!, i.D!, i.rho!, i.K!, i.n!);
      const loss = frictionLossPowerLaw({
        flow: i.flow!,
        bore: i.D!,
        length: 1,
        density: i.rho!,
        consistency: i.K!,
        index: i.n!,
      });
      return {
        Re_MR: reynolds,
        Re_crit_Ryan_Johnson: criticalReynoldsRyanJohnson(i.n!),
        fanning_f: frictionFactorPowerLaw(reynolds, i.n!) / 4,
        dp_per_m: loss.pressureLoss,
        wall_shear_rate: wallShearRate(i.flow!, i.D!, i.n!),
      };
    },
  ],
  [
    /^dcpump-/,
    (i) => {
      const duty = dcMotorPump({
        voltage: i.V!,
        resistance: i.R!,
        motorConstant: i.k!,
        noLoadCurrent: i.I_noload!,
        displacement: i.displacement!,
        mechanicalEfficiency: i.eta_mech!,
        pressureRise: i.p!,
      });
      return {
        torque: duty.torque,
        current: duty.current,
        speed: duty.speed,
        displacement_flow: duty.displacedFlow,
        input_power: duty.inputPower,
      };
    },
  ],
  [
    /^poiseuille-/,
    (i) => ({
      Re: reynoldsNumber(i.flow!, i.bore!, i.rho!, i.mu!),
      dp: frictionLossPoiseuille(i.flow!, i.bore!, i.length!, i.mu!),
    }),
  ],
];

/** The sketched system of the example: 500 ft of 3 in schedule 40 pipe, four elbows, gate valve, lift check on 2 1/2 in. */
function crane715(i: Numbers): Numbers {
  const bore = 3.068 * 0.0254;
  const density = 62.298 * SI['lb/ft3']!;
  const reynolds = reynoldsNumber(i.flow!, bore, density, 0.95e-3);
  const friction = (frictionFactorBlend(reynolds, (0.0018 * 0.0254) / bore) * 500 * 0.3048) / bore;
  const fittings =
    lossCoefficientExit() +
    lossCoefficientGateValve(bore) +
    4 * lossCoefficientElbow90(bore) +
    lossCoefficientLiftCheck(bore, 2.469 * 0.0254);
  const loss = fittingLoss(friction + fittings, bore, i.flow!, density);
  const head = i.static! + headOfPressure(loss, density);
  return { head, power: pumpShaftPower(i.flow!, pressureOfHead(head, density), i.efficiency!) };
}

/** Flat coil of 25 mm schedule 40 steel pipe: 9 m straight, seven turns of 180 degrees at four bores. */
function crane711(i: Numbers): Numbers {
  const bore = 0.02664;
  const density = waterDensity(i.T!);
  const reynolds = reynoldsNumber(i.flow!, bore, density, waterViscosity(i.T!));
  const friction = (frictionFactorBlend(reynolds, wallRoughness('steel-new').typical / bore) * 9) / bore;
  return {
    dp: fittingLoss(friction + 7 * lossCoefficientBend(bore, 4 * bore, Math.PI), bore, i.flow!, density),
  };
}

/** The pipes of the example: 100, 150, 80 m of 8, 6, 4 cm, roughness 0.24, 0.12, 0.20 mm; kinematic viscosity 1.02e-6. */
function white617(i: Numbers): Numbers {
  const pipes = [
    { length: 100, bore: 0.08, roughness: 0.00024 },
    { length: 150, bore: 0.06, roughness: 0.00012 },
    { length: 80, bore: 0.04, roughness: 0.0002 },
  ];
  const headAt = (flow: number): number =>
    pipes.reduce(
      (sum, pipe) =>
        sum +
        headOfPressure(hoseLoss({ ...pipe, flow, density: 1000, viscosity: 1.02e-3 }).pressureLoss, 1000),
      0,
    );
  let [low, high] = [0, 0.01];
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (headAt(middle) > i.head_loss!) high = middle;
    else low = middle;
  }
  return { Q: (low + high) / 2 };
}

function hooperName(id: string): Parameters<typeof hooperConstants>[0] {
  if (id.includes('elbow-90-std-threaded')) return 'elbow-90-threaded';
  if (id.includes('ball-valve-reduced-trim')) return 'ball-valve-reduced';
  if (id.includes('tee-as-elbow-threaded')) return 'tee-branch';
  if (id.includes('tee-run-through-threaded')) return 'tee-run';
  if (id.includes('check-valve-lift')) return 'check-valve-lift';
  if (id.includes('check-valve-swing')) return 'check-valve-swing';
  throw new Error(`no fitting for ${id}`);
}

function fireHoseSize(id: string): FireHoseSize {
  const sizes: Record<string, FireHoseSize> = {
    '0.75': '3/4',
    '1.0': '1',
    '1.5': '1-1/2',
    '1.75': '1-3/4',
    '2.5': '2-1/2',
  };
  const size = sizes[id.split('-')[1]!];
  if (size === undefined) throw new Error(`no hose size for ${id}`);
  return size;
}

function roughnessNamed(id: string): number {
  if (id === 'roughness-plastic-PVC-high') return wallRoughness('plastic').high;
  if (id === 'roughness-flexible-rubber-tubing-smooth-low') return wallRoughness('rubber').low;
  if (id === 'roughness-rubber-smooth') return wallRoughness('rubber').typical;
  if (id === 'roughness-galvanised-steel') return wallRoughness('steel-galvanised').typical;
  if (id === 'roughness-brass-copper-new') return wallRoughness('brass-or-copper-new').typical;
  throw new Error(`no wall for ${id}`);
}

/** Largest difference allowed, in SI, read from the words of the entry. */
function allowed(tolerance: string, field: string, expected: number): number {
  const relative = (share: number): number => Math.abs(expected) * share;
  if (tolerance.startsWith('rho 1e-4 rel')) {
    if (field === 'rho') return relative(1e-4);
    return relative(field === 'p_vapour' ? 1e-3 : 1e-2);
  }
  if (tolerance.startsWith('exact 1e-6 rel; the 1714 rule'))
    return relative(field.startsWith('rule') ? 2e-4 : 1e-6);
  if (tolerance.startsWith('rule exact; Darcy 0.5% rel')) return relative(field === 'FL_rule' ? 1e-5 : 5e-3);
  if (tolerance.startsWith('factor rounded to 2 decimals'))
    // The second field is not rounded: it is the square root printed to six digits.
    return relative(field === 'factor' ? 0.01 : 1e-5);
  if (tolerance === 'table value') return relative(1e-12);
  const absolute = /^([\d.]+) (m|ft)$/.exec(tolerance);
  if (absolute) return Number(absolute[1]) * SI[absolute[2]!]!;
  const percent = /^([\d.]+)% rel/.exec(tolerance);
  if (percent) return relative(Number(percent[1]) / 100);
  const share = /^([\d.e-]+) rel/.exec(tolerance);
  if (share) return relative(Number(share[1]));
  throw new Error(`tolerance not understood: ${tolerance}`);
}

function toSi(quantity: Quantity): number {
  const factor = SI[quantity.unit];
  if (factor === undefined) throw new Error(`no factor for unit ${quantity.unit}`);
  return quantity.value * factor;
}

/** Entries that cannot be met, with the reason; each is checked to be still unmet, so that a repair shows. */
export const cannotMeet: Readonly<Record<string, string>> = {
  'K-ball-standard-19.05':
    'The entry says 0.2425, which Crane TP-410 formula 5 gives only when the included angle of 30 degrees is put in as 30 x pi/180 = 0.5236 degrees: the cones then cost next to nothing. With 30 degrees the formula gives 0.924; its example 7-6, with its published answer of 781 L/min, agrees with the formula. Both are checked below.',
  'K-ball-standard-25.4':
    'The entry says 0.2258, which Crane TP-410 formula 5 gives only when the included angle of 30 degrees is put in as 30 x pi/180 = 0.5236 degrees: the cones then cost next to nothing. With 30 degrees the formula gives 0.907; its example 7-6, with its published answer of 781 L/min, agrees with the formula. Both are checked below.',
  'crane-7.29':
    'The entry says 462.66 L/min, which is 476.8 L/min times 0.970: the expansibility of a gas (ISO 5167, isentropic exponent 1.3, inlet pressure taken as 2 bar). Water has none, and the example is of water. The published answer is 478 L/min, an independent calculator without the factor gives 476.8; both are checked below.',
};

const otherFile = /^(friction-|churchill-|swameejain-|blend-|dunlop-|network-|pd-|ondemand-|agit-)/;
const file = new URL('../../../reference/hydraulics/values.json', import.meta.url);
const entries = (JSON.parse(readFileSync(file, 'utf8')) as Entry[]).filter(
  (entry) => !otherFile.test(entry.id),
);

function worst(entry: Entry): { message: string; excess: number } {
  const matching = families.filter(([pattern]) => pattern.test(entry.id));
  expect(matching, `${entry.id} needs exactly one mapping`).toHaveLength(1);
  const inputs = Object.fromEntries(Object.entries(entry.inputs).map(([name, q]) => [name, toSi(q)]));
  const computed = matching[0]![1](inputs, entry);
  expect(Object.keys(computed).sort()).toEqual(Object.keys(entry.expected).sort());
  let [message, excess] = ['', -Infinity];
  for (const [name, quantity] of Object.entries(entry.expected)) {
    const expected = toSi(quantity);
    const got = computed[name]!;
    expect(Number.isFinite(got)).toBe(true);
    const limit = allowed(entry.tolerance, name, expected);
    const ratio = Math.abs(got - expected) / limit;
    if (ratio > excess) {
      excess = ratio;
      message = `${entry.id} ${name}: ${got} instead of ${expected}, ${entry.tolerance}; ${entry.source}`;
    }
  }
  return { message, excess };
}

describe('published values of hose, fittings, tips, pumps, water and air', () => {
  it('lists at least one hundred entries', () => {
    expect(entries.length).toBeGreaterThanOrEqual(100);
  });

  for (const entry of entries.filter(({ id }) => !(id in cannotMeet)))
    it(`meets ${entry.id} (${entry.source})`, () => {
      const { message, excess } = worst(entry);
      expect(excess, message).toBeLessThanOrEqual(1);
    });

  for (const [id, reason] of Object.entries(cannotMeet))
    it(`does not give the wrong value of ${id}: ${reason}`, () => {
      const entry = entries.find((one) => one.id === id);
      expect(entry).toBeDefined();
      expect(worst(entry!).excess).toBeGreaterThan(1);
    });
});

describe('what the wrong entries should have said', () => {
  it('gives 0.92 and 0.91 for a standard-port ball valve of 3/4 and 1 in (Crane TP-410 formula 5, computed with the fluids library 1.3.1 with the angle in degrees)', () => {
    const cone = Math.PI / 6;
    expect(Math.abs(lossCoefficientBallValveReduced(0.01905, 0.0142875, cone) / 0.92365 - 1)).toBeLessThan(
      0.03,
    );
    expect(Math.abs(lossCoefficientBallValveReduced(0.0254, 0.01905, cone) / 0.90695 - 1)).toBeLessThan(0.03);
  });

  it('drains a tank through a reduced-port ball valve at 781 L/min (Crane TP-410M example 7-6, published answer, 1 %)', () => {
    // 7 m of head, 60 m of 80 mm schedule 40 pipe, six elbows, sharp entrance, exit; f = fT = 0.017 in the example.
    const bore = 0.07793;
    const others =
      (0.017 * 60) / bore + 6 * 30 * 0.017 + lossCoefficientEntrance('flush-crane') + lossCoefficientExit();
    const valve = lossCoefficientBallValveReduced(bore, 0.06, (16 * Math.PI) / 180, (30 * Math.PI) / 180);
    const velocity = Math.sqrt((2 * 9.80665 * 7) / (others + valve));
    const flow = velocity * (Math.PI / 4) * bore ** 2 * 60000;
    expect(Math.abs(flow / 781 - 1)).toBeLessThan(0.01);
  });

  it('gives 476.8 L/min through the orifice of Crane TP-410M example 7-29 (an independent calculator without expansibility, 1 %; published 478)', () => {
    const flow = orificePlateFlow({
      pressureDifference: 17e3,
      orificeDiameter: 0.05,
      pipeBore: 0.07366,
      density: 999.135,
      viscosity: waterViscosity(15),
      taps: 'd-and-half-d',
    });
    expect(Math.abs((flow * 60000) / 476.777 - 1)).toBeLessThan(0.01);
    expect(Math.abs((flow * 60000) / 478 - 1)).toBeLessThan(0.01);
  });
});
