/** Numbers of each kind of element that can be changed on a compiled network, and their limits. */
import type { ElementParameter } from './compiled-network.ts';
import type { ElementKind, ElementLaw } from './network-model.ts';

/** Slots per element; the last one is `count`. */
export const SLOTS = 6;
export const COUNT = SLOTS - 1;

/** Position in the list is the slot. */
export const PARAMETERS: Readonly<Record<ElementKind, readonly ElementParameter[]>> = {
  pipe: ['length', 'bore', 'roughness', 'lossCoefficient', 'coilDiameter'],
  fitting: ['bore', 'lossCoefficient', 'laminarCoefficient'],
  'flow-factor': ['k'],
  strainer: ['k'],
  orifice: ['k'],
  'jet-agitator': ['k'],
  sparger: ['k', 'orifices'],
  'check-valve': ['bore', 'lossCoefficient', 'crackingPressure'],
  'positive-displacement-pump': ['displacement', 'speed', 'slip', 'constantSlip', 'ratedPressure'],
  'centrifugal-pump': ['speed', 'ratedPressure'],
  'demand-pump': ['speed', 'switchOff', 'switchOn'],
  curve: [],
  eductor: [],
  'back-pressure-regulator': ['setPressure', 'gradient', 'k'],
  unloader: ['setPressure', 'gradient', 'k'],
  'relief-valve': ['setPressure', 'gradient', 'k'],
  'reducing-regulator': ['setPressure', 'gradient', 'k'],
};

interface Limit {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

const LIMITS: Readonly<Record<ElementParameter, Limit>> = {
  length: { min: 0, max: 1e5, unit: 'm' },
  bore: { min: 1e-4, max: 2, unit: 'm' },
  roughness: { min: 0, max: 0.02, unit: 'm' },
  lossCoefficient: { min: 0, max: 1e6, unit: '' },
  coilDiameter: { min: 0, max: 100, unit: 'm' },
  laminarCoefficient: { min: 0, max: 1e6, unit: '' },
  k: { min: 1e-12, max: 1, unit: 'm3/s per sqrt(Pa)' },
  orifices: { min: 1, max: 1e5, unit: '' },
  crackingPressure: { min: 0, max: 1e8, unit: 'Pa' },
  displacement: { min: 0, max: 1, unit: 'm3/rad' },
  speed: { min: 0, max: 1e4, unit: 'rad/s, or relative speed' },
  slip: { min: 1e-16, max: 1, unit: 'm3/(s.Pa)' },
  constantSlip: { min: 0, max: 0.99, unit: '' },
  ratedPressure: { min: 0, max: 1e9, unit: 'Pa' },
  switchOff: { min: 0, max: 1e8, unit: 'Pa' },
  switchOn: { min: 0, max: 1e8, unit: 'Pa' },
  setPressure: { min: -1e5, max: 1e9, unit: 'Pa' },
  gradient: { min: 0, max: 1e15, unit: 'Pa/(m3/s)' },
  count: { min: 1, max: 1e6, unit: '' },
};

export function limitsOf(parameter: ElementParameter): Limit {
  return LIMITS[parameter];
}

/** Text of what is wrong with a value, or undefined when nothing is. */
export function limitBroken(parameter: ElementParameter, value: number): string | undefined {
  const { min, max, unit } = LIMITS[parameter];
  if (value >= min && value <= max) return undefined;
  if (Number.isNaN(value)) return `${parameter} is not a number`;
  const u = unit === '' ? '' : ` ${unit}`;
  return `${parameter} is ${value}${u}; it must be ${value < min ? `at least ${min}` : `at most ${max}`}${u}`;
}

/** Values given by a law, with the defaults filled in. Zero stands for "none" in coilDiameter and ratedPressure. */
export function initialValues(law: ElementLaw): readonly number[] {
  switch (law.kind) {
    case 'pipe':
      return [law.length, law.bore, law.roughness, law.lossCoefficient ?? 0, law.coilDiameter ?? 0];
    case 'fitting':
      return [law.bore, law.lossCoefficient, law.laminarCoefficient ?? 0];
    case 'flow-factor':
    case 'strainer':
    case 'orifice':
    case 'jet-agitator':
      return [law.k];
    case 'sparger':
      return [law.k, law.orifices];
    case 'check-valve':
      return [law.bore, law.lossCoefficient, law.crackingPressure ?? 0];
    case 'positive-displacement-pump':
      return [law.displacement, law.speed, law.slip, law.constantSlip ?? 0, law.ratedPressure ?? 0];
    case 'centrifugal-pump':
      return [law.speed ?? 1, law.ratedPressure ?? 0];
    case 'demand-pump':
      return [law.speed ?? 1, law.switchOff, law.switchOn];
    case 'curve':
    case 'eductor':
      return [];
    case 'back-pressure-regulator':
    case 'unloader':
    case 'relief-valve':
    case 'reducing-regulator':
      return [law.setPressure, law.gradient ?? 0, law.k];
  }
}

/** Parts that pass liquid from `from` to `to` only. */
export function isOneWay(law: ElementLaw): boolean {
  switch (law.kind) {
    case 'pipe':
    case 'fitting':
    case 'flow-factor':
    case 'strainer':
    case 'eductor':
      return false;
    case 'curve':
      return law.oneWay ?? false;
    default:
      return true;
  }
}

export function isPump(law: ElementLaw): boolean {
  return (
    law.kind === 'positive-displacement-pump' || law.kind === 'centrifugal-pump' || law.kind === 'demand-pump'
  );
}

/** Reliefs, unloaders, bypass regulators. */
export function isBackPressure(law: ElementLaw): boolean {
  return law.kind === 'back-pressure-regulator' || law.kind === 'unloader' || law.kind === 'relief-valve';
}

/** Outlets that let liquid out freely and none in. */
export function isNozzle(law: ElementLaw): boolean {
  return law.kind === 'orifice' || law.kind === 'jet-agitator' || law.kind === 'sparger';
}
