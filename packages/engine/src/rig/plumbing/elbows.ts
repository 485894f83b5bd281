import type { Kind } from '../../catalogue/index.ts';
import { pressureBetween, type Meeting, type Plan, type PlumbingEnd } from './plan.ts';
import { wayOf } from './supply.ts';

/** What is held, hangs free or ends a way: no bend of the line is made there. */
const STRAIGHT: ReadonlySet<Kind> = new Set<Kind>(['gun', 'tip', 'nozzle', 'agitator', 'gauge']);

/** The joints of each line that turn a corner: as many as the line has elbows, where an elbow costs least. */
export function elbowsOf(plan: Plan): ReadonlySet<Meeting> {
  const turning = new Set<Meeting>();
  for (const line of plan.rig.lines) {
    if (line.elbows === 0) continue;
    const extras = plan.meetings
      .filter((m) => m.line === line.id && m.times === 1 && [m.a, m.b].every((end) => bends(plan, end)))
      .flatMap((meeting) => {
        const { a, b } = meeting;
        if (a.at === undefined || b.at === undefined) return [];
        const pressure = pressureBetween(a, b);
        const plain = wayOf([], [plan.supply.join(a.at, b.at, pressure)]);
        const round = wayOf([], [plan.supply.joinRound(a.at, b.at, pressure)]);
        return plain === undefined || round === undefined
          ? []
          : [{ meeting, extra: round.priceCents - plain.priceCents }];
      })
      .sort((x, y) => x.extra - y.extra);
    extras.slice(0, line.elbows).forEach(({ meeting }) => turning.add(meeting));
    if (extras.length < line.elbows)
      plan.gaps.push(
        `${line.name}: no elbow in the catalogue for ${line.elbows - extras.length} of its ${line.elbows} bends`,
      );
  }
  return turning;
}

function bends(plan: Plan, { of }: PlumbingEnd): boolean {
  const item = plan.rig.items.get(of);
  if (item !== undefined) return !STRAIGHT.has(item.part.kind);
  const added = plan.added.find((f) => f.id === of)?.part;
  return added?.kind === 'fitting' && added.form !== 'cap';
}
