import { narrowestOf, portKey, ratingOf, type PartOf, type Port } from '../../catalogue/index.ts';
import { pressureBetween, type Plan } from './plan.ts';
import { cheapest, wayOf, type Supply } from './supply.ts';

/** Puts a drain behind the tank's valve: a tee with a ball valve of its own, through which tank and line run empty. */
export function drainSuction(plan: Plan): void {
  const line = plan.rig.lines.find((l) => l.from === 'tank');
  if (line === undefined) return;
  const valve = line.run.find((id) => plan.rig.items.get(id)!.part.kind === 'valve');
  const meeting = plan.meetings.find((m) => m.line === line.id && (valve === undefined || m.a.of === valve));
  const [from, to] = [meeting?.a.at, meeting?.b.at];
  if (meeting === undefined || from === undefined || to === undefined) return;
  const pressure = pressureBetween(meeting.a, meeting.b);
  const drain = drainFor(plan.supply, from, to, pressure);
  if (drain === undefined) {
    plan.gaps.push(
      `no tee with a valve in the catalogue makes a drain in the ${line.name.toLowerCase()} line`,
    );
    return;
  }
  const [into, out, down] = plan.add(`${line.id}-drain-tee`, drain.tee, line.id, 'drain tee', pressure);
  const [inlet, outlet] = plan.add(`${line.id}-drain`, drain.valve, line.id, 'drain valve', pressure);
  plan.split(meeting, into!, out!);
  plan.join(down!, inlet!, line.id);
  plan.leaveOpen(outlet!, 'the drain');
}

export interface Drain {
  readonly tee: PartOf<'fitting'>;
  readonly valve: PartOf<'valve'>;
}

/** The cheapest tee between two ports, and the cheapest valve on its branch. */
export function drainFor(supply: Supply, from: Port, to: Port, pressure: number): Drain | undefined {
  const stands = supply.level(pressure);
  return supply.once(`drain ${portKey(from)} ${portKey(to)} ${stands}`, () => {
    const narrowest = narrowestOf(from, to);
    const tees = supply.branches.flatMap((tee) => {
      const [a, b] = [tee.ports[0]!, tee.ports[1]!];
      if (tee.form !== 'tee' || ratingOf(tee) < stands || a.size < narrowest) return [];
      const way = wayOf([tee], [supply.join(from, a, stands), supply.join(b, to, stands)]);
      return way === undefined ? [] : [{ ...way, tee }];
    });
    const tee = cheapest(tees)?.tee;
    if (tee === undefined) return undefined;
    const valves = supply.drains.flatMap((valve) => {
      if (valve.maxPressure < stands) return [];
      const way = wayOf([valve], [supply.join(tee.ports[2]!, valve.ports[0]!, stands)]);
      return way === undefined ? [] : [{ ...way, valve }];
    });
    const valve = cheapest(valves)?.valve;
    return valve === undefined ? undefined : { tee, valve };
  });
}
