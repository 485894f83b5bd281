import { capFor } from './caps.ts';
import { coupleOutside } from './outside.ts';
import { pressureBetween, type Plan, type Side } from './plan.ts';

/** Closes every port of the liquid's way that nothing is joined to; a port that must lead somewhere and does not is a gap. */
export function closeLoosePorts(plan: Plan): void {
  const wet = new Set(plan.rig.lines.flatMap((l) => l.run));
  for (const { item, part } of plan.rig.items.values()) {
    if (part.kind !== 'tank' && !wet.has(item.id)) continue;
    for (const { id, joint } of part.ports) {
      if (joint === 'shaft' || plan.isTaken(item.id, id)) continue;
      const side = plan.side(item.id, id);
      if (part.kind === 'eductor' && id === 'suction')
        coupleOutside(plan, side, lineOf(plan, item.id), 'what is drawn in', 'female');
      else if (part.kind === 'regulator' && id === 'bypass')
        plan.gaps.push(`the bypass of ${item.id} leads nowhere: it must run back to the tank`);
      else close(plan, side, lineOf(plan, item.id));
    }
  }
  for (const { id, part, at, pressure } of [...plan.added])
    for (const port of part.ports)
      if (!plan.isTaken(id, port.id))
        close(plan, { of: id, port: port.id, words: `${id} ${port.id}`, at: port, pressure, count: 1 }, at);
}

function close(plan: Plan, side: Side, line: string): void {
  const cap = side.at === undefined ? undefined : capFor(plan.supply, side.at, pressureBetween(side, side));
  if (cap === undefined) {
    plan.gaps.push(`no cap or plug in the catalogue closes ${side.words}`);
    return;
  }
  const [inner] = plan.add(`${side.of}-${side.port}-cap`, cap, line, 'cap', side.pressure);
  plan.join(side, inner!, line, 1);
}

function lineOf(plan: Plan, item: string): string {
  return plan.rig.lines.find((l) => l.run.includes(item))?.id ?? 'tank';
}
