import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as physics from './index.ts';
import type { TankForm } from './index.ts';

interface Quantity {
  value: number | string | boolean;
  unit: string;
}
interface Entry {
  id: string;
  what: string;
  inputs: Record<string, Quantity>;
  expected: Record<string, Quantity>;
  tolerance: string;
  source: string;
}

const entries = JSON.parse(
  readFileSync(new URL('../../reference/machine/values.json', import.meta.url), 'utf8'),
) as Entry[];

// Factors to SI, written here so that the test does not lean on the product's own unit table.
const inch = 0.0254;
const ft = 0.3048;
const lb = 0.45359237;
const g = 9.80665;
const lbf = lb * g;
const psi = lbf / inch ** 2;
const gal = 3.785411784e-3;
const hp = 550 * ft * lbf;
const deg = Math.PI / 180;
const rpm = (2 * Math.PI) / 60;
const cmil = (Math.PI / 4) * (0.001 * inch) ** 2;
const FACTORS: Record<string, number> = {
  '1': 1,
  '%': 0.01,
  '1/h': 1,
  '1/in': 1 / inch,
  A: 1,
  AWG: 1,
  Ah: 1,
  'Ah/h': 1,
  K: 1,
  'L/h': 1e-3 / 3600,
  'L/min': 1e-3 / 60,
  N: 1,
  'N.m': 1,
  'SAE gauge': 1,
  'US gal': gal,
  'US gal/h': gal / 3600,
  'US gal/min': gal / 60,
  V: 1,
  W: 1,
  bar: 1e5,
  class: 1,
  cmil,
  deg,
  degC: 1,
  ft,
  'ft/min': ft / 60,
  'ft/s': ft,
  ft3: ft ** 3,
  g,
  'g/kWh': 1e-3 / 3.6e6,
  'gpm.psi/hp': ((gal / 60) * psi) / hp,
  h: 1, // battery functions take and give hours
  hPa: 100,
  hp,
  in: inch,
  in2: inch ** 2,
  in3: inch ** 3,
  'in3/rev': inch ** 3,
  in4: inch ** 4,
  kPa: 1000,
  kW: 1000,
  kg: 1,
  'kg/m3': 1,
  kgf: g,
  kip: 1000 * lbf,
  'kip/in': (1000 * lbf) / inch,
  ksi: 1000 * psi,
  lb,
  'lb/US gal': lb / gal,
  'lb/ft': lb / ft,
  'lb/ft3': lb / ft ** 3,
  'lb/hp.h': lb / (hp * 3600),
  'lb/in3': lb / inch ** 3,
  lbf,
  'lbf.ft': lbf * ft,
  'lbf.in': lbf * inch,
  'lbf/in': lbf / inch,
  m: 1,
  m3: 1,
  min: 60,
  mm2: 1e-6,
  mph: 1609.344 / 3600,
  ohm: 1,
  'ohm.cmil/ft': cmil / ft,
  'ohm/1000 ft': 1 / (1000 * ft),
  psi,
  rpm,
  s: 1,
};

function toSi(q: Quantity): number {
  if (q.unit === 'degF') return ((Number(q.value) - 32) * 5) / 9;
  const factor = FACTORS[q.unit];
  if (factor === undefined || typeof q.value !== 'number')
    throw new Error(`no number in ${JSON.stringify(q)}`);
  return q.value * factor;
}

type Output = number | string | boolean | null;
type In = (name: string) => number;
type Mapping = (n: In, raw: (name: string) => Quantity['value']) => Record<string, Output>;

/** Entries that truly cannot be met, with the reason. */
export const cannotMeet: Record<string, string> = {};

const lyingRound = (diameter: number, length: number): TankForm => ({
  form: 'lying-round',
  diameter,
  length,
  ends: 'flat',
});

const roundTank: Mapping = (n) => {
  const tank = lyingRound(n('diameter'), n('length'));
  const c = physics.tankContents(tank, n('depth'));
  const surface = physics.tankFreeSurface(tank, n('depth'));
  return {
    volume: c.volume,
    volume_gal: c.volume,
    fill_fraction: c.fillFraction,
    centroid_height: c.centroidHeight,
    surface_width: surface.surfaceArea / n('length'),
  };
};

const trailer: Mapping = (n) => {
  const liquid = physics.liquidMass(n('tank_volume'), n('liquid_density'));
  const out: Record<string, number> = {};
  for (const [name, share] of [
    ['full', 1],
    ['half', 0.5],
    ['empty', 0],
  ] as const) {
    const loads = physics.trailerLoads(
      [n('frame_axles_weight'), n('empty_tank_weight'), n('pump_engine_reel_weight'), liquid * share],
      [n('frame_x'), n('tank_x'), n('pump_engine_reel_x'), n('tank_x')],
      n('coupler_to_axle_centre'),
    );
    out[`gross_${name}`] = loads.gross;
    out[`tongue_${name}`] = loads.tongue;
    out[`tongue_share_${name}`] = loads.tongueShare;
    out[`axles_${name}`] = loads.axles;
  }
  return out;
};

