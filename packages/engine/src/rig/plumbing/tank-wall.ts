import { portKey, ratingOf, type PartOf, type Port } from '../../catalogue/index.ts';
import { first } from '../rig-document.ts';
import { pressureBetween, type Plan, type Side } from './plan.ts';
import { cheapest, wayOf, type Supply } from './supply.ts';

/** Joins the lines that begin at the tank: the first to its outlet, each further one to a bulkhead fitting. */
export function joinOutgoing(plan: Plan, side: Side, line: string): void {
  const outlet = plan.side(first(plan.rig, 'tank')!.item.id, 'outlet', 'tank outlet');
  if (!plan.isTaken(outlet.of, outlet.port)) plan.join(outlet, side, line);
  else throughWall(plan, side, line);
}

/** Joins a line that comes back: the first to the tank's own return port, each further one to a bulkhead fitting. */
export function joinReturn(plan: Plan, side: Side, line: string): void {
  const back = plan.side(first(plan.rig, 'tank')!.item.id, 'return', 'tank return');
  if (back.at !== undefined && !plan.isTaken(back.of, back.port)) plan.join(side, back, line);
  else throughWall(plan, side, line);
}

/** The outer port of a bulkhead fitting whose inner port carries an agitator. */
export function agitatorInTank(plan: Plan, agitator: Side, line: string): Side | undefined {
  const walls = bulkheadAt(plan, agitator, line);
  if (walls === undefined) return undefined;
  plan.join(walls.inner, agitator, line);
  return walls.outer;
}

/** Joins a side to a bulkhead fitting that opens into the tank. */
function throughWall(plan: Plan, side: Side, line: string): void {
  const walls = bulkheadAt(plan, side, line);
  if (walls === undefined) return;
  plan.join(side, walls.outer, line);
  plan.leaveOpen(walls.inner, 'into the tank');
}

/** Puts the cheapest bulkhead fitting that fits the side into the tank's wall. */
function bulkheadAt(plan: Plan, side: Side, line: string): { outer: Side; inner: Side } | undefined {
  const part =
    side.at === undefined ? undefined : bulkheadFor(plan.supply, side.at, pressureBetween(side, side));
  if (part === undefined) {
    plan.gaps.push(`no bulkhead fitting in the catalogue takes ${side.words} through the tank wall`);
    return undefined;
  }
  const [outer, inner] = plan.add(
    `${line}-bulkhead`,
    part,
    line,
    'bulkhead through the tank wall',
    side.pressure,
  );
  return { outer: outer!, inner: inner! };
}

/** The bulkhead fitting no narrower than a port that is joined to it for least money. */
export function bulkheadFor(supply: Supply, port: Port, pressure: number): PartOf<'fitting'> | undefined {
  const stands = supply.level(pressure);
  return supply.once(`bulkhead ${portKey(port)} ${stands}`, () => {
    const ways = supply.bulkheads.flatMap((part) => {
      const outer = part.ports[0]!;
      if (outer.size < port.size - 1e-4 || ratingOf(part) < stands) return [];
      const way = wayOf([part], [supply.join(port, outer, stands)]);
      return way === undefined ? [] : [{ ...way, part }];
    });
    return cheapest(ways)?.part;
  });
}
