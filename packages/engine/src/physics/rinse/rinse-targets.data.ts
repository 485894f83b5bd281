import { US_GALLON } from '../us-measure.ts';
import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

const iso4: TableOrigin = {
  place: 'ISO',
  edition: 'ISO 16119-4:2014',
  date: '2014',
  source: 'ISO 16119-4:2014, cleaning requirement (excerpt)',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
};

/** How far the last mix must be thinned before the rig counts as rinsed. */
export const RINSE_TARGETS = [
  { id: 'iso-16119-4-residue', dilution: 300, origin: iso4 },
  { id: 'iso-16119-4-drained', dilution: 50, origin: iso4 },
] as const;

/** Rinse water a sprayer must carry: one of the two rules is enough. */
export const RINSE_TANK_RULE = {
  shareOfTank: 0.1,
  timesResidual: 10,
  /** Mounted sprayers up to this tank need none [m3]. */
  exemptMountedUpTo: 0.4,
  origin: {
    place: 'ISO',
    edition: 'ISO 16119-3:2013',
    date: '2013',
    source: 'ISO 16119-3:2013 (excerpt)',
    evidence: 'part seen',
    checkedBy: NOT_CHECKED,
  } satisfies TableOrigin,
} as const;

/** Water for rinsing an emptied container, as a share of its volume. */
export const CONTAINER_RULES = [
  {
    id: 'montana',
    /** Below this size the first share holds, from it on the second [m3]. */
    border: 5 * US_GALLON,
    below: 1 / 4,
    from: 1 / 5,
    rinses: 3,
    /** Share of the triple-rinse volume that a power rinse takes. */
    power: 0.5,
    /** [s] */
    drain: 30,
    origin: {
      place: 'Montana, United States',
      edition: 'administrative rule on pesticide container rinsing, 16614',
      date: 'unknown',
      source: 'Montana Administrative Rule on pesticide container rinsing',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
      note: 'The label comes first. EPA demands that 99.99 % be removed.',
    } satisfies TableOrigin,
  },
] as const;
