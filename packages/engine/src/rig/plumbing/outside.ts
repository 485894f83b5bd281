import { portKey, portName, type Port } from '../../catalogue/index.ts';
import type { Plan, Side } from './plan.ts';
import { cheapest, wayOf, type Supply } from './supply.ts';

/** Sizes that cam and groove couplings are made in (A-A-59326) [m]. */
const CAM_SIZES = [0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6].map((inches) => inches * 0.0254);

/**
 * Ends a port in a cam and groove coupling, for what is coupled on from outside: the tank that a transfer hose fills, the
 * hopper of an eductor. A port that is such a coupling already stays as it is.
 *
 * @param theirs gender of the coupling on the other side
 */
export function coupleOutside(
  plan: Plan,
  side: Side,
  line: string,
  to: string,
  theirs: Port['gender'],
): void {
  if (side.at?.joint === 'cam-lock') {
    plan.leaveOpen(side, to);
    return;
  }
  if (side.at === undefined) {
    plan.gaps.push(`${side.words}: the part lists no such port`);
    return;
  }
  const coupling = couplingFor(
    plan.supply,
    side.at,
    theirs,
    Number.isFinite(side.pressure) ? side.pressure : 0,
  );
  if (coupling === undefined)
    plan.gaps.push(`no cam-lock in the catalogue goes on ${side.words} (${portName(side.at)})`);
  else
    plan.join(side, { of: 'outside', port: to, words: to, at: coupling, pressure: Infinity, count: 1 }, line);
}

/** The coupling of the other side, no smaller than the port, that is joined for least money. */
export function couplingFor(
  supply: Supply,
  port: Port,
  theirs: Port['gender'],
  pressure: number,
): Port | undefined {
  const stands = supply.level(pressure);
  return supply.once(`coupling ${portKey(port)} ${theirs} ${stands}`, () => {
    const ways = CAM_SIZES.filter((size) => size >= port.size - 1e-4).flatMap((size) => {
      const other: Port = { id: 'cam', joint: 'cam-lock', size, gender: theirs };
      const way = wayOf([], [supply.join(port, other, stands)]);
      return way === undefined ? [] : [{ ...way, other }];
    });
    return cheapest(ways)?.other;
  });
}
