import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Where the work is that a caution belongs to: it is shown once, there. */
export type CautionPlace =
  | 'spraying'
  | 'plumbing'
  | 'drive'
  | 'mixing'
  | 'towing'
  | 'lifting'
  | 'roof'
  | 'electrics'
  | 'storage'
  | 'filling';

/** Facts of a rig that cautions hang on. A fact left out is unknown and never taken as harmless. */
export interface CautionFacts {
  /** Highest pressure anywhere on the rig [Pa]. */
  readonly pressure?: number;
  readonly pto?: boolean;
  readonly engine?: boolean;
  readonly hypochlorite?: boolean;
  readonly acid?: boolean;
  /** Ammonium, urea-ammonium nitrate, thiosulfate or ammonia cleaners. */
  readonly ammonium?: boolean;
  readonly pesticide?: boolean;
  readonly corrosive?: boolean;
  readonly towed?: boolean;
  readonly liftedOnHitch?: boolean;
  readonly leadAcid?: boolean;
  readonly roofWork?: boolean;
  readonly highJet?: boolean;
  readonly filledFromMains?: boolean;
  /** Mass of the rig full [kg]. */
  readonly mass?: number;
  /** Lowest temperature it is kept at [K]. */
  readonly coldest?: number;
  readonly sprayedOutdoors?: boolean;
}

/** The cause of a caution: a fact that is true, or one that goes beyond a value. */
export type CautionCause =
  | { readonly all: readonly BooleanFact[] }
  | {
      readonly fact: 'pressure' | 'mass';
      readonly from: number;
      readonly unit: string;
      /** Counts only when this is true as well. */
      readonly and?: BooleanFact;
    }
  | { readonly fact: 'coldest'; readonly below: number; readonly unit: string };

export type BooleanFact = {
  [K in keyof CautionFacts]-?: NonNullable<CautionFacts[K]> extends boolean ? K : never;
}[keyof CautionFacts];

export interface Caution {
  readonly id: string;
  readonly place: CautionPlace;
  readonly cause: CautionCause;
  /** What can happen. */
  readonly danger: string;
  /** What to do. */
  readonly act: string;
  readonly origin: TableOrigin;
}

const origin = (
  place: string,
  edition: string,
  source: string,
  evidence: TableOrigin['evidence'] = 'seen',
  date = 'unknown',
): TableOrigin => ({ place, edition, date, source, evidence, checkedBy: NOT_CHECKED });

const injection = origin(
  'United Kingdom (guidance)',
  'HSE FOD 4-2014',
  'HSE FOD 4-2014: serious cases above 100 bar, possible from about 7 bar',
  'seen',
  '2014',
);
const bleach = origin(
  'Washington, United States (guidance)',
  'dangers of mixing bleach',
  'Washington State Department of Health',
);
const judgement = (what: string) =>
  origin('any', 'common practice', `${what}: common practice, no source`, 'memory');