const rollCentre: Mapping = (n) => {
  const tank = lyingRound(n('tank_diameter'), n('tank_length'));
  const c = physics.tankContents(tank, n('depth'));
  const liquid = physics.liquidMass(c.volume, n('liquid_density'));
  const at = (height: number) =>
    physics.rollCentreHeight(n('dry_mass'), n('dry_cg_height'), liquid, n('tank_bottom_height') + height);
  const frozen = at(c.centroidHeight);
  const effective = at(physics.tankFreeSurface(tank, n('depth')).rollHeight);
  return {
    liquid_mass: liquid,
    cg_frozen: frozen,
    cg_effective: effective,
    threshold_frozen: physics.rollStability(n('track'), frozen).factor * g,
    threshold_effective: physics.rollStability(n('track'), effective).factor * g,
  };
};

const lug: Mapping = (n, raw) => {
  const c = physics.liftingLugCapacity({
    yieldStrength: n('Fy'),
    ultimateStrength: n('Fu'),
    designFactor: n('design_factor'),
    thickness: n('thickness'),
    edgeBeyondHole: n('edge_beyond_hole_a'),
    sideEdge: n('side_edge_be'),
    holeDiameter: n('hole_diameter'),
    pinDiameter: n('pin_diameter'),
    curvedEdge: raw('curved_edge') === true,
  });
  return {
    effective_width: c.effectiveWidth,
    Cr: c.strengthReduction,
    shear_angle: c.shearAngle,
    Pt: c.tension,
    Pb: c.splitting,
    Pv: c.doubleShear,
    Pp: c.bearing,
    allowable: c.allowable,
  };
};

const bolts: Mapping = (n) => {
  const f = physics.skidBoltForces(
    n('weight'),
    n('deceleration'),
    n('cg_height'),
    n('bolt_spacing_longitudinal'),
    n('cg_from_front_bolts'),
    n('bolts'),
  );
  // Pounds are read as mass here, so forces are given as the mass that weighs as much.
  return {
    shear_per_bolt: f.shearPerBolt / g,
    rear_bolt_uplift: f.rearBoltUplift / g,
    overturn_margin: f.overturnMargin,
  };
};

const budget: Mapping = (n) => {
  const b = physics.chargeBudget({
    rewindCurrent: n('rewind_current'),
    rewindTime: n('rewind_time'),
    rewindsPerHour: n('rewinds_per_hour'),
    controlCurrent: n('controls'),
    coilCurrent: n('coil_rating'),
    coilUsefulFraction: n('coil_useful_fraction'),
    chargeAcceptance: n('charge_acceptance'),
  });
  return { drawn: b.drawn, returned: b.returned, net: b.net };
};

const freight: Mapping = (n) => {
  const { volume, density } = physics.freightDensity(n('length'), n('width'), n('height'), n('weight'));
  return {
    cubic_feet: volume,
    density,
    class_13_level: physics.freightClass(density, '13-level'),
    class_older_18_level: physics.freightClass(density, '18-level'),
  };
};

const mounted = (n: In) => ({
  tractorMass: n('unladen_mass_TL'),
  frontAxleUnladen: n('front_axle_unladen_TV'),
  wheelbase: n('wheelbase_b'),
  axleToHitch: n('rear_axle_to_lower_hitch_c'),
  hitchToImplement: n('hitch_to_implement_cg_d'),
});

