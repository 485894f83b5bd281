import { inRange } from '../in-range.ts';

// The ranges shared by the laws of this folder; the doc comment of each law repeats them.

export const checkFlow = (flow: number): void => inRange('flow', flow, 0, 1, 'm3/s');
export const checkBore = (bore: number, name = 'bore'): void => inRange(name, bore, 0.0002, 0.5, 'm');
export const checkLength = (length: number): void => inRange('length', length, 0, 1e5, 'm');
export const checkDensity = (density: number): void => inRange('density', density, 500, 2500, 'kg/m3');
export const checkViscosity = (viscosity: number, name = 'viscosity'): void =>
  inRange(name, viscosity, 1e-5, 1000, 'Pa.s');
export const checkPressure = (pressure: number, name = 'pressure'): void =>
  inRange(name, pressure, 0, 1e8, 'Pa');
export const checkFlowAtOneBar = (flowAtOneBar: number): void =>
  inRange('flowAtOneBar', flowAtOneBar, 1e-9, 1, 'm3/s');
export const checkReynolds = (reynolds: number): void => inRange('reynolds', reynolds, 1e-6, 1e9, '-');
