import { inRange } from '../in-range.ts';

/** What a day is made of; the doc comment of `workingDay` explains each field. */
export interface DayInput {
  readonly dayLength: number;
  readonly tank: number;
  readonly flow: number;
  readonly unitVolume: number;
  readonly unitArea: number;
  readonly fillFlow: number;
  readonly unusable?: number;
  readonly startsFull?: boolean;
  readonly moments?: boolean;
  readonly wantedUnits?: number;
  readonly preparation?: number;
  readonly closing?: number;
  readonly flushTime?: number;
  readonly flushVolume?: number;
  readonly fillDistance?: number;
  readonly roadSpeed?: number;
  readonly connectTime?: number;
  readonly mixTime?: number;
  readonly pauseTime?: number;
  readonly workSpeed?: number;
  readonly hoseLength?: number;
  readonly hoseShare?: number;
  readonly hoseSpeed?: number;
  readonly stopTime?: number;
  readonly moveSpeed?: number;
  readonly productShare?: number;
  readonly emptyMass?: number;
  readonly density?: number;
  readonly fuelTank?: number;
  readonly fuelDensity?: number;
  readonly fuelRate?: number;
  readonly fuelPerDistance?: number;
  readonly refuelTime?: number;
  readonly battery?: number;
  readonly sprayCurrent?: number;
  readonly reelCurrent?: number;
  readonly chargeCurrent?: number;
}

/** Defaults of the fields that may be left out. */
const DEFAULTS = {
  unusable: 0,
  startsFull: false,
  moments: true,
  wantedUnits: Infinity,
  preparation: 0,
  closing: 0,
  flushTime: 0,
  flushVolume: 0,
  fillDistance: 0,
  roadSpeed: 8,
  connectTime: 0,
  mixTime: 0,
  pauseTime: 0,
  workSpeed: 0,
  hoseLength: 0,
  hoseShare: 0.5,
  hoseSpeed: 0.8,
  stopTime: 0,
  moveSpeed: 2,
  productShare: 0,
  emptyMass: 0,
  density: 1000,
  fuelTank: 0,
  fuelDensity: 745,
  fuelRate: 0,
  fuelPerDistance: 0,
  refuelTime: 300,
  battery: 0,
  sprayCurrent: 0,
  reelCurrent: 0,
  chargeCurrent: 0,
};

export type WholeDayInput = Required<DayInput>;

/** Lowest and highest allowed of each number, with its unit. */
const RANGES: Record<Exclude<keyof DayInput, 'startsFull' | 'moments'>, readonly [number, number, string]> = {
  dayLength: [0, 86400, 's'],
  tank: [0.001, 100, 'm3'],
  flow: [1e-6, 1, 'm3/s'],
  unitVolume: [1e-5, 100, 'm3'],
  unitArea: [0.01, 1e6, 'm2'],
  fillFlow: [1e-6, 1, 'm3/s'],
  unusable: [0, 100, 'm3'],
  wantedUnits: [0, Infinity, '-'],
  preparation: [0, 86400, 's'],
  closing: [0, 86400, 's'],
  flushTime: [0, 86400, 's'],
  flushVolume: [0, 100, 'm3'],
  fillDistance: [0, 200000, 'm'],
  roadSpeed: [0.1, 40, 'm/s'],
  connectTime: [0, 36000, 's'],
  mixTime: [0, 36000, 's'],
  pauseTime: [0, 36000, 's'],
  workSpeed: [0, 30, 'm/s'],
  hoseLength: [0, 500, 'm'],
  hoseShare: [0.01, 1, '-'],
  hoseSpeed: [0.05, 5, 'm/s'],
  stopTime: [0, 36000, 's'],
  moveSpeed: [0.1, 40, 'm/s'],
  productShare: [0, 1, '-'],
  emptyMass: [0, 50000, 'kg'],
  density: [500, 2500, 'kg/m3'],
  fuelTank: [0, 2, 'm3'],
  fuelDensity: [500, 1000, 'kg/m3'],
  fuelRate: [0, 1e-4, 'm3/s'],
  fuelPerDistance: [0, 1e-5, 'm2'],
  refuelTime: [0, 36000, 's'],
  battery: [0, 1e8, 'A.s'],
  sprayCurrent: [0, 500, 'A'],
  reelCurrent: [0, 500, 'A'],
  chargeCurrent: [0, 500, 'A'],
};