const MAPPINGS: Record<string, Mapping> = {
  'drv-hyd-hp-01': (n) => {
    const power = physics.fluidPower(n('flow'), n('pressure'));
    return { fluid_power: power, exact_divisor: (n('flow') * n('pressure')) / power };
  },
  'drv-hyd-hp-02': (n) => ({ fluid_power: physics.fluidPower(n('flow'), n('pressure')) }),
  'drv-hyd-kw-03': (n) => {
    const power = physics.fluidPower(n('flow'), n('pressure'));
    return { fluid_power: power, fluid_power_hp: power };
  },
  'drv-pump-shaft-04': (n) => {
    const d = physics.displacementPumpDuty(
      n('displacement'),
      n('speed'),
      n('pressure'),
      n('eta_volumetric'),
      n('eta_mechanical'),
    );
    return {
      flow: d.flow,
      fluid_power: d.fluidPower,
      overall_efficiency: d.overallEfficiency,
      shaft_power: d.shaftPower,
      shaft_torque: d.shaftTorque,
    };
  },
  'drv-torque-06': (n) => {
    const torque = physics.shaftTorque(n('power'), n('speed'));
    return { torque, torque_si: torque };
  },
  'drv-pto-torque-07': (n) => ({
    torque_540: physics.ptoShaft(n('power'), '540').torque,
    torque_1000: physics.ptoShaft(n('power'), '1000').torque,
  }),
  'drv-reducer-08': (n) => {
    const r = physics.gearReducer(n('engine_speed'), n('pump_speed'), n('input_power'), n('gear_efficiency'));
    return { ratio: r.ratio, output_power: r.powerOut, output_torque: r.torqueOut };
  },
  'drv-belt-09': (n) => {
    const b = physics.beltDrive(
      n('engine_speed'),
      n('driver_pitch_diameter'),
      n('driven_pitch_diameter'),
      n('input_power'),
      n('belt_efficiency'),
      n('slip'),
    );
    return { driven_speed: b.drivenSpeed, belt_speed: b.beltSpeed, output_power: b.powerOut };
  },
  'drv-pd-flow-10': (n) => {
    const flow = physics.pumpFlowAtSpeed(n('flow_rated'), n('speed_rated'), n('speed_actual'));
    return {
      flow_actual: flow,
      shaft_power: physics.pumpShaftPower(flow, n('pressure'), n('overall_efficiency')),
    };
  },
  'drv-j1349-11': (n) => {
    const ca = physics.sparkIgnitionCorrectionJ1349(n('dry_pressure'), n('intake_temperature'));
    return { CA: ca, site_power: n('rated_power') / ca };
  },
  'drv-j1349-12': (n) => {
    const total = physics.standardAtmospherePressure(n('altitude'));
    const vapour = physics.airVapourPressure(n('temperature') + 273.15, n('relative_humidity'));
    const site = physics.siteDerate('sae-j1349', n('altitude'), n('temperature'), n('relative_humidity'));
    return {
      total_pressure: total,
      vapour_pressure: vapour,
      dry_pressure: total - vapour,
      CA: physics.sparkIgnitionCorrectionJ1349(total - vapour, n('temperature')),
      site_power: n('rated_power') * site.factor,
      loss: 1 - site.factor,
    };
  },
  'drv-rule-13': (n) => ({
    site_power: n('rated_power') * physics.siteDerate('extension-3pct', n('elevation'), 20).factor,
  }),
  'drv-rule-14': (n) => {
    const site = physics.siteDerate('small-engine', n('elevation'), n('temperature'));
    return {
      altitude_factor: site.altitudeFactor,
      temperature_factor: site.temperatureFactor,
      site_power: n('rated_power') * site.factor,
    };
  },
  'drv-iso3046-16': (n) => {
    const a = physics.powerAdjustmentIso3046({
      sitePressure: n('site_pressure'),
      siteTemperature: n('site_temperature'),
      siteVapourPressure: n('site_RH') * n('site_saturation_pressure'),
      referencePressure: n('reference_pressure'),
      referenceTemperature: n('reference_temperature'),
      referenceVapourPressure: n('reference_RH') * n('reference_saturation_pressure'),
      humidityWeight: n('a'),
      pressureExponent: n('m'),
      temperatureExponent: n('n'),
      mechanicalEfficiency: n('mechanical_efficiency'),
    });
    return { k: a.indicatedRatio, alpha: a.powerFactor };
  },
  'drv-chain-17': (n) => {
    const c = physics.enginePowerNeeded({
      flow: n('flow'),
      pressureRise: n('pressure'),
      pumpEfficiency: n('pump_efficiency'),
      driveEfficiency: n('belt_efficiency'),
      continuousFraction: n('continuous_fraction'),
      siteFactor: n('altitude_factor') * n('temperature_factor'),
      labelFraction: n('label_to_mean_power'),
    });
    return {
      fluid_power: c.fluidPower,
      pump_shaft_power: c.pumpShaftPower,
      engine_continuous_power: c.engineContinuousPower,
      label_power_needed: c.labelPower,
    };
  },
  'drv-fuel-19': (n) => {
    const rate = physics.fuelRateFromConsumption(n('power'), n('bsfc'), n('fuel_density'));
    return {
      fuel_rate: rate.volumeRate,
      fuel_rate_si: rate.volumeRate,
      bsfc_si: rate.massRate / n('power'),
    };
  },
  'drv-fuel-20': (n) => ({
    diesel: physics.tractorFuelRateAverage(n('pto_power'), 'diesel'),
    petrol: physics.tractorFuelRateAverage(n('pto_power'), 'petrol'),
  }),
  'drv-cardan-22': (n) => {
    const r = physics.cardanSpeedRange(n('input_speed'), n('joint_angle'));
    return { max_speed: r.maxSpeed, min_speed: r.minSpeed };
  },
  'drv-12v-23': (n) => {
    const m = physics.motorPumpCurrent(n('flow'), n('pressure'), n('motor_pump_efficiency'), n('voltage'));
    return { fluid_power: m.fluidPower, current: m.current };
  },
  'tank-hcyl-01': roundTank,
  'tank-hcyl-03': roundTank,
  'tank-level-04': (n) => {
    const tank = lyingRound(n('diameter'), 2);
    const depth = physics.tankDepthForVolume(tank, n('fill_fraction') * physics.tankCapacity(tank));
    return { depth_over_diameter: depth / n('diameter'), depth };
  },
  'tank-hell-05': (n) => {
    const tank: TankForm = {
      form: 'lying-elliptical',
      width: n('width'),
      height: n('height'),
      length: n('length'),
    };
    const c = physics.tankContents(tank, n('depth'));
    return {
      volume: c.volume,
      fill_fraction: c.fillFraction,
      centroid_height: c.centroidHeight,
      surface_width: physics.tankFreeSurface(tank, n('depth')).surfaceArea / n('length'),
    };
  },
  'tank-sphend-08': (n) => {
    const tank: TankForm = {
      form: 'lying-round',
      diameter: 2 * n('radius'),
      length: n('straight_length'),
      ends: 'hemispherical',
    };
    const c = physics.tankContents(tank, n('depth'));
    // The entry's "total_volume" is the liquid at this depth (cylinder part plus ends), as its fill fraction shows:
    // 0.6480 m3 over the brim volume of 0.8713 m3 is 0.7438.
    return { total_volume: c.volume, fill_fraction: c.fillFraction, centroid_height: c.centroidHeight };
  },
  'tank-cap-09': (n) => {
    const sphere: TankForm = {
      form: 'lying-round',
      diameter: 2 * n('radius'),
      length: 0,
      ends: 'hemispherical',
    };
    return { volume: physics.tankContents(sphere, n('depth')).volume };
  },
  'tank-cone-10': (n) => {
    const tank: TankForm = {
      form: 'upright-round',
      diameter: n('diameter'),
      height: 1,
      coneHeight: n('cone_height'),
      outletDiameter: n('outlet_diameter'),
    };
    return {
      volume_a: physics.tankContents(tank, n('depth_a')).volume,
      volume_b: physics.tankContents(tank, n('depth_b')).volume,
    };
  },
  'tank-sump-11': (n) => {
    const tank: TankForm = {
      form: 'box',
      length: n('tank_length'),
      width: n('tank_width'),
      height: 1,
      sump: {
        topLength: n('sump_top_length'),
        topWidth: n('sump_top_width'),
        bottomLength: n('sump_bottom_length'),
        bottomWidth: n('sump_bottom_width'),
        depth: n('sump_depth'),
      },
    };
    return {
      volume_a: physics.tankContents(tank, n('level_a_above_sump_bottom')).volume,
      volume_b: physics.tankContents(tank, n('level_b_above_sump_bottom')).volume,
    };
  },
  'tank-rectroll-12': (n) => {
    const s = physics.boxLiquidOnSideSlope(n('width'), n('level_depth'), n('slope'));
    return { lateral_shift: s.lateralShift, centroid_height: s.centroidHeight };
  },
  'tank-circroll-14': (n) => {
    const s = physics.roundLiquidOnSideSlope(n('diameter'), n('depth'), n('slope'));
    return {
      centroid_below_axis: s.centroidBelowAxis,
      lateral_shift_tank_frame: s.lateralShift,
      virtual_rise_small_angle: s.virtualRise,
    };
  },
  'tank-freesurf-15': (n) => ({
    rise_open: physics.tankFreeSurface(
      { form: 'box', length: n('length'), width: n('width'), height: 1 },
      n('depth'),
    ).rollRise,
    rise_divided: physics.boxFreeSurfaceRise(n('width'), n('depth'), n('compartments')),
  }),
  'tank-pitch-16': (n) => {
    const tank = lyingRound(2 * n('radius'), n('length'));
    const volume = n('fill_fraction') * physics.tankCapacity(tank);
    const t = physics.tankTilted(tank, volume, n('pitch'), 0);
    return {
      volume,
      longitudinal_shift: -t.centroidX,
      centroid_height: t.centroidHeight,
      depth_low_end: t.surfaceRear,
      depth_high_end: t.surfaceFront,
    };
  },
  'tank-brake-19': (n) => {
    const s = physics.brakingSurface(n('length'), n('deceleration'));
    return { surface_angle: s.surfaceAngle, front_rise: s.frontRise };
  },
  'tank-dead-20': (n) => ({
    dead_mid_outlet: physics.unusableOnFlatFloor(n('length') / 2, n('width'), n('slope')),
    dead_high_end_outlet: physics.unusableOnFlatFloor(n('length'), n('width'), n('slope')),
  }),
  'tank-mass-21': (n) => {
    const mass = physics.liquidMass(n('volume'), n('density'));
    return { mass, mass_si: mass };
  },
  'wt-trailer-01': trailer,
  'wt-trailer-02': trailer,
  'wt-ratings-03': (n) => {
    const use = physics.axleUse(n('gross') - n('tongue'), n('axle_rating_each'), n('axles'));
    return {
      axle_margin: use.margin,
      axle_utilisation: use.utilisation,
      exceeds_class4_coupler:
        physics.couplerClass(n('class4_max_gtw')).class === 4 && physics.couplerClass(n('gross')).class === 0,
      min_tow_vehicle_gvwr_surge: physics.surgeBrakeTowRating(n('trailer_gvwr')),
    };
  },
  'wt-class4-05': (n) => {
    const s = physics.couplerStrengths('4', n('mgtw'));
    return {
      longitudinal_tension: s.longitudinalTension / g,
      longitudinal_compression: s.longitudinalCompression / g,
      transverse_thrust: s.transverse / g,
      vertical_tension: s.verticalTension / g,
      vertical_compression: s.verticalCompression / g,
    };
  },
  'wt-hitchtest-06': (n) => {
    const f = physics.hitchTestForces(n('R'), 'weight-carrying');
    return {
      step1_V_and_L: f.verticalAndLongitudinal / g,
      step2_L: f.longitudinal / g,
      step2_V: f.vertical / g,
      step4_T: f.transverse / g,
    };
  },
  'wt-classsel-07': (n) => {
    const name = (gross: number) => physics.couplerClass(gross).class || 'none';
    return {
      class_a: name(n('gtw_a')),
      class_b: name(n('gtw_b')),
      class_c: name(n('gtw_c')),
      class_d: name(n('gtw_d')),
      class_e: name(n('gtw_e')),
    };
  },
  'wt-chain-08': (n) => ({
    // The federal share is for two chains together: the number of chains in the entry must agree with it.
    federal_each_if_combined: ((2 / n('chains')) * physics.safetyChainStrength(n('gross'), 'us-federal')) / g,
    each_chain_if_state_per_chain: physics.safetyChainStrength(n('gross'), 'each-at-gross') / g,
  }),
  'wt-brakelaw-09': (n) => {
    const required = (gross: number, speed: number) =>
      physics.stateTrailerBrakes('TX', gross, speed).answer === 'required';
    return {
      required_a: required(n('gross_a'), n('speed_a')),
      required_b: required(n('gross_b'), n('speed_b')),
      required_c: required(n('gross_c'), n('speed_c')),
    };
  },
  'wt-tyre-11': (n) => {
    const t = physics.tyreForAxle(n('axle_rating'), n('tyres_per_axle'));
    return { min_load_index: t.loadIndex, tyre_capacity: t.tyreLoad, axle_by_tyres: t.axleByTyres };
  },
  'wt-tyre-12': (n) => ({
    single_axle_capacity: physics.dualMarkedTyreCapacity(n('li_single'), n('li_multi'), 1),
    tandem_capacity: physics.dualMarkedTyreCapacity(n('li_single'), n('li_multi'), 2),
  }),
  'wt-tyre-13': (n) => ({
    law_a: physics.tyreLoadLaw(n('li_a')),
    law_b: physics.tyreLoadLaw(n('li_b')),
    law_c: physics.tyreLoadLaw(n('li_c')),
    table_a: physics.tyreLoad(n('li_a')),
    table_b: physics.tyreLoad(n('li_b')),
    table_c: physics.tyreLoad(n('li_c')),
  }),
  'wt-truck-14': (n) => {
    const ahead = physics.addedAxleLoads(n('skid_weight'), n('wheelbase'), -n('cg_ahead_of_rear_axle'));
    const behind = physics.addedAxleLoads(n('skid_weight'), n('wheelbase'), n('cg_behind_rear_axle'));
    return {
      front_added_ahead: ahead.front,
      rear_added_ahead: ahead.rear,
      front_added_behind: behind.front,
      rear_added_behind: behind.rear,
    };
  },
  'wt-tractor-16': (n) => {
    const p = {
      ...mounted(n),
      implementMass: n('implement_mass_GH'),
      ballastAhead: n('front_ballast_to_front_axle_a'),
    };
    const ballastMass = physics.leastFrontBallast(p);
    return {
      front_axle_no_ballast: physics.threePointAxleLoads(p).front,
      min_front_ballast: ballastMass,
      front_axle_with_min_ballast: physics.threePointAxleLoads({ ...p, ballastMass }).front,
    };
  },
  'wt-tractor-17': (n) => {
    const mass = physics.largestMountedMass(mounted(n));
    return {
      max_implement_mass: mass,
      // 180 kg dry and 8.34 lb/gal are named in the entry's field and in entry wt-tractor-16.
      max_liquid_if_180kg_dry: (mass - 180) / (FACTORS['lb/US gal']! * 8.34),
    };
  },
  'wt-lift-19': (n) => ({
    lift_a: physics.leastLiftForce(n('pto_power_a')),
    lift_a_lbf: physics.leastLiftForce(n('pto_power_a')),
    lift_b: physics.leastLiftForce(n('pto_power_b')),
    lift_b_lbf: physics.leastLiftForce(n('pto_power_b')),
    lift_c: physics.leastLiftForce(n('pto_power_c')),
  }),
  'wt-lift-20': (n) => {
    const mass = physics.liquidMass(n('tank'), n('density')) + n('dry_weight');
    const power = physics.ptoPowerForLift(mass * g);
    return { rig_weight: mass, rig_force: mass * g, pto_power_needed: power, pto_power_needed_hp: power };
  },
  'wt-lift-21': (n) => ({
    capacity_at_cg: physics.liftAtDistance(n('capacity_610'), n('lower_link_length'), n('cg_behind_hitch')),
  }),
  'wt-roll-22': (n) => {
    const r = physics.rollStability(n('track'), n('cg_height'));
    return { ssf: r.factor, tilt_angle: r.tiltAngle, derated_dynamic: r.dynamicFactor * g };
  },
  'wt-rollcg-23': rollCentre,
  'wt-rollcg-24': rollCentre,
  'wt-tri-25': (n) => {
    const angle = physics.threeSupportTipAngle(
      n('track'),
      n('hitch_to_axle'),
      n('hitch_to_cg'),
      n('cg_height'),
      n('hitch_height'),
    );
    return {
      tan_angle: Math.tan(angle),
      angle,
      two_wheel_formula_angle: physics.rollStability(n('track'), n('cg_height')).tiltAngle,
    };
  },
  'wt-long-28': (n) => {
    const t = physics.backwardTipGrade(n('cg_ahead_of_rear_axle'), n('cg_height'));
    return { grade_angle: t.angle, grade: t.grade };
  },
  'wt-hand-29': (n) => ({
    level_force: physics.pullForce(n('mass'), 0.02).total,
    slope_force: physics.pullForce(n('mass'), 0.02, n('slope')).grade,
    total: physics.pullForce(n('mass'), 0.02, n('slope')).total,
  }),
  'wt-hand-30': (n) => {
    const mass = n('dry_mass') + physics.liquidMass(n('liquid'), n('density'));
    const f = physics.pullForce(mass, n('rolling_coefficient'), n('grade'));
    return {
      total_mass: mass,
      rolling_force: f.rolling,
      grade_force: f.grade,
      total_force: f.total,
      within_men_sustained: f.total <= physics.handForceGuide('sustained', 'men'),
    };
  },
  'wt-hand-31': (n) => {
    expect(physics.handForceGuide('sustained', 'men')).toBeCloseTo(n('limit_men'), 9);
    expect(physics.handForceGuide('sustained', 'women')).toBeCloseTo(n('limit_women'), 9);
    const men = physics.largestPulledMass(
      physics.handForceGuide('sustained', 'men'),
      n('rolling_coefficient'),
    );
    const women = physics.largestPulledMass(
      physics.handForceGuide('sustained', 'women'),
      n('rolling_coefficient'),
    );
    const liquid = (mass: number) => (mass - n('dry_mass')) / n('density');
    return { mass_men: men, mass_women: women, liquid_men: liquid(men), liquid_women: liquid(women) };
  },
  'wt-tow-32': (n) => {
    const mass = n('dry_mass') + physics.liquidMass(n('liquid'), n('density'));
    return {
      mass,
      pull_level: physics.pullForce(mass, n('c_turf')).total,
      pull_grade: physics.pullForce(mass, n('c_turf'), n('grade')).total,
      pull_soft_level: physics.pullForce(mass, n('c_soft')).total,
    };
  },
  'frm-rhs-01': (n) => {
    const s = physics.squareTubeSection(n('depth'), n('width'), n('wall'));
    return {
      area: s.area,
      Ix: s.inertiaX,
      Sx: s.modulusX,
      Iy: s.inertiaY,
      weight_aluminium: physics.massPerLength(s.area, n('density')),
    };
  },
  'frm-hss-02': (n) => {
    // The function takes radii of 2t and t: the entry's radii are these.
    expect(n('outer_radius')).toBeCloseTo(2 * n('design_wall'), 12);
    expect(n('inner_radius')).toBeCloseTo(n('design_wall'), 12);
    const s = physics.roundedTubeSection(n('depth'), n('width'), n('design_wall'));
    return { area: s.area, Ix: s.inertiaX, Sx: s.modulusX, Iy: s.inertiaY };
  },
  'frm-beam-05': (n) => {
    const r = physics.railBending(n('tank_and_liquid'), n('rails'), n('span'), n('dynamic_factor'));
    return {
      load_per_rail: r.loadPerRail / g,
      max_moment: r.moment,
      stress: physics.bendingStress(r.moment, n('Sx')),
      required_Sx: physics.sectionModulusFor(r.moment, n('allowable')),
    };
  },
  'frm-beam-06': (n) => {
    const r = physics.overhangingRail(n('total_length'), n('overhang'), n('load'));
    const best = physics.overhangingRail(n('total_length'), r.bestOverhang, n('load'));
    return {
      support_moment: r.supportMoment,
      midspan_moment: r.midspanMoment,
      optimum_overhang: r.bestOverhang,
      optimum_fraction: r.bestOverhang / n('total_length'),
      moment_at_optimum: best.midspanMoment,
    };
  },
  'frm-defl-08': (n) => {
    const load = n('load_per_rail') * g;
    const steel = physics.evenLoadSag(load, n('span'), n('E_steel'), n('I'));
    const aluminium = physics.evenLoadSag(load, n('span'), n('E_aluminium'), n('I'));
    return {
      steel,
      aluminium,
      span_over_deflection_steel: n('span') / steel,
      stiffness_ratio: aluminium / steel,
    };
  },
  'frm-allow-09': (n) => {
    const aluminium = (yieldStrength: number, ultimateStrength: number) =>
      physics.allowableAluminiumStress(
        yieldStrength,
        ultimateStrength,
        n('al_yield_factor'),
        n('al_rupture_factor'),
      );
    const a36 = physics.allowableSteelStress(n('A36_Fy'), n('steel_factor'));
    const a500 = physics.allowableSteelStress(n('A500B_Fy'), n('steel_factor'));
    const t6 = aluminium(n('T6_Fty'), n('T6_Ftu'));
    const welded = aluminium(n('welded_Fty'), n('welded_Ftu'));
    // The table of materials must lead to the same stresses.
    expect(physics.frameMaterial('steel-a36').allowable).toBeCloseTo(a36, 3);
    expect(physics.frameMaterial('steel-a500b').allowable).toBeCloseTo(a500, 3);
    expect(physics.frameMaterial('aluminium-6061-t6').allowable).toBeCloseTo(t6, 3);
    expect(physics.frameMaterial('aluminium-6061-t6-welded').allowable).toBeCloseTo(welded, 3);
    return {
      A36: a36,
      A500B: a500,
      T6: t6,
      T6_welded: welded,
      welded_over_unwelded: welded / t6,
      A500B_over_welded_Al: a500 / welded,
    };
  },
  'frm-fillet-11': (n) => {
    const sixteenth = physics.filletWeldSteel(n('electrode_strength'), inch / 16, n('length'), n('omega'));
    const weld = physics.filletWeldSteel(n('electrode_strength'), n('leg'), n('length'), n('omega'));
    return {
      per_inch_per_sixteenth: sixteenth.perLength,
      per_inch: weld.perLength,
      capacity: weld.capacity,
    };
  },
  'frm-bolt-12': (n) => {
    const b = physics.boltPreload(
      n('diameter'),
      1 / n('tpi'),
      n('proof'),
      n('preload_fraction'),
      n('nut_factor'),
    );
    return { stress_area: b.stressArea, clamp_load: b.clampLoad / g, torque: b.torque };
  },
  'frm-sling-14': (n) => {
    const tension = (angle: string) =>
      physics.slingLegTension(n('weight'), n('legs_counted'), n(`angle_${angle}`)) / g;
    return { tension_a: tension('a'), tension_b: tension('b'), tension_c: tension('c') };
  },
  'frm-lug-15': lug,
  'frm-lug-16': lug,
  'frm-tongue-17': (n) => {
    const t = physics.tongueBending(
      n('tongue_load') * g,
      n('cantilever'),
      n('members'),
      n('Sx_each'),
      n('dynamic_factor'),
    );
    return { moment: t.moment, stress: t.stress };
  },
  'sec-force-01': (n) => {
    const breaking = physics.restraintForces(n('weight'), 'breaking');
    const wll = physics.restraintForces(n('weight'), 'working-load');
    expect(breaking.strengthBasis).toBe('breaking strength');
    expect(wll.strengthBasis).toBe('working load limit');
    return {
      breaking_forward: breaking.forward / g,
      breaking_rear: breaking.rearward / g,
      breaking_lateral: breaking.sideways / g,
      wll_forward: wll.forward / g,
      wll_rear: wll.rearward / g,
      wll_lateral: wll.sideways / g,
      down: wll.downward / g,
      aggregate_wll: wll.aggregateWorkingLoad / g,
    };
  },
  'sec-ties-02': (n) => {
    const ties = (k: string) => physics.tiedownNumber(n(`length_${k}`), n(`weight_${k}`), false);
    return { n_a: ties('a'), n_b: ties('b'), n_c: ties('c'), n_d: ties('d') };
  },
  'sec-strap-03': (n) => {
    expect(physics.TIEDOWN_COUNT_FACTOR.direct).toBe(n('count_factor_direct'));
    expect(physics.TIEDOWN_COUNT_FACTOR.over).toBe(n('count_factor_over'));
    const direct = physics.tiedownsForWorkingLoad(n('weight'), n('strap_wll') * g, 'direct');
    const over = physics.tiedownsForWorkingLoad(n('weight'), n('strap_wll') * g, 'over');
    return { needed_aggregate: direct.needed / g, direct_straps: direct.number, over_straps: over.number };
  },
  'sec-chainwll-04': (n) => {
    const chains: Record<string, physics.ChainSize> = { '0.25': '1/4', '0.3125': '5/16', '0.375': '3/8' };
    const chain = (name: string, grade: physics.ChainGrade) =>
      physics.chainWorkingLoad(chains[String(+(n(name) / inch).toFixed(4))]!, grade) / g;
    expect(n('webbing_2in') / inch).toBeCloseTo(2, 9);
    return {
      'grade70_5/16': chain('grade70_5/16', '70'),
      'grade43_3/8': chain('grade43_3/8', '43'),
      'grade30_1/4': chain('grade30_1/4', '30'),
      webbing_2in: physics.webbingWorkingLoad('2') / g,
    };
  },
  'sec-bolts-05': bolts,
  'sec-bolts-06': bolts,
  'ele-awg-01': (n) => {
    const wire = physics.wireGauge(n('awg'));
    return {
      diameter: wire.diameter,
      area_cmil: wire.area,
      area: wire.area,
      ohm_per_kft_20C: physics.copperResistance(wire.area, 1, 20),
      ohm_per_kft_75C: physics.copperResistance(wire.area, 1, 75),
    };
  },
  'ele-drop-03': (n) => {
    const { area } = physics.wireGauge(n('awg'));
    const cold = physics.cableDrop(n('current'), area, n('one_way'), n('system'));
    return {
      drop_20C: cold.drop,
      percent_20C: cold.share,
      drop_60C: physics.cableDrop(n('current'), area, n('one_way'), n('system'), 60).drop,
    };
  },
  'ele-abyc-05': (n) => {
    const at3 = physics.copperAreaForDrop(n('current'), n('loop_length_3pct'), 0.03 * n('system'), n('K'));
    const at10 = physics.copperAreaForDrop(n('current'), n('loop_length_10pct'), 0.1 * n('system'));
    return {
      cmil_3pct: at3,
      awg_3pct: physics.cableFor(at3, 'AWG').gauge,
      sae_3pct: physics.cableFor(at3, 'SAE').gauge,
      cmil_10pct: at10,
      awg_10pct: physics.cableFor(at10, 'AWG').gauge,
      sae_10pct: physics.cableFor(at10, 'SAE').gauge,
    };
  },
  'ele-amp-07': (n) => {
    const outside = physics.wireAmpacity(n('awg'), false);
    const inside = physics.wireAmpacity(n('awg'), true);
    return { outside, inside, ratio: inside / outside };
  },
  'ele-fuse-08': (n, raw) => {
    const sizes = String(raw('standard_fuses')).split(',').map(Number);
    const fuse = physics.fuseFor(n('load'), n('wire_ampacity'), sizes);
    return { minimum_rating: fuse.minimumRating, chosen: fuse.chosen ?? 'none', ok: fuse.fits };
  },
  'ele-peuk-10': (n) => {
    const hours = (current: number) =>
      physics.batteryRunTime(n('capacity'), n('rated_hours'), n('k'), current);
    return {
      t_a: hours(n('I_a')),
      t_b: hours(n('I_b')),
      t_c: hours(n('I_c')),
      delivered_c: hours(n('I_c')) * n('I_c'),
    };
  },
  'ele-peuk-12': (n) => {
    const r = physics.rewindsFromBattery(
      n('C20'),
      20,
      n('k'),
      n('current'),
      n('rewind'),
      n('depth_of_discharge'),
    );
    return { runtime_full: r.runTime, rewinds: r.rewinds };
  },
  'ele-budget-13': budget,
  'ele-budget-14': (n, raw) => {
    const b = budget(n, raw);
    return { ...b, hours: physics.hoursToDepth(n('battery'), n('usable'), Number(b['net'])) };
  },
  'ele-reel-15': (n) => {
    const pull = physics.hoseDragForce(n('hose_length'), n('hose_weight_filled'), n('ground_friction'));
    const motor = physics.reelMotor(pull, n('speed'), n('drive_efficiency'), n('voltage'));
    return { pull, mechanical_power: motor.mechanicalPower, current: motor.current };
  },
  'ele-crank-17': (n) => {
    const c = physics.crankingVoltage(
      n('current'),
      physics.wireGauge(n('awg')).area,
      n('one_way'),
      n('joints'),
      n('battery_voltage_loaded'),
    );
    return { cable_drop: c.cableDrop, joint_drop: c.jointDrop, starter_voltage: c.starterVoltage };
  },
  'ele-cca-18': (n) => ({
    cca: physics.coldCrankingFromMarine(n('mca')),
    ah_at_25A: physics.capacityFromReserve(n('reserve')),
  }),
  'frt-01': freight,
  'frt-02': freight,
  'frt-03': freight,
  'frt-05': (n) => {
    const t = physics.freightTarget(n('length'), n('width'), n('height'), 980 * lb, n('target_density'));
    return { weight: t.massAtHeight, height_for_980lb: t.heightAtMass };
  },
  'leg-bridge-06': (n) => ({
    W_a: physics.bridgeFormulaWeight(n('L_a'), n('N_a')),
    W_b: physics.bridgeFormulaWeight(n('L_b'), n('N_b')),
    W_c: physics.bridgeFormulaWeight(n('L_c'), n('N_c')),
  }),
  'leg-width-07': (n) => {
    const w = physics.overallWidth(
      n('frame_width'),
      n('tyre_width'),
      n('clearance_each_side'),
      n('fender_each_side'),
    );
    return {
      overall: w.overall,
      within_102: w.withinLimit,
      clearance_lamps_needed: w.clearanceLamps,
    };
  },
};

