import { inRange } from '../in-range.ts';
import { CUBIC_FOOT, FOOT, US_GALLON } from '../us-measure.ts';

/** Dilute spray per volume of foliage: extension practice for pruned and for dense canopies [m3/m3]. */
export const TREE_ROW_FACTOR = {
  /** 0.7 US gal per 1000 ft3. */
  pruned: (0.7 * US_GALLON) / (1000 * CUBIC_FOOT),
  /** 1.0 US gal per 1000 ft3. */
  dense: US_GALLON / (1000 * CUBIC_FOOT),
  source: 'Landers, Cornell Univ., tree row volume; Penn State; Univ. of Wisconsin Fruit Program 2023',
} as const;

/**
 * Volume of foliage that stands on an area of orchard.
 *
 * @formula TRV = H W / S
 * @param height height of the crown [m] 0..40
 * @param width width of the row across the driving direction [m] 0..30
 * @param row spacing of the rows [m] 0.3..60
 * @returns foliage volume per ground area [m3/m2]
 * @throws RangeError when a parameter is outside its range
 * @source Landers, Cornell Univ. NYSAES, tree row volume: ft3/acre = H W 43560 / S.
 */
export function treeRowVolume(height: number, width: number, row: number): number {
  inRange('height', height, 0, 40, 'm');
  inRange('width', width, 0, 30, 'm');
  inRange('row', row, 0.3, 60, 'm');
  return (height * width) / row;
}

/**
 * Dilute spray on an area of orchard from its foliage volume.
 *
 * @formula q = k TRV
 * @param volume foliage volume per ground area [m3/m2] 0..40
 * @param factor spray per volume of foliage [m3/m3] 1e-6..1e-2
 * @returns dose on the ground area [m3/m2]
 * @valid 0.094e-3 (well pruned) to 0.134e-3 (dense) is published; nothing is published for tall shade trees.
 * @throws RangeError when a parameter is outside its range
 * @source Landers, Cornell Univ.; Univ. of Wisconsin Fruit Program 2023.
 */
export function treeRowDose(volume: number, factor: number): number {
  inRange('volume', volume, 0, 40, 'm3/m2');
  inRange('factor', factor, 1e-6, 1e-2, 'm3/m3');
  return volume * factor;
}

/**
 * Spray on an area of nursery or orchard rows by the Ohio equations.
 *
 * @formula GPA = k D H / S, k = 10 nursery, 40 orchard (D, H, S in ft)
 * @param crownWidth width of the crowns [m] 0..15
 * @param crownHeight height of the sprayed part: tree less skip [m] 0..20
 * @param row spacing of the rows [m] 0.3..30
 * @param crop which equation [one of nursery, orchard]
 * @returns dose on the ground area [m3/m2]
 * @valid The two crops differ by a factor 4: the equation chosen must be printed with the result.
 * @throws RangeError when a parameter is outside its range
 * @source Zondag, Ohio State Univ. Extension, nursery tree-row-volume equation (trade press report).
 */
export function rowDoseOhio(
  crownWidth: number,
  crownHeight: number,
  row: number,
  crop: 'nursery' | 'orchard',
): number {
  inRange('crownWidth', crownWidth, 0, 15, 'm');
  inRange('crownHeight', crownHeight, 0, 20, 'm');
  inRange('row', row, 0.3, 30, 'm');
  const gallonPerAcreFoot = crop === 'nursery' ? 10 : 40;
  const gallonPerAcre = US_GALLON / (43560 * FOOT * FOOT);
  return (gallonPerAcreFoot * (crownWidth / FOOT) * (crownHeight / FOOT) * gallonPerAcre) / (row / FOOT);
}

/**
 * Spray for one tree of a planting.
 *
 * @formula V = q S_row S_tree
 * @param dose dose on the ground area [m3/m2] 0..1
 * @param row spacing of the rows [m] 0.3..60
 * @param tree spacing in the row [m] 0.1..60
 * @returns volume a tree [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Penn State Extension: gallons a tree = gallons per acre / trees per acre.
 */
export function volumePerTree(dose: number, row: number, tree: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  inRange('row', row, 0.3, 60, 'm');
  inRange('tree', tree, 0.1, 60, 'm');
  return dose * row * tree;
}

/**
 * Volume of a single crown.
 *
 * @formula V = c D^2 H, c = pi/6 ellipsoid, pi/12 cone, pi/4 cylinder
 * @param diameter width of the crown [m] 0..40
 * @param height height of the crown, not of the tree [m] 0..60
 * @param shape its shape [one of ellipsoid, cone, cylinder]
 * @returns crown volume [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry.
 */
export function crownVolume(
  diameter: number,
  height: number,
  shape: 'ellipsoid' | 'cone' | 'cylinder',
): number {
  inRange('diameter', diameter, 0, 40, 'm');
  inRange('height', height, 0, 60, 'm');
  const share = { ellipsoid: 1 / 6, cone: 1 / 12, cylinder: 1 / 4 }[shape];
  return Math.PI * share * diameter * diameter * height;
}

/**
 * Spray that a single crown takes, carried over from orchard practice.
 *
 * @formula V = k V_crown
 * @param crown crown volume [m3] 0..100000
 * @param factor spray per volume of crown [m3/m3] 1e-6..1e-2
 * @returns volume a tree [m3]
 * @valid An estimate: no published table of gallons by height of shade tree was found. Start from 0.094e-3 to 0.134e-3.
 * @throws RangeError when a parameter is outside its range
 * @source Carried over from tree row volume (Landers, Cornell Univ.); judgement, not a published figure for shade trees.
 */
export function volumePerCrown(crown: number, factor: number): number {
  inRange('crown', crown, 0, 100000, 'm3');
  inRange('factor', factor, 1e-6, 1e-2, 'm3/m3');
  return crown * factor;
}
