import { narrowestOf } from '../../catalogue/index.ts';
import { pressureBetween, type Plan } from './plan.ts';
import { cheapest, priceOf } from './supply.ts';

/** Puts a drain behind the tank's valve: a tee with a ball valve of its own, through which tank and line run empty. */
export function drainSuction(plan: Plan): void {
  const line = plan.rig.lines.find((l) => l.from === 'tank');
  if (line === undefined) return;
  const valve = line.run.find((id) => plan.rig.items.get(id)!.part.kind === 'valve');
  const meeting = plan.meetings.find((m) => m.line === line.id && (valve === undefined || m.a.of === valve));
  const [from, to] = [meeting?.a.at, meeting?.b.at];
  if (meeting === undefined || from === undefined || to === undefined) return;
  const pressure = pressureBetween(meeting.a, meeting.b);
  const narrowest = narrowestOf(from, to);
  const tee = cheapest(
    plan.supply.branches.flatMap((part) => {
      const [a, b] = part.ports;
      if (part.form !== 'tee' || part.maxPressure < pressure || a!.size < narrowest) return [];
      const joints = [plan.supply.join(from, a!, pressure), plan.supply.join(b!, to, pressure)];
      return waysOf(part, joints);
    }),
  );
  const branch = tee?.part.ports[2];
  const drain =
    branch === undefined
      ? undefined
      : cheapest(
          plan.supply.drains.flatMap((part) =>
            part.maxPressure < pressure
              ? []
              : waysOf(part, [plan.supply.join(branch, part.ports[0]!, pressure)]),
          ),
        );
  if (tee === undefined || drain === undefined) {
    plan.gaps.push(
      `no tee with a valve in the catalogue makes a drain in the ${line.name.toLowerCase()} line`,
    );
    return;
  }
  const [into, out, down] = plan.add(`${line.id}-drain-tee`, tee.part, line.id, 'drain tee', pressure);
  const [inlet, outlet] = plan.add(`${line.id}-drain`, drain.part, line.id, 'drain valve', pressure);
  plan.split(meeting, into!, out!);
  plan.join(down!, inlet!, line.id);
  plan.leaveOpen(outlet!, 'the drain');
}

type Found = ReturnType<Plan['supply']['join']>;

function waysOf<P extends { readonly priceCents: number }>(
  part: P,
  joints: readonly Found[],
): { part: P; priceCents: number; joints: number }[] {
  const pieces = joints.flatMap((j) => (j.ok ? j.pieces : []));
  return joints.every((j) => j.ok)
    ? [{ part, priceCents: part.priceCents + priceOf(pieces), joints: pieces.length + joints.length }]
    : [];
}
