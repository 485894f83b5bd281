import type { Dimension } from './dimension.ts';

/**
 * Every unit by itself; units such as lb/gal are put together from these.
 *
 * symbol, kind, whose habit it is, SI units in one of it (an exact product), spellings, offset.
 * An s may stand at the ~ of a spelling. Spellings are tried as typed first, then without regard to case.
 * Volume spellings marked with & also stand with "US" before or behind them.
 *
 * Sources: inch, foot, yard, mile, pound: international yard and pound agreement of 1959. US gallon 231 in3 and its parts,
 * US survey foot 1200/3937 m, acre 43560 ft2: NIST SP 811 (2008) appendix B and NIST Handbook 44 appendix C.
 * Imperial gallon 4.54609 L: UK Units of Measurement Regulations 1995. Standard gravity 9.80665 m/s2: 3rd CGPM 1901.
 * Conventional water 1000 kg/m3 and mercury 13595.1 kg/m3: NIST SP 811 B.8. Standard atmosphere 101325 Pa: 10th CGPM 1954.
 * Mechanical horsepower 550 ft lbf/s, metric horsepower 75 kgf m/s: NIST SP 811 B.8. Poise, stokes: CGS definitions.
 */
export type UnitRow = readonly [
  symbol: string,
  kind: Dimension,
  system: 'us' | 'metric' | 'any',
  factor: string,
  spellings: string,
  offset?: number,
];

