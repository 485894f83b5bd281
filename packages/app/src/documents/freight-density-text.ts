import { display, type UnitSystem } from '@spraywright/engine/quantity';

/** Density of a piece of freight [kg/m3] as carriers reckon it: by the cubic foot, where liquids are told by the gallon. */
export function freightDensityText(density: number, units: UnitSystem): string {
  return display(density, 'density', units, units === 'us' ? { unit: 'lb/ft3', decimals: 1 } : {});
}
