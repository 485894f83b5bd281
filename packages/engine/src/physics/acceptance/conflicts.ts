import { oneOfChoices } from '../lists-in-range.ts';
import { heldLimit, type RigKind } from './acceptance.ts';
import { ACCEPTANCE_EDITIONS, ACCEPTANCE_ITEMS, type AcceptanceItem } from './acceptance.data.ts';

/**
 * How the editions differ on one item at one expected value.
 *
 * @formula limits of all editions side by side
 * @param item what is read [one of gauge-error, gauge-division, gauge-diameter, pulsation, air-chamber-charge, agitation-return, agitation-concentration, leak-test-pressure, leak-drops, shut-off-time, drip-after-shut-off, pressure-rise-on-section-close, regulator-return, regulator-hold, pressure-at-tips, tip-flow, transverse-groove, transverse-variation, left-right-flow, tip-spacing, tip-plumb, fan-twist, tip-height-spread, boom-sag, flow-meter, speed-indicator, suction-filter-open, total-residual, container-residue, tank-volume]
 * @param expected value the limit depends on, SI; 0 where it depends on none [-] 0..
 * @param rig kind of rig [one of boom, orchard]
 * @result editions editions that have a limit here [list of text]
 * @result limits limit of each, SI [list of -]
 * @result seen whether each was read [list of yes/no]
 * @result conflict the editions do not agree [yes/no]
 * @valid An edition that says nothing is left out, so one entry means nobody contradicts, not that all agree.
 * @throws RangeError when a parameter is outside its range
 * @source The editions' own origins, kept with them as data.
 */
export function acceptanceConflict(
  item: AcceptanceItem,
  expected: number,
  rig: RigKind,
): { editions: string[]; limits: number[]; seen: boolean[]; conflict: boolean } {
  oneOfChoices('item', item, ACCEPTANCE_ITEMS);
  const held = ACCEPTANCE_EDITIONS.flatMap((edition) => heldLimit(edition.id, item, expected, rig) ?? []);
  const first = held[0];
  return {
    editions: held.map((h) => h.edition.id),
    limits: held.map((h) => h.value),
    seen: held.map((h) => h.limit.seen),
    conflict:
      first !== undefined &&
      held.some(
        (h) => Math.abs(h.value - first.value) > 1e-9 * first.value || h.limit.sense !== first.limit.sense,
      ),
  };
}