export const UNIT_ROWS: readonly UnitRow[] = [
  ['m', 'length', 'metric', '1', 'metre~|meter~|mtr~'],
  ['mm', 'length', 'metric', '0.001', 'millimetre~|millimeter~|mm~'],
  ['cm', 'length', 'metric', '0.01', 'centimetre~|centimeter~|cm~'],
  ['km', 'length', 'metric', '1000', 'kilometre~|kilometer~'],
  ['µm', 'length', 'metric', '0.000001', 'um|micron~|micrometre~|micrometer~'],
  ['in', 'length', 'us', '0.0254', "inch|inches|ins|\"|''"],
  ['ft', 'length', 'us', '0.3048', "foot|feet|'"],
  ['yd', 'length', 'us', '0.9144', 'yard~|yd~'],
  ['mi', 'length', 'us', '1609.344', 'mile~|lane-mile~|lane mile~'],
  ['thou', 'length', 'us', '0.0000254', 'mil~'],
  [
    'ft US survey',
    'length',
    'us',
    '1200 / 3937',
    'US survey ft|US survey foot|US survey feet|survey foot|survey feet|survey ft',
  ],

  ['acre', 'area', 'us', '43560 * 0.3048^2', 'acre~|ac|international acre~|treated acre~'],
  ['acre US survey', 'area', 'us', '43560 * 1200^2 / 3937^2', 'US survey acre~|survey acre~|acre survey'],
  ['ha', 'area', 'metric', '10000', 'hectare~'],

  ['L', 'volume', 'metric', '0.001', 'l|ℓ|litre~|liter~|ltr~'],
  ['mL', 'volume', 'metric', '0.000001', 'ml|millilitre~|milliliter~'],
  ['cL', 'volume', 'metric', '0.00001', 'cl|centilitre~|centiliter~'],
  ['hL', 'volume', 'metric', '0.1', 'hl|hectolitre~|hectoliter~'],
  ['cc', 'volume', 'metric', '0.000001', 'ccm'],
  ['gal', 'volume', 'us', '231 * 0.0254^3', 'gal&|gals&|gallon&|gallons&|USG'],
  ['qt', 'volume', 'us', '231 * 0.0254^3 / 4', 'qt&|qts&|quart&|quarts&'],
  ['pt', 'volume', 'us', '231 * 0.0254^3 / 8', 'pt&|pts&|pint&|pints&'],
  [
    'fl oz',
    'volume',
    'us',
    '231 * 0.0254^3 / 128',
    'fl oz&|floz&|oz fl|fluid oz&|fluid ounce&|fluid ounces&|oz~|ounce~',
  ],
  ['cup', 'volume', 'us', '231 * 0.0254^3 / 16', 'cup&|cups&'],
  ['tbsp', 'volume', 'us', '231 * 0.0254^3 / 256', 'tablespoon&|tablespoons&'],
  ['tsp', 'volume', 'us', '231 * 0.0254^3 / 768', 'teaspoon&|teaspoons&'],
  ['bbl', 'volume', 'us', '42 * 231 * 0.0254^3', 'oil barrel~'],
  [
    'gal imp',
    'volume',
    'any',
    '0.00454609',
    'imp gal|imperial gal|UK gal|gal UK|gal imperial|imp gallon~|imperial gallon~|UK gallon~|gallon~ imp|gallon~ imperial|gallon~ UK|igal',
  ],
  [
    'qt imp',
    'volume',
    'any',
    '0.00454609 / 4',
    'imp qt|imp quart~|imperial quart~|UK qt|UK quart~|quart~ imp',
  ],
  ['pt imp', 'volume', 'any', '0.00454609 / 8', 'imp pt|imp pint~|imperial pint~|UK pt|UK pint~|pint~ imp'],
  [
    'fl oz imp',
    'volume',
    'any',
    '0.00454609 / 160',
    'imp fl oz|imperial fl oz|UK fl oz|imp fluid ounce~|imperial fluid ounce~|UK fluid ounce~|fl oz UK',
  ],

  ['s', 'time', 'any', '1', 'sec~|second~'],
  ['ms', 'time', 'any', '0.001', 'millisecond~'],
  ['min', 'time', 'any', '60', 'mins|minute~|mn'],
  ['h', 'time', 'any', '3600', 'hr~|hour~'],
  ['day', 'time', 'any', '86400', 'd|days'],
  ['week', 'time', 'any', '604800', 'wk~|weeks'],

  ['kg', 'mass', 'metric', '1', 'kg~|kilo~|kilogram~|kilogramme~'],
  ['g', 'mass', 'metric', '0.001', 'gm~|gram~|gramme~'],
  ['mg', 'mass', 'metric', '0.000001', 'milligram~'],
  ['µg', 'mass', 'metric', '0.000000001', 'ug|microgram~'],
  ['t', 'mass', 'metric', '1000', 'tonne~|metric ton~'],
  ['lb', 'mass', 'us', '0.45359237', 'lb~|lbm|pound~|#'],
  ['oz', 'mass', 'us', '0.45359237 / 16', 'oz~|ounce~|oz wt|oz av'],
  ['short ton', 'mass', 'us', '2000 * 0.45359237', 'short tons|US ton~|ton US'],
  ['long ton', 'mass', 'any', '2240 * 0.45359237', 'long tons|UK ton~|imp ton~'],
  ['slug', 'mass', 'us', '0.45359237 * 9.80665 / 0.3048', 'slugs'],

  ['N', 'force', 'metric', '1', 'newton~'],
  ['kN', 'force', 'metric', '1000', 'kilonewton~'],
  ['mN', 'force', 'metric', '0.001', 'millinewton~'],
  ['dyn', 'force', 'metric', '0.00001', 'dyne~'],
  ['kgf', 'force', 'metric', '9.80665', 'kilogram-force|kp'],
  ['lbf', 'force', 'us', '0.45359237 * 9.80665', 'lb~|pound~|lbs-force|pound-force|pounds-force|lb-f|#'],
  ['ozf', 'force', 'us', '0.45359237 * 9.80665 / 16', 'ounce-force'],
  ['kip', 'force', 'us', '1000 * 0.45359237 * 9.80665', 'kips'],

  ['Pa', 'pressure', 'metric', '1', 'pascal~'],
  ['hPa', 'pressure', 'metric', '100', 'hectopascal~'],
  ['kPa', 'pressure', 'metric', '1000', 'KPa|kilopascal~'],
  ['MPa', 'pressure', 'metric', '1000000', 'Mpa|megapascal~'],
  ['mPa', 'pressure', 'metric', '0.001', 'millipascal~'],
  ['GPa', 'pressure', 'metric', '1000000000', 'gigapascal~'],
  ['bar', 'pressure', 'metric', '100000', 'bars'],
  ['mbar', 'pressure', 'metric', '100', 'millibar~'],
  ['atm', 'pressure', 'any', '101325', 'atmosphere~'],
  ['at', 'pressure', 'metric', '98066.5', 'technical atmosphere~|kg/cm2'],
  ['psi', 'pressure', 'us', '0.45359237 * 9.80665 / 0.0254^2', 'psid|psi diff|#/in2'],
  ['ksi', 'pressure', 'us', '1000 * 0.45359237 * 9.80665 / 0.0254^2', ''],
  [
    'inHg',
    'pressure',
    'us',
    '0.0254 * 13595.1 * 9.80665',
    'in Hg|"Hg|in of Hg|inches Hg|inches of mercury|in mercury',
  ],
  ['mmHg', 'pressure', 'metric', '0.001 * 13595.1 * 9.80665', 'mm Hg|mm of mercury'],
  ['torr', 'pressure', 'any', '101325 / 760', ''],
  [
    'inH2O',
    'pressure',
    'us',
    '0.0254 * 1000 * 9.80665',
    'in H2O|"H2O|in wc|inwc|"wc|in of water|inches of water|in water|"WG|in wg',
  ],
  [
    'ftH2O',
    'pressure',
    'us',
    '0.3048 * 1000 * 9.80665',
    "ft H2O|ft wc|ftwc|ft of water|feet of water|ft water|'wc",
  ],
  [
    'mH2O',
    'pressure',
    'metric',
    '1000 * 9.80665',
    'm H2O|mwc|m wc|mws|m of water|metres of water|meters of water|m water',
  ],
  ['mmH2O', 'pressure', 'metric', '9.80665', 'mm H2O|mmwc|mm wc|mm of water'],
  ['cmH2O', 'pressure', 'metric', '98.0665', 'cm H2O|cmwc|cm wc|cm of water'],

  ['gpm', 'flow', 'us', '231 * 0.0254^3 / 60', 'US gpm|gpm US|USgpm'],
  ['gph', 'flow', 'us', '231 * 0.0254^3 / 3600', 'US gph|gph US'],
  ['gpd', 'flow', 'us', '231 * 0.0254^3 / 86400', 'US gpd'],
  ['gpm imp', 'flow', 'any', '0.00454609 / 60', 'imp gpm|imperial gpm|UK gpm|gpm UK|igpm'],
  ['gph imp', 'flow', 'any', '0.00454609 / 3600', 'imp gph|imperial gph|UK gph|igph'],
  ['lpm', 'flow', 'metric', '0.001 / 60', 'LPM'],
  ['lph', 'flow', 'metric', '0.001 / 3600', 'LPH'],
  ['cfm', 'flow', 'us', '0.3048^3 / 60', ''],
  ['cfs', 'flow', 'us', '0.3048^3', ''],

  ['mph', 'speed', 'us', '1609.344 / 3600', ''],
  ['kph', 'speed', 'metric', '1000 / 3600', 'kmh|kmph'],
  ['kn', 'speed', 'any', '1852 / 3600', 'kt~|knot~'],
  ['fpm', 'speed', 'us', '0.3048 / 60', ''],
  ['fps', 'speed', 'us', '0.3048', ''],
  ['gn', 'acceleration', 'any', '9.80665', 'g|gee~'],

  ['rad', 'angle', 'any', '1', 'radian~'],
  ['deg', 'angle', 'any', 'pi / 180', '°|degree~'],
  ['rev', 'angle', 'any', '2 * pi', 'revs|revolution~|turn~|r'],
  ['rpm', 'rotation', 'any', 'pi / 30', '1/min|/min|min-1|r.p.m|r.p.m.'],
  ['rps', 'rotation', 'any', '2 * pi', '1/s|/s|s-1'],
  ['Hz', 'rate', 'any', '1', 'hertz'],

  ['W', 'power', 'any', '1', 'watt~'],
  ['mW', 'power', 'any', '0.001', 'milliwatt~'],
  ['kW', 'power', 'any', '1000', 'KW|kilowatt~'],
  ['MW', 'power', 'any', '1000000', 'megawatt~'],
  ['hp', 'power', 'us', '550 * 0.3048 * 0.45359237 * 9.80665', 'horsepower|hp mechanical|mechanical hp|bhp'],
  ['hp metric', 'power', 'metric', '75 * 9.80665', 'metric hp|metric horsepower|PS|cv'],
  ['J', 'energy', 'any', '1', 'joule~'],
  ['kJ', 'energy', 'any', '1000', 'kilojoule~'],
  ['MJ', 'energy', 'any', '1000000', 'megajoule~'],
  ['Wh', 'energy', 'any', '3600', 'watt-hour~'],
  ['kWh', 'energy', 'any', '3600000', 'KWh|kilowatt-hour~'],

  ['K', 'temperature', 'any', '1', 'kelvin~'],
  ['°C', 'temperature', 'metric', '1', 'C|degC|deg C|degree~ C|celsius|° C|℃|deg. C', 273.15],
  ['°F', 'temperature', 'us', '5 / 9', 'F|degF|deg F|degree~ F|fahrenheit|° F|℉|deg. F', 459.67],
  ['°R', 'temperature', 'us', '5 / 9', 'degR|rankine'],
  ['K', 'temperatureDifference', 'any', '1', 'kelvin~'],
  ['°C', 'temperatureDifference', 'metric', '1', 'C|degC|deg C|degree~ C|celsius|° C|℃|C°'],
  ['°F', 'temperatureDifference', 'us', '5 / 9', 'F|degF|deg F|degree~ F|fahrenheit|° F|℉|F°'],

  ['P', 'viscosity', 'metric', '0.1', 'poise'],
  ['cP', 'viscosity', 'metric', '0.001', 'cp|cps|cPs|centipoise'],
  ['Pas', 'viscosity', 'metric', '1', ''],
  ['mPas', 'viscosity', 'metric', '0.001', ''],
  ['St', 'kinematicViscosity', 'metric', '0.0001', 'stokes'],
  ['cSt', 'kinematicViscosity', 'metric', '0.000001', 'centistokes|centistoke'],
  ['gpa', 'dose', 'us', '231 * 0.0254^3 / 43560 / 0.3048^2', 'GPA'],

  ['A', 'current', 'any', '1', 'amp~|ampere~'],
  ['mA', 'current', 'any', '0.001', 'milliamp~'],
  ['V', 'voltage', 'any', '1', 'volt~|VDC|V DC|Vdc'],
  ['mV', 'voltage', 'any', '0.001', 'millivolt~'],
  ['kV', 'voltage', 'any', '1000', 'kilovolt~'],
  ['Ah', 'charge', 'any', '3600', 'amp-hour~|amp hour~|amp-hr~|AH'],
  ['mAh', 'charge', 'any', '3.6', ''],
  ['C', 'charge', 'any', '1', 'coulomb~'],
  ['Ω', 'resistance', 'any', '1', 'ohm~'],
  ['mΩ', 'resistance', 'any', '0.001', 'mohm~|milliohm~'],
  ['kΩ', 'resistance', 'any', '1000', 'kohm~|kilohm~'],
  ['Nm', 'torque', 'metric', '1', ''],

  ['%', 'ratio', 'any', '0.01', 'percent|per cent|pct'],
  ['‰', 'ratio', 'any', '0.001', 'permille|per mille'],
  ['ppm', 'ratio', 'any', '0.000001', ''],
];

/** What people write behind a figure that is no unit, or none where one of the dimensions is meant, and what to say to it. */
export const NOT_UNITS: readonly {
  readonly text: RegExp;
  readonly where: readonly Dimension[];
  readonly why: string;
}[] = [
  { text: /^(awg|ga|gauge|swg)$/i, where: [], why: 'a wire gauge is not a length, give the diameter' },
  { text: /^mesh$/i, where: [], why: 'a mesh count is not a length, give the opening in micron' },
  {
    text: /^(ssu|sus|saybolt.*)$/i,
    where: [],
    why: 'Saybolt seconds are not proportional to viscosity, give cSt',
  },
  { text: /^tons?$/i, where: [], why: "a ton may be short, long or metric, write 'short ton' or 't'" },
  { text: /^(sg|specific gravity)$/i, where: [], why: 'a specific gravity has no unit, give a density' },
  {
    text: /^(deg|degrees?|°)$/i,
    where: ['temperature', 'temperatureDifference'],
    why: "degrees of temperature must say 'F' or 'C'",
  },
  { text: /^(kg|kgs|g)$/i, where: ['force'], why: "a force in kilograms is written 'kgf'" },
];
