/** How the passage before the exit of a tip is made. */
export const TIP_FORMS = [
  'smooth-taper',
  'straight-bore',
  'sharp-disc',
  'drilled-tube',
  'long-pipe',
  'adjustable-gun',
] as const;
export type TipForm = (typeof TIP_FORMS)[number];

export interface JetCoefficients {
  readonly velocity: number;
  readonly contraction: number;
  readonly discharge: number;
  readonly meaning: string;
  readonly source: string;
}

export const JET_COEFFICIENTS: Readonly<Record<TipForm, JetCoefficients>> = {
  'smooth-taper': {
    velocity: 0.98,
    contraction: 1,
    discharge: 0.98,
    meaning: 'smooth long taper or good smooth bore, Cd 0.97 to 0.99',
    source: 'fire practice, gpm = 29.7 d² sqrt(p), implies Cd 0.995 and is optimistic for small bores',
  },
  'straight-bore': {
    velocity: 0.97,
    contraction: 1,
    discharge: 0.97,
    meaning: 'small straight-bore sprinkler or gun tip of 3.5 to 5.6 mm, Cd 0.966 to 0.982',
    source: 'computed from a published sprinkler-nozzle capacity table (ATTRA)',
  },
  'sharp-disc': {
    velocity: 0.97,
    contraction: 0.64,
    discharge: 0.62,
    meaning: 'sharp-edged disc; the jet is 0.8 of the hole',
    source: 'hydraulics handbooks, from memory',
  },
  'drilled-tube': {
    velocity: 0.82,
    contraction: 1,
    discharge: 0.82,
    meaning: 'short drilled tube with a sharp entry',
    source: 'Encyclopaedia Britannica 11th ed. vol. 14 (1911), Hydraulics',
  },
  'long-pipe': {
    velocity: 0.71,
    contraction: 1,
    discharge: 0.71,
    meaning: 'long pipe of 30 to 63 bores, Cv 0.65 to 0.77',
    source: 'computed from runs of Trettel 2020, Turbulent jet breakup: theory and data',
  },
  'adjustable-gun': {
    velocity: 0.94,
    contraction: 0.85,
    discharge: 0.8,
    meaning:
      'adjustable cone gun on stream, Cv 0.90 to 0.97, Cd 0.65 to 0.9: take it from a flow measured at one pressure',
    source: 'assumption, no measurement',
  },
};
