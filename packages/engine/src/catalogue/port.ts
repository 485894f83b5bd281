import { identifier, object, oneOf, optional, quantity, type Infer } from '../quantity/index.ts';

/**
 * The ways two parts of a spray rig are joined, by the name the trade or the standard uses.
 *
 * npt            taper pipe thread, ASME B1.20.1
 * hose           a hose pushed on a barb (the barb is male, the hose female)
 * cam-lock       cam and groove coupling, A-A-59326
 * garden-hose    garden hose thread, ASME B1.20.7
 * flat-face      flat-face quick coupling, ISO 16028
 * flange         bolted flange of the given bore
 * tip-thread     fine thread of a gun outlet that takes a tip
 * nozzle-cap     bayonet cap of a boom nozzle body
 * shaft          a mechanical joint: keyed shaft, spline or belt
 */
export const JOINTS = [
  'npt',
  'hose',
  'cam-lock',
  'garden-hose',
  'flat-face',
  'flange',
  'tip-thread',
  'nozzle-cap',
  'shaft',
] as const;

export const portShape = object({
  id: identifier(),
  joint: oneOf(...JOINTS),
  /** Nominal size, such as "3/4 in". */
  size: quantity('length', { min: '1 mm', max: '300 mm' }),
  gender: oneOf('male', 'female', 'none'),
  /** Rating of the joint itself where it is lower than the part's. */
  maxPressure: optional(quantity('pressure', { min: '0 psi', max: '2000 bar' })),
});

export type Port = Infer<typeof portShape>;

/** Nominal sizes are equal when they agree within a tenth of a millimetre: 3/4 in and 19.05 mm are one size. */
const SAME_SIZE = 1e-4;

/** Whether two ports join without anything between them: same joint, same size, male to female (or a genderless pair). */
export function mates(a: Port, b: Port): boolean {
  if (a.joint !== b.joint || Math.abs(a.size - b.size) > SAME_SIZE) return false;
  if (a.gender === 'none' || b.gender === 'none') return a.gender === b.gender;
  return a.gender !== b.gender;
}