/** Field by field, not spread: so many fields spread are an object that is slow to read, and a day reads them often. */
function withDefaults(d: DayInput): WholeDayInput {
  return {
    dayLength: d.dayLength,
    tank: d.tank,
    flow: d.flow,
    unitVolume: d.unitVolume,
    unitArea: d.unitArea,
    fillFlow: d.fillFlow,
    unusable: d.unusable ?? DEFAULTS.unusable,
    startsFull: d.startsFull ?? DEFAULTS.startsFull,
    moments: d.moments ?? DEFAULTS.moments,
    wantedUnits: d.wantedUnits ?? DEFAULTS.wantedUnits,
    preparation: d.preparation ?? DEFAULTS.preparation,
    closing: d.closing ?? DEFAULTS.closing,
    flushTime: d.flushTime ?? DEFAULTS.flushTime,
    flushVolume: d.flushVolume ?? DEFAULTS.flushVolume,
    fillDistance: d.fillDistance ?? DEFAULTS.fillDistance,
    roadSpeed: d.roadSpeed ?? DEFAULTS.roadSpeed,
    connectTime: d.connectTime ?? DEFAULTS.connectTime,
    mixTime: d.mixTime ?? DEFAULTS.mixTime,
    pauseTime: d.pauseTime ?? DEFAULTS.pauseTime,
    workSpeed: d.workSpeed ?? DEFAULTS.workSpeed,
    hoseLength: d.hoseLength ?? DEFAULTS.hoseLength,
    hoseShare: d.hoseShare ?? DEFAULTS.hoseShare,
    hoseSpeed: d.hoseSpeed ?? DEFAULTS.hoseSpeed,
    stopTime: d.stopTime ?? DEFAULTS.stopTime,
    moveSpeed: d.moveSpeed ?? DEFAULTS.moveSpeed,
    productShare: d.productShare ?? DEFAULTS.productShare,
    emptyMass: d.emptyMass ?? DEFAULTS.emptyMass,
    density: d.density ?? DEFAULTS.density,
    fuelTank: d.fuelTank ?? DEFAULTS.fuelTank,
    fuelDensity: d.fuelDensity ?? DEFAULTS.fuelDensity,
    fuelRate: d.fuelRate ?? DEFAULTS.fuelRate,
    fuelPerDistance: d.fuelPerDistance ?? DEFAULTS.fuelPerDistance,
    refuelTime: d.refuelTime ?? DEFAULTS.refuelTime,
    battery: d.battery ?? DEFAULTS.battery,
    sprayCurrent: d.sprayCurrent ?? DEFAULTS.sprayCurrent,
    reelCurrent: d.reelCurrent ?? DEFAULTS.reelCurrent,
    chargeCurrent: d.chargeCurrent ?? DEFAULTS.chargeCurrent,
  };
}

/** The ranges as a list, since a day is asked thousands of times. */
const CHECKED = Object.entries(RANGES) as [keyof typeof RANGES, (typeof RANGES)['tank']][];

/** The input with its defaults; refuses what is out of range or cannot be. */
export function wholeDay(input: DayInput): WholeDayInput {
  const whole = withDefaults(input);
  for (const [name, [min, max, unit]] of CHECKED) inRange(name, whole[name], min, max, unit);
  if (whole.unusable >= whole.tank)
    throw new RangeError(
      `unusable is ${whole.unusable} m3; it must be less than the tank of ${whole.tank} m3`,
    );
  // A burning engine without a tank, or a current without a battery, would silently count as free.
  if (whole.fuelTank === 0 && (whole.fuelRate > 0 || whole.fuelPerDistance > 0))
    throw new RangeError('fuelTank is 0 m3; it must be more when fuelRate or fuelPerDistance is given');
  if (whole.battery === 0 && (whole.sprayCurrent > 0 || whole.reelCurrent > 0))
    throw new RangeError('battery is 0 A.s; it must be more when sprayCurrent or reelCurrent is given');
  return whole;
}
