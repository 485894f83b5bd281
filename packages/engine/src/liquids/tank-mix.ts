import { oneOfChoices } from '../physics/index.ts';
import type { SourceId } from './sources.data.ts';

/** Forms in which products for the tank are sold, in the order they go in. */
export const FORMULATIONS = [
  'compatibility agent',
  'defoamer',
  'water conditioner',
  'water-soluble packet',
  'wettable powder',
  'dry flowable',
  'water-dispersible granule',
  'microcapsule',
  'suspension concentrate',
  'emulsifiable concentrate',
  'soluble liquid',
  'surfactant',
  'oil',
] as const;

export type Formulation = (typeof FORMULATIONS)[number];

export interface TankMixPartner {
  readonly name: string;
  readonly formulation: Formulation;
}

export interface TankMixStep {
  readonly text: string;
  /** Names of the partners that go in at this step. */
  readonly partners: readonly string[];
}

export interface TankMixOrder {
  readonly steps: readonly TankMixStep[];
  /** Disputes and limits that a person must know. */
  readonly notes: readonly string[];
  readonly sources: readonly SourceId[];
}

const GROUPS: readonly { readonly text: string; readonly forms: readonly Formulation[] }[] = [
  { text: 'Compatibility agent or defoamer', forms: ['compatibility agent', 'defoamer'] },
  { text: 'Ammonium sulfate or other water conditioner', forms: ['water conditioner'] },
  { text: 'Water-soluble packets: wait until they are gone', forms: ['water-soluble packet'] },
  {
    text: 'Wettable powders, dry flowables, water-dispersible granules: keep agitating until dispersed',
    forms: ['wettable powder', 'dry flowable', 'water-dispersible granule'],
  },
  { text: 'Microcapsules and suspension concentrates', forms: ['microcapsule', 'suspension concentrate'] },
  { text: 'Emulsifiable concentrates', forms: ['emulsifiable concentrate'] },
  { text: 'Soluble liquids (true solutions)', forms: ['soluble liquid'] },
  { text: 'Surfactants and oils', forms: ['surfactant', 'oil'] },
];

/** Products that count as partners of a mix; helpers of the tank do not. */
const MOST_PARTNERS = 3;
const HELPERS: readonly Formulation[] = [
  'compatibility agent',
  'defoamer',
  'water conditioner',
  'surfactant',
  'oil',
];

/**
 * In which order the partners of a tank mix go in.
 *
 * @throws RangeError naming a formulation that is not in the list.
 */
export function tankMixOrder(partners: readonly TankMixPartner[]): TankMixOrder {
  partners.forEach((p, i) => oneOfChoices(`partners[${i}].formulation`, p.formulation, FORMULATIONS));
  const steps: TankMixStep[] = [
    { text: 'Clean tank, half to three-quarters full of carrier, agitator on', partners: [] },
  ];
  for (const group of GROUPS) {
    const names = group.forms.flatMap((form) =>
      partners.filter((p) => p.formulation === form).map((p) => p.name),
    );
    if (names.length > 0) steps.push({ text: group.text, partners: names });
  }
  steps.push({ text: 'Top up with carrier, agitator on until the tank is empty', partners: [] });
  return { steps, notes: notesOf(partners), sources: ['OMAFRA_MIX', 'MODOT_MIX', 'NDSU_MIX', 'OKSTATE_MIX'] };
}

function notesOf(partners: readonly TankMixPartner[]): string[] {
  const forms = new Set(partners.map((p) => p.formulation));
  const notes = [
    "The label's order wins over this one.",
    'Each partner must be fully dispersed before the next goes in.',
    'Shake the same parts in a jar first and let it stand: no flakes, no layers, no heat.',
  ];
  if (forms.has('emulsifiable concentrate') && forms.has('soluble liquid'))
    notes.push(
      'Disputed: Oklahoma State puts soluble liquids before emulsifiable concentrates; Missouri DOT, the North Dakota guide of 2021 and others put the concentrates first, as here. Follow the label.',
    );
  const products = partners.filter((p) => !HELPERS.includes(p.formulation)).length;
  if (products > MOST_PARTNERS)
    notes.push(`${products} products are in this mix: not more than ${MOST_PARTNERS} are advised.`);
  return notes;
}