/** Units whose values are choices, not measurements. */
const EXACT_UNITS = ['class', 'AWG', 'SAE gauge'];
/** Printed decimals carry six digits; "exact" asks all of them. */
const SIX_DIGITS = 1e-6;

function relativeTolerance(entry: Entry, name: string): number {
  const unit = entry.expected[name]!.unit;
  if (EXACT_UNITS.includes(unit)) return SIX_DIGITS;
  if (name.startsWith('table_')) return SIX_DIGITS;
  if (entry.tolerance === 'exact') return SIX_DIGITS;
  const percent = /([\d.]+)% rel/.exec(entry.tolerance);
  if (!percent) throw new Error(`${entry.id}: tolerance '${entry.tolerance}' is not understood`);
  return Number(percent[1]) / 100;
}

describe('published machine values', () => {
  it('cover all 96 entries, each with a mapping or a stated reason', () => {
    expect(entries).toHaveLength(96);
    const known = new Set([...Object.keys(MAPPINGS), ...Object.keys(cannotMeet)]);
    expect(entries.map((e) => e.id).filter((id) => !known.has(id))).toEqual([]);
    const present = new Set(entries.map((e) => e.id));
    expect([...known].filter((id) => !present.has(id))).toEqual([]);
  });

  for (const entry of entries) {
    if (entry.id in cannotMeet) continue;
    it(`${entry.id}: ${entry.what} [${entry.source}]`, () => {
      const read = new Set<string>();
      const raw = (name: string): Quantity['value'] => {
        const input = entry.inputs[name];
        if (!input) throw new Error(`${entry.id} has no input ${name}`);
        read.add(name);
        return input.value;
      };
      const number = (name: string): number => {
        raw(name);
        return toSi(entry.inputs[name]!);
      };
      const computed = MAPPINGS[entry.id]!(number, raw);
      expect(
        Object.keys(entry.inputs).filter((name) => !read.has(name)),
        `${entry.id}: inputs that no function was given`,
      ).toEqual([]);
      for (const [name, want] of Object.entries(entry.expected)) {
        const label = `${entry.id} ${name}`;
        const got = computed[name];
        expect(got, label).toBeDefined();
        if (typeof want.value !== 'number') {
          expect(got, label).toBe(want.value);
          continue;
        }
        const target = toSi(want);
        const allowed = Math.max(Math.abs(target) * relativeTolerance(entry, name), 1e-12);
        expect(typeof got, label).toBe('number');
        expect(
          Math.abs((got as number) - target),
          `${label}: got ${String(got)}, want ${target}`,
        ).toBeLessThanOrEqual(allowed);
      }
    });
  }
});