export const CAUTIONS: readonly Caution[] = [
  {
    id: 'injection',
    place: 'plumbing',
    cause: { fact: 'pressure', from: 7e5, unit: 'Pa' },
    danger:
      'A jet or pinhole leak at this pressure can drive liquid through the skin; the wound looks small and is an emergency.',
    act: 'Let the pressure off and lock the trigger before opening a joint. Look for leaks with a card, never with a hand. If it happens go to a hospital at once and say what the liquid was.',
    origin: injection,
  },
  {
    id: 'injection-serious',
    place: 'spraying',
    cause: { fact: 'pressure', from: 1e7, unit: 'Pa' },
    danger: 'This pressure is in the range in which serious injection injuries are on record.',
    act: 'Two hands on the gun, nobody in front of it, trigger guard fitted, hose with a burst rating of its own.',
    origin: injection,
  },
  {
    id: 'pto-shaft',
    place: 'drive',
    cause: { all: ['pto'] },
    danger: 'A turning shaft winds in sleeves and laces faster than a person can react.',
    act: 'Run it only with the shields of tractor, shaft and pump in place. Stop the tractor and take the key before going near.',
    origin: origin(
      'United States',
      '29 CFR 1928.57',
      '29 CFR 1928.57, guarding of power take-off shafts',
      'seen',
      '1976',
    ),
  },
  {
    id: 'engine-fumes',
    place: 'drive',
    cause: { all: ['engine'] },
    danger: 'Exhaust gas kills in closed rooms, and hot parts light fuel.',
    act: 'Run it outdoors only. Stop it and let it cool before filling up.',
    origin: judgement('small engines'),
  },
  {
    id: 'chlorine-gas',
    place: 'mixing',
    cause: { all: ['hypochlorite', 'acid'] },
    danger: 'Bleach and acid make chlorine gas, also from what is left of one in the hose.',
    act: 'Never carry both in the same lines without a recorded rinse with water between them.',
    origin: bleach,
  },
  {
    id: 'chloramine',
    place: 'mixing',
    cause: { all: ['hypochlorite', 'ammonium'] },
    danger: 'Bleach and ammonium or ammonia make poisonous chloramines.',
    act: 'Never carry both in the same lines without a recorded rinse with water between them.',
    origin: bleach,
  },
  {
    id: 'bleach-alone',
    place: 'mixing',
    cause: { all: ['hypochlorite'] },
    danger:
      'Bleach burns eyes and skin, gives off gas with acids and ammonium, and builds pressure in closed vessels.',
    act: 'Goggles, gloves and eyewash on the rig. Vent every vessel. Rinse with water the same day and mix with nothing else.',
    origin: bleach,
  },
  {
    id: 'corrosive',
    place: 'mixing',
    cause: { all: ['corrosive'] },
    danger: 'The liquid burns eyes and skin.',
    act: 'Goggles, gloves and apron; eyewash for 15 minutes (6 gal) within reach. Add the chemical to water, never the reverse.',
    origin: origin(
      'Washington, United States',
      'WAC 296-800-15030',
      'WAC 296-800-15030: 0.4 gal/min for 15 min',
    ),
  },
  {
    id: 'exposure',
    place: 'spraying',
    cause: { all: ['pesticide'] },
    danger: 'Pesticide gets into the body through skin, eyes and lungs, most of all while mixing.',
    act: 'The label rules: protective clothing, rate, wind, buffer, re-entry. Carry 10 gal of clean water for one worker, 20 for more, where there is no running water.',
    origin: origin(
      'Washington, United States',
      'WAC 296-307-13050',
      'WAC 296-307-13050, emergency water at mixing sites',
    ),
  },
  {
    id: 'keep-out',
    place: 'spraying',
    cause: { all: ['pesticide', 'sprayedOutdoors'] },
    danger: 'People near the outlet are sprayed or breathe the drift.',
    act: 'Stop when anyone comes into the exclusion zone: its distance follows from the droplet class and the height of the outlet.',
    origin: origin(
      'United States',
      '40 CFR 170.405 as amended by 89 FR 80767',
      '40 CFR 170.405(a)',
      'seen',
      '2024-12-03',
    ),
  },
  {
    id: 'high-jet',
    place: 'spraying',
    cause: { all: ['highJet'] },
    danger:
      'A high jet drifts and falls where nobody planned, its drift is covered by no published curve, and it carries current from a power line.',
    act: 'Keep people, cars and water clear downwind. Never point it near overhead lines.',
    origin: judgement('high jets'),
  },
  {
    id: 'backflow',
    place: 'filling',
    cause: { all: ['filledFromMains'] },
    danger: 'A drop of mains pressure sucks the mix back into drinking water.',
    act: 'Fill over an air gap of twice the bore, at least 1 in, or through an approved reduced-pressure assembly.',
    origin: origin(
      'New York, United States',
      'DSHM-PES-05-09',
      'New York State Department of Environmental Conservation, DSHM-PES-05-09',
    ),
  },
  {
    id: 'towing',
    place: 'towing',
    cause: { all: ['towed'] },
    danger:
      'A half-full tank shifts its load; too little tongue load makes the trailer sway, too much takes weight off the steering.',
    act: 'Stay within the ratings of vehicle, coupler and tyres at every level. Chains crossed, brakes and lamps as the law of the place asks. Tow empty or full where you can.',
    origin: judgement('towing'),
  },
  {
    id: 'heavy-towing',
    place: 'towing',
    cause: { fact: 'mass', from: 1360, unit: 'kg', and: 'towed' },
    danger: 'From about 3000 lb many places ask for brakes on a trailer.',
    act: 'Look up the rule of the place before it goes on the road.',
    origin: origin(
      'United States',
      '49 CFR 393.42',
      '49 CFR 393.42: trailers of 3000 lb or less exempt under conditions',
      'memory',
    ),
  },
  {
    id: 'lifting',
    place: 'lifting',
    cause: { all: ['liftedOnHitch'] },
    danger:
      'A rig on the three-point hitch takes the load off the front axle and can rear the tractor up or crush who stands between.',
    act: 'Check the front axle share with the tank full. Lower it to the ground before leaving the seat. Nobody between rig and tractor.',
    origin: judgement('three-point hitches'),
  },
  {
    id: 'sling',
    place: 'lifting',
    cause: { fact: 'mass', from: 25, unit: 'kg' },
    danger: 'Too heavy to be lifted by hand alone.',
    act: 'Empty the tank first; lift by the marked points or with a fork, never by the pump or the reel.',
    origin: origin(
      'any',
      'ISO 11228-1 reference mass as recalled',
      'ISO 11228-1, 25 kg; from memory',
      'memory',
    ),
  },
  {
    id: 'battery',
    place: 'electrics',
    cause: { all: ['leadAcid'] },
    danger: 'A charging battery gives off explosive gas, and a short melts tools.',
    act: 'Fuse at the battery, terminals covered, box vented, no flame near.',
    origin: judgement('batteries'),
  },
  {
    id: 'roof',
    place: 'roof',
    cause: { all: ['roofWork'] },
    danger: 'Wet roofs are slippery, and the push of a gun throws people off ladders.',
    act: 'Spray from the ground. Where that cannot be, use fall protection, and never spray from a ladder.',
    origin: judgement('roof work'),
  },
  {
    id: 'frost',
    place: 'storage',
    cause: { fact: 'coldest', below: 273.15, unit: 'K' },
    danger: 'Water left in pump, valves and hose bursts them.',
    act: 'Drain, then fill with antifreeze that protects after the water left behind has thinned it.',
    origin: origin('United States (guidance)', 'PPP-121', 'Purdue PPP-121, winterising'),
  },
];
