import type { UnitSystem } from '../quantity/index.ts';

const GALLON = 231 * 0.0254 ** 3;
const LITRE = 1e-3;

/** What a yard has to catch water in, small to large: jug, pail, drum, tote [m3]. */
const VESSELS: Readonly<Record<UnitSystem, readonly number[]>> = {
  us: [0.25 * GALLON, GALLON, 5 * GALLON, 55 * GALLON, 275 * GALLON],
  metric: [LITRE, 5 * LITRE, 20 * LITRE, 200 * LITRE, 1000 * LITRE],
};

/** Shortest time that a hand on the clock measures to 2 % [s]. */
const LEAST_TIME = 15;

/** The smallest vessel that a flow [m3/s] does not fill too fast for the clock [m3]. */
export function bucketFor(flow: number, units: UnitSystem): number {
  const vessels = VESSELS[units];
  return vessels.find((v) => v / flow >= LEAST_TIME) ?? vessels[vessels.length - 1]!;
}
