import { STANDARD_GRAVITY, inRange } from '../physics/index.ts';

/** Particle Reynolds number above which Stokes' law no longer holds. */
const STOKES_LIMIT = 0.5;

/**
 * Speed at which a particle sinks in still liquid.
 *
 * @formula v = g (ρ_p - ρ) d² / (18 μ)
 * @param diameter diameter of the particle [m] 1e-8..1e-3
 * @param particleDensity density of the particle [kg/m3] 500..10000
 * @param density density of the liquid [kg/m3] 500..3000
 * @param viscosity dynamic viscosity of the liquid [Pa.s] 1e-5..100
 * @returns speed downwards; negative when it rises [m/s]
 * @valid single round particles with a Reynolds number under 0.5; above it refuses
 * @throws RangeError when a parameter is outside its range or the particle sinks too fast for the law
 * @source Stokes' law, fluid mechanics texts
 */
export function settlingSpeedStokes(
  diameter: number,
  particleDensity: number,
  density: number,
  viscosity: number,
): number {
  inRange('diameter', diameter, 1e-8, 1e-3, 'm');
  inRange('particleDensity', particleDensity, 500, 10000, 'kg/m3');
  inRange('density', density, 500, 3000, 'kg/m3');
  inRange('viscosity', viscosity, 1e-5, 100, 'Pa.s');
  const speed = (STANDARD_GRAVITY * (particleDensity - density) * diameter ** 2) / (18 * viscosity);
  inRange(
    'Reynolds number of the particle',
    (Math.abs(speed) * diameter * density) / viscosity,
    0,
    STOKES_LIMIT,
  );
  return speed;
}

/**
 * Time in which a particle sinks from the surface to the bottom of a parked tank.
 *
 * @formula t = h / v
 * @param depth depth of the liquid [m] 0..10
 * @param speed settling speed [m/s] 1e-12..1
 * @returns time [s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition
 */
export function settlingTime(depth: number, speed: number): number {
  inRange('depth', depth, 0, 10, 'm');
  inRange('speed', speed, 1e-12, 1, 'm/s');
  return depth / speed;
}
