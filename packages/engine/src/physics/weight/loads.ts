import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';

const MAX_MASS = 1e6;
const MAX_PLACE = 100;

/**
 * Centre of mass of several masses.
 *
 * @formula x = Σ m x / Σ m
 * @param masses masses [list of kg] 0..1e6
 * @param places coordinate of each mass along one axis [list of m] -100..100
 * @result mass total mass [kg]
 * @result place coordinate of the centre of mass; 0 when there is no mass [m]
 * @throws RangeError when a value is outside its range or the lists differ in length
 * @source Definition
 */
export function centreOfMass(
  masses: readonly number[],
  places: readonly number[],
): { mass: number; place: number } {
  checkMasses(masses, places);
  let mass = 0;
  let moment = 0;
  masses.forEach((m, i) => {
    mass += m;
    moment += m * places[i]!;
  });
  return { mass, place: mass > 0 ? moment / mass : 0 };
}

/**
 * Mass that a volume of liquid adds.
 *
 * @formula m = ρ V
 * @param volume volume of liquid [m3] 0..1e4
 * @param density density of the liquid [kg/m3] 500..3000
 * @returns mass [kg]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; water is 8.33 lb/gal at 20 °C, so 1000 gal is 8340 lb, not 8000
 */
export function liquidMass(volume: number, density: number): number {
  inRange('volume', volume, 0, 1e4, 'm3');
  inRange('density', density, 500, 3000, 'kg/m3');
  return volume * density;
}

/**
 * Load on each of two supports under several masses, as a scale would read it.
 *
 * @formula rear = Σ m (x - x_f)/(x_r - x_f); front = Σ m (x_r - x)/(x_r - x_f)
 * @param masses masses [list of kg] 0..1e6
 * @param places place of each mass along the rig [list of m] -100..100
 * @param front place of the front support [m] -100..100
 * @param rear place of the rear support [m] -100..100
 * @result front load on the front support [kg]
 * @result rear load on the rear support [kg]
 * @valid level ground, the rig at rest; a negative load means that support lifts. Serves axle pairs, coupler and axle, jack and axle, wagon axles
 * @throws RangeError when a value is outside its range or the lists differ in length
 * @source Statics
 */
export function twoSupportLoads(
  masses: readonly number[],
  places: readonly number[],
  front: number,
  rear: number,
): TwoSupportLoads {
  inRange('front', front, -MAX_PLACE, MAX_PLACE, 'm');
  inRange('rear', rear, -MAX_PLACE, MAX_PLACE, 'm');
  if (Math.abs(rear - front) < 0.01)
    throw new RangeError(`rear is ${rear} m; it must be at least 0.01 m away from front: ${front} m`);
  const { mass, place } = centreOfMass(masses, places);
  const atRear = (mass * (place - front)) / (rear - front);
  return { front: mass - atRear, rear: atRear };
}

export interface TwoSupportLoads {
  readonly front: number;
  readonly rear: number;
}

/**
 * Load on the wheels of both sides of an axle group that stands across a slope.
 *
 * @formula low side = m (1/2 cos t + (h/T) sin t); high side = m (1/2 cos t - (h/T) sin t)
 * @param load mass carried by the axle group [kg] 0..1e6
 * @param centreHeight height of its centre of mass above the ground [m] 0..20
 * @param track distance between the wheels' middles [m] 0.1..10
 * @param slope angle of the side slope [rad] 0..1.2
 * @result lowSide load on the downhill wheels, square to the ground [kg]
 * @result highSide load on the uphill wheels; negative when they lift [kg]
 * @valid rigid suspension and tyres; put round-tank liquid at the tank's axis
 * @throws RangeError when a parameter is outside its range
 * @source Statics
 */
export function sideSlopeWheelLoads(
  load: number,
  centreHeight: number,
  track: number,
  slope: number,
): SideLoads {
  inRange('load', load, 0, MAX_MASS, 'kg');
  inRange('centreHeight', centreHeight, 0, 20, 'm');
  inRange('track', track, 0.1, 10, 'm');
  inRange('slope', slope, 0, 1.2, 'rad');
  const half = (load * Math.cos(slope)) / 2;
  const shift = (load * centreHeight * Math.sin(slope)) / track;
  return { lowSide: half + shift, highSide: half - shift };
}

export interface SideLoads {
  readonly lowSide: number;
  readonly highSide: number;
}

function checkMasses(masses: readonly number[], places: readonly number[]): void {
  sameLength('masses', masses, 'places', places);
  listInRange('masses', masses, 0, MAX_MASS, 'kg');
  listInRange('places', places, -MAX_PLACE, MAX_PLACE, 'm');
}
