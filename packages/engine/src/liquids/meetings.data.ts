import type { LiquidId, LiquidGroup } from './liquid.ts';
import type { MaterialId } from './materials.data.ts';
import type { SourceId } from './sources.data.ts';

/** Things that are no liquid or material of ours but that rules speak of. */
export type OtherSubstance =
  | 'ammonium sulfate'
  | 'ammonia cleaner'
  | 'calcium nitrate'
  | 'hard water'
  | 'sulfate solution'
  | 'zinc'
  | 'galvanised steel'
  | 'acid';

/** One side of a meeting. */
export interface Side {
  readonly liquids?: readonly LiquidId[];
  readonly groups?: readonly LiquidGroup[];
  readonly materials?: readonly MaterialId[];
  readonly others?: readonly OtherSubstance[];
}

/** Two things that must not meet in a rig. */
export interface Meeting {
  readonly a: Side;
  readonly b: Side;
  /** Only where one of these metals is wetted too. */
  readonly inMaterials?: readonly MaterialId[];
  readonly severity: 'never' | 'avoid';
  readonly result: string;
  readonly sources: readonly SourceId[];
  readonly seen: boolean;
  readonly note: string;
}

const BLEACH: Side = { groups: ['bleach'] };
const ALUMINIUM = ['al_5052', 'al_6061'] as const;

export const MEETINGS: readonly Meeting[] = [
  {
    a: BLEACH,
    b: { groups: ['acid', 'acidic'], others: ['acid'] },
    severity: 'never',
    result: 'chlorine gas',
    sources: ['WADOH'],
    seen: true,
    note: 'any acid, and acidic herbicide or fertiliser below pH 7',
  },
  {
    a: BLEACH,
    b: { liquids: ['uan', 'app_10_34_0', 'ats'], others: ['ammonium sulfate', 'ammonia cleaner'] },
    severity: 'never',
    result: 'chloramines, nitrogen trichloride',
    sources: ['WADOH'],
    seen: true,
    note: '',
  },
  {
    a: BLEACH,
    b: { groups: ['thiosulfate'] },
    severity: 'never',
    result: 'hot, fast reaction; acid and sulfur products',
    sources: ['ATS_USCG', 'TEXTBOOK'],
    seen: false,
    note: 'thiosulfate neutralises only well-diluted rinse water',
  },
  {
    a: BLEACH,
    b: { liquids: ['pg', 'hort_oil', 'lignosulfonate', 'quat'] },
    severity: 'never',
    result: 'heat and loss of strength; oxidised organics',
    sources: ['TEXTBOOK'],
    seen: false,
    note: 'includes winterising fluid left in the pump',
  },
  {
    a: BLEACH,
    b: {
      liquids: ['copper_sulfate', 'copper_suspension'],
      materials: ['brass', 'ni_iron', 'iron_nib', 'steel'],
    },
    severity: 'never',
    result: 'catalysed oxygen release and pressure',
    sources: ['CHURCH_1994', 'CI96'],
    seen: true,
    note: '',
  },
  {
    a: BLEACH,
    b: { materials: ALUMINIUM },
    severity: 'never',
    result: 'hydrogen and fast corrosion',
    sources: ['WATER_HDBK_AL', 'TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { groups: ['thiosulfate'] },
    b: { groups: ['acid'], others: ['acid'] },
    severity: 'never',
    result: 'sulfur dioxide and sulfur sludge',
    sources: ['KTS_INC', 'TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { liquids: ['glyphosate_mix'] },
    b: { materials: ['steel'], others: ['galvanised steel'] },
    severity: 'never',
    result: 'hydrogen: explosion',
    sources: ['EPA_GLY'],
    seen: true,
    note: 'unlined steel and galvanised steel',
  },
  {
    a: { groups: ['caustic'] },
    b: { materials: ['al_5052', 'al_6061', 'al_anod'], others: ['zinc'] },
    severity: 'never',
    result: 'hydrogen and dissolution',
    sources: ['WATER_HDBK_AL'],
    seen: true,
    note: '',
  },
  {
    a: { groups: ['caustic'] },
    b: { liquids: ['uan', 'app_10_34_0', 'ats'] },
    severity: 'never',
    result: 'ammonia gas',
    sources: ['TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { groups: ['caustic'] },
    b: { groups: ['acid'], others: ['acid'] },
    severity: 'never',
    result: 'violent heat',
    sources: ['TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { groups: ['acid'] },
    b: { materials: ['steel', 'al_5052', 'al_6061', 'al_anod'], others: ['zinc', 'galvanised steel'] },
    severity: 'avoid',
    result: 'hydrogen',
    sources: ['SULFAMIC_REV'],
    seen: true,
    note: '',
  },
  {
    a: { liquids: ['uan'] },
    b: { others: ['calcium nitrate'] },
    severity: 'avoid',
    result: 'milky precipitate',
    sources: ['UNIDO_1998'],
    seen: true,
    note: '',
  },
  {
    a: { liquids: ['app_10_34_0'] },
    b: { liquids: ['cacl2_brine', 'mgcl2_brine'], others: ['hard water'] },
    severity: 'avoid',
    result: 'phosphate precipitate',
    sources: ['TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { liquids: ['cacl2_brine'] },
    b: { liquids: ['copper_sulfate'], others: ['sulfate solution', 'ammonium sulfate'] },
    severity: 'avoid',
    result: 'gypsum precipitate',
    sources: ['TEXTBOOK'],
    seen: false,
    note: '',
  },
  {
    a: { liquids: ['uan'] },
    b: { liquids: ['app_10_34_0'] },
    inMaterials: ALUMINIUM,
    severity: 'avoid',
    result: 'local acid attack on aluminium',
    sources: ['NACE_1968'],
    seen: true,
    note: 'residue of 10-34-0 in aluminium',
  },
];
