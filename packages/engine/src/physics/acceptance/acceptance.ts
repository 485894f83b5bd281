import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import {
  ACCEPTANCE_EDITIONS,
  ACCEPTANCE_ITEMS,
  type AcceptanceBand,
  type AcceptanceEdition,
  type AcceptanceItem,
  type AcceptanceLimit,
} from './acceptance.data.ts';

export type RigKind = 'boom' | 'orchard';

/** A limit as it holds at one expected value. */
export interface HeldLimit {
  readonly edition: AcceptanceEdition;
  readonly limit: AcceptanceLimit;
  readonly value: number;
  readonly low: number | null;
}

function editionOf(id: string): AcceptanceEdition {
  oneOfChoices(
    'edition',
    id,
    ACCEPTANCE_EDITIONS.map((e) => e.id),
  );
  const edition = ACCEPTANCE_EDITIONS.find((e) => e.id === id);
  if (edition === undefined) throw new RangeError(`edition is '${id}'; it is not known`);
  return edition;
}

const holds = (band: AcceptanceBand, expected: number): boolean => {
  // The slack keeps a pressure that was typed as the end of a band on that end after its conversion.
  const slack = 1e-9 * Math.abs(band.upTo ?? 0);
  if (band.upTo === undefined) return true;
  return band.below === true ? expected < band.upTo - slack : expected <= band.upTo + slack;
};

/** The limit of an edition for an item at an expected value; null when the edition says nothing there. */
export function heldLimit(
  editionId: string,
  item: AcceptanceItem,
  expected: number,
  rig: RigKind,
): HeldLimit | null {
  const edition = editionOf(editionId);
  oneOfChoices('item', item, ACCEPTANCE_ITEMS);
  oneOfChoices('rig', rig, ['boom', 'orchard']);
  inRange('expected', expected, 0, Infinity);
  const limit = edition.limits.find((l) => l.item === item && (l.rig === undefined || l.rig === rig));
  const band = limit?.bands.find((b) => holds(b, expected));
  if (limit === undefined || band === undefined) return null;
  if (band.from !== undefined && expected < band.from * (1 - 1e-9)) return null;
  const at = (absolute: number | undefined, share: number | undefined) =>
    absolute ?? (share === undefined ? null : share * expected);
  const value = at(band.absolute, band.share);
  return value === null ? null : { edition, limit, value, low: at(band.lowAbsolute, band.lowShare) };
}

/**
 * A reading of the yard test held against one edition of a rule.
 *
 * @formula deviation |m - e| <= limit, or m <= limit, m >= limit, low <= m <= limit, as the edition says
 * @param edition whose limits [one of france-2008, netherlands-2009, iso-16122-recalled, iso-16119-new]
 * @param item what was read [one of gauge-error, gauge-division, gauge-diameter, pulsation, air-chamber-charge, agitation-return, agitation-concentration, leak-test-pressure, leak-drops, shut-off-time, drip-after-shut-off, pressure-rise-on-section-close, regulator-return, regulator-hold, pressure-at-tips, tip-flow, transverse-groove, transverse-variation, left-right-flow, tip-spacing, tip-plumb, fan-twist, tip-height-spread, boom-sag, flow-meter, speed-indicator, suction-filter-open, total-residual, container-residue, tank-volume]
 * @param expected true, nominal, mean or working value the limit depends on, SI; 0 where it depends on none [-] 0..
 * @param measured reading, SI, same unit as the limit [-] 0..
 * @param rig kind of rig [one of boom, orchard]
 * @result state verdict [one of pass, fail, unknown]
 * @result deviation distance of the reading from the expected value where the limit is one of deviation, else null [-]
 * @result limit limit that holds here, SI, or null when the edition says nothing [-]
 * @result low lower end where the limit is a span, else null [-]
 * @result source who says so, with edition [text]
 * @result seen whether the limit itself was read; a recalled one can never be a certificate [yes/no]
 * @valid Nothing passes by silence: an item or value the edition does not cover is 'unknown'.
 * @throws RangeError when a parameter is outside its range
 * @source The edition's own origin, kept with it as data.
 */
export function acceptanceCheck(
  edition: string,
  item: AcceptanceItem,
  expected: number,
  measured: number,
  rig: RigKind,
): {
  state: 'pass' | 'fail' | 'unknown';
  deviation: number | null;
  limit: number | null;
  low: number | null;
  source: string;
  seen: boolean;
} {
  inRange('measured', measured, 0, Infinity);
  const held = heldLimit(edition, item, expected, rig);
  const deviation = Math.abs(measured - expected);
  if (held === null) {
    const { source } = editionOf(edition).origin;
    return { state: 'unknown', deviation: null, limit: null, low: null, source, seen: false };
  }
  const { limit, value, low } = held;
  const slack = 1e-9 * value;
  const passes = {
    deviation: deviation <= value + slack,
    'at-most': measured <= value + slack,
    'at-least': measured >= value - slack,
    between: measured <= value + slack && measured >= (low ?? 0) - slack,
  }[limit.sense];
  return {
    state: passes ? 'pass' : 'fail',
    deviation: limit.sense === 'deviation' ? deviation : null,
    limit: value,
    low,
    source: held.edition.origin.source,
    seen: limit.seen,
  };
}
