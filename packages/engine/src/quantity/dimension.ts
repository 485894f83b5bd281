/** The kinds of quantity the program speaks of. Inside it every one is a plain number in the SI unit given below. */
export type Dimension = keyof typeof DIMENSION_TABLE;

/** How a dimension is spoken of and what its units are made of. */
export interface DimensionFacts {
  /** With its article, for messages: "a length". */
  readonly phrase: string;
  /** Something a person could type. */
  readonly example: string;
  /** The unit of the plain number inside the program. */
  readonly si: string;
  /**
   * What a unit of it may be made of: a kind by itself, or kinds multiplied and divided. Written out one by one
   * rather than by powers of metre and second, because gal/acre is no length and ft lbf as energy is no torque.
   */
  readonly made: readonly string[];
}

const DIMENSION_TABLE = {
  length: facts('a length', '12 ft', 'm', 'length'),
  area: facts('an area', '400 ft2', 'm2', 'area'),
  volume: facts('a volume', '300 gal', 'm3', 'volume'),
  secondMoment: facts('a second moment of area', '3.2 in4', 'm4', 'length4'),
  time: facts('a time', '20 min', 's', 'time'),
  mass: facts('a mass', '120 lb', 'kg', 'mass'),
  force: facts('a force', '45 lbf', 'N', 'force'),
  pressure: facts('a gauge pressure', '45 psi', 'Pa', 'pressure', 'force/area'),
  absolutePressure: facts('an absolute pressure', '14.7 psia', 'Pa', 'pressure', 'force/area'),
  stress: facts('a stress', '36 ksi', 'Pa', 'pressure', 'force/area'),
  flow: facts('a flow', '12 gpm', 'm3/s', 'flow', 'volume/time'),
  massFlow: facts('a mass flow', '50 lb/min', 'kg/s', 'mass/time'),
  speed: facts('a speed', '4 mph', 'm/s', 'speed', 'length/time'),
  acceleration: facts('an acceleration', '9.8 m/s2', 'm/s2', 'acceleration', 'length/time2', 'speed/time'),
  rotation: facts('a speed of rotation', '540 rpm', 'rad/s', 'rotation', 'angle/time'),
  rate: facts('a rate', '3 /min', '1/s', 'rate', '1/time', 'ratio/time'),
  power: facts('a power', '5.5 hp', 'W', 'power', 'energy/time', 'force*length/time', 'current*voltage'),
  energy: facts('an energy', '2 kWh', 'J', 'energy', 'power*time', 'force*length'),
  torque: facts('a torque', '25 lbf.ft', 'N.m', 'torque', 'force*length'),
  temperature: facts('a temperature', '70 F', 'K', 'temperature'),
  temperatureDifference: facts('a difference of temperature', '10 F', 'K', 'temperatureDifference'),
  density: facts('a density', '8.3 lb/gal', 'kg/m3', 'density', 'mass/volume'),
  viscosity: facts(
    'a dynamic viscosity',
    '1.2 cP',
    'Pa.s',
    'viscosity',
    'pressure*time',
    'force*time/area',
    'mass/length*time',
  ),
  kinematicViscosity: facts('a kinematic viscosity', '1.2 cSt', 'm2/s', 'kinematicViscosity', 'area/time'),
  surfaceTension: facts('a surface tension', '72 mN/m', 'N/m', 'force/length'),
  angle: facts('an angle', '45 deg', 'rad', 'angle'),
  current: facts('a current', '12 A', 'A', 'current'),
  voltage: facts('a voltage', '12 V', 'V', 'voltage'),
  charge: facts('an electric charge', '75 Ah', 'A.s', 'charge', 'current*time'),
  resistance: facts('a resistance', '0.02 ohm', 'ohm', 'resistance', 'voltage/current'),
  resistancePerLength: facts('a resistance by length', '1.6 ohm/1000 ft', 'ohm/m', 'resistance/length'),
  massPerLength: facts('a mass by length', '0.4 lb/ft', 'kg/m', 'mass/length'),
  massPerArea: facts('a mass by area', '2 lb/acre', 'kg/m2', 'mass/area'),
  forcePerLength: facts('a force by length', '40 lbf/in', 'N/m', 'force/length'),
  pressurePerLength: facts('a pressure by length', '6 psi/100 ft', 'Pa/m', 'pressure/length'),
  volumePerLength: facts('a volume by length', '300 gal/mi', 'm3/m', 'volume/length'),
  inertia: facts('a moment of inertia', '2 kg.m2', 'kg.m2', 'area*mass'),
  ratio: facts('a ratio', '60 %', '1', 'ratio', 'volume/volume', 'mass/mass', 'length/length'),
  displacement: facts('a displacement', '2.5 in3/rev', 'm3/rad', 'volume/angle'),
  dose: facts('a volume by area', '20 gal/acre', 'm3/m2', 'dose', 'volume/area'),
  areaRate: facts('an area by time', '10 acre/h', 'm2/s', 'area/time', 'length*speed'),
  specificFuel: facts('a fuel mass by energy', '0.5 lb/hp.h', 'kg/J', 'mass/power*time', 'mass/energy'),
} as const;

export const DIMENSIONS: Readonly<Record<Dimension, DimensionFacts>> = DIMENSION_TABLE;

function facts(phrase: string, example: string, si: string, ...made: string[]): DimensionFacts {
  return { phrase, example, si, made };
}
