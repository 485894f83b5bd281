import { inRange } from '../in-range.ts';

/**
 * Share of road dust that watering holds down on the average.
 *
 * @formula C% = 100 - 0.8 p d t / i
 * @param evaporation potential daytime evaporation, depth in a time [m/s] 0..1e-6
 * @param traffic vehicles in a time [1/s] 0..1
 * @param interval time between two waterings [s] 0..1e6
 * @param water water laid on each time [m3/m2] 1e-5..0.1
 * @returns control share, 0 when the road dries out between [-]
 * @valid Published for p in mm/h, d in vehicles/h, t in h and i in L/m2; falls to 0 and never below.
 * @throws RangeError when a parameter is outside its range
 * @source Cowherd et al. 1988, EPA-450/3-88-008; from memory.
 */
export function wateringControl(
  evaporation: number,
  traffic: number,
  interval: number,
  water: number,
): number {
  inRange('evaporation', evaporation, 0, 1e-6, 'm/s');
  inRange('traffic', traffic, 0, 1, '1/s');
  inRange('interval', interval, 0, 1e6, 's');
  inRange('water', water, 1e-5, 0.1, 'm3/m2');
  const p = evaporation * 3.6e6;
  const d = traffic * 3600;
  const t = interval / 3600;
  const i = water * 1000;
  return Math.max(0, 1 - (0.8 * p * d * t) / i / 100);
}

/**
 * Passes needed to lay a dose with a pump that cannot give it in one.
 *
 * @formula n = ceil(q v w / Q)
 * @param dose volume per area to lay in all [m3/m2] 0..1
 * @param speed speed on the road [m/s] 0..40
 * @param width width sprayed [m] 0..20
 * @param flow flow the rig can give the bar [m3/s] 1e-6..1
 * @returns passes, at least one [-]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function passesForDose(dose: number, speed: number, width: number, flow: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  inRange('speed', speed, 0, 40, 'm/s');
  inRange('width', width, 0, 20, 'm');
  inRange('flow', flow, 1e-6, 1, 'm3/s');
  // A hair of slack, so that a pump that gives exactly the flow is not sent round twice by rounding.
  return Math.max(1, Math.ceil((dose * speed * width) / flow - 1e-9));
}
