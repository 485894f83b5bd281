import type { Joint, Kind } from '../../catalogue/index.ts';
import { pressureBetween, type Meeting, type Plan, type PlumbingEnd } from './plan.ts';

/** What is held, hangs free or ends a way: no bend of the line is made there. */
const STRAIGHT: ReadonlySet<Kind> = new Set<Kind>(['gun', 'tip', 'nozzle', 'agitator', 'gauge']);

/** The joints of each line that turn a corner: as many as the line has elbows, where an elbow costs least. */
export function elbowsOf(plan: Plan): ReadonlySet<Meeting> {
  const turning = new Set<Meeting>();
  for (const line of plan.rig.lines) {
    if (line.elbows === 0) continue;
    const extras: { meeting: Meeting; extra: number }[] = [];
    for (const meeting of plan.meetings) {
      const { a, b } = meeting;
      if (meeting.line !== line.id || meeting.times !== 1 || !bends(plan, a) || !bends(plan, b)) continue;
      if (a.at === undefined || b.at === undefined) continue;
      const pressure = pressureBetween(a, b);
      const plain = priceOf(plan.supply.join(a.at, b.at, pressure));
      const round = priceOf(plan.supply.joinRound(a.at, b.at, pressure));
      if (plain !== undefined && round !== undefined) extras.push({ meeting, extra: round - plain });
    }
    extras.sort((x, y) => x.extra - y.extra);
    extras.slice(0, line.elbows).forEach(({ meeting }) => turning.add(meeting));
    if (extras.length < line.elbows)
      plan.gaps.push(
        `${line.name}: no elbow in the catalogue for ${line.elbows - extras.length} of its ${line.elbows} bends`,
      );
  }
  return turning;
}

/** What the pieces of a joint cost [cents]; undefined when it cannot be made. */
function priceOf(joint: Joint): number | undefined {
  if (!joint.ok) return undefined;
  let cents = 0;
  for (const { priceCents } of joint.pieces) cents += priceCents;
  return cents;
}

function bends(plan: Plan, { of }: PlumbingEnd): boolean {
  const item = plan.rig.items.get(of);
  if (item !== undefined) return !STRAIGHT.has(item.part.kind);
  const added = plan.added.find((f) => f.id === of)?.part;
  return added?.kind === 'fitting' && added.form !== 'cap';
}
