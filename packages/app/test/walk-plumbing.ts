import type { Part, Port } from '@spraywright/engine/catalogue';
import type { AddedFitting, Proof, Rig, RigJoint } from '@spraywright/engine/rig';

/**
 * Walks a rig from port to port along the joints of its bill and lists every fault: a joint that does not fit or does not
 * stand the pressure, a port that is neither joined nor closed, two parts of a line that are not connected, a piece that
 * is not billed. It takes nothing but data from the engine: its own idea of what fits, of what must meet, of what counts.
 */
export function walkPlumbing(rig: Rig, proof: Proof): string[] {
  const { joints, added, open, gaps } = proof.bill.plumbing;
  const parts = new Map<string, Part>([
    ...[...rig.items].map(([id, { part }]): [string, Part] => [id, part]),
    ...added.map(({ id, part }): [string, Part] => [id, part]),
  ]);
  return [
    ...gaps.map((gap) => `gap: ${gap}`),
    ...joints.flatMap((joint) => jointFaults(joint, parts, proof)),
    ...portFaults(rig, parts, joints, open),
    ...wayFaults(rig, added, joints, open),
    ...elbowFaults(rig, joints),
    ...billFaults(joints, added, proof),
    ...driveFaults(rig, joints),
  ];
}

const named = (joint: RigJoint) => joint.ends.map((e) => `${e.of}.${e.port}`).join(' > ');

function fits(a: Port, b: Port): boolean {
  const pair = [a.gender, b.gender].sort().join('+');
  return (
    a.joint === b.joint &&
    Math.abs(a.size - b.size) < 0.0002 &&
    (pair === 'female+male' || pair === 'none+none')
  );
}

/** Follows the pieces of one joint from its first port to its second. */
function jointFaults(joint: RigJoint, parts: ReadonlyMap<string, Part>, proof: Proof): string[] {
  const [from, to] = joint.ends.map((end) => parts.get(end.of)?.ports.find((p) => p.id === end.port));
  const faults: string[] = [];
  if (from === undefined) return [`${named(joint)}: it begins at no port`];
  let at = from;
  for (const piece of joint.pieces) {
    const enter = piece.ports.findIndex((p) => fits(at, p));
    if (enter === -1 || piece.ports.length !== 2) return [`${named(joint)}: ${piece.id} does not fit there`];
    at = piece.ports[1 - enter]!;
    const rated = Math.min(piece.maxPressure, ...piece.ports.map((p) => p.maxPressure ?? Infinity));
    const pressure = leastOf(joint.ends.map((e) => highest(proof, e.of)));
    if (rated < pressure)
      faults.push(`${named(joint)}: ${piece.id} stands ${rated} Pa, it sees ${pressure} Pa`);
  }
  if (joint.ends[1].of === 'outside') {
    if (at.joint !== 'cam-lock') faults.push(`${named(joint)}: ends in ${at.joint}, not in a coupling`);
  } else if (to === undefined || !fits(at, to)) faults.push(`${named(joint)}: the last piece does not fit`);
  return faults;
}

/** Highest pressure that any duty shows at an item; undefined for what no duty tells of [Pa]. */
function highest(proof: Proof, item: string): number | undefined {
  const told = proof.duties.flatMap((d) => [d.open.pressureAt.get(item), d.shut.pressureAt.get(item)]);
  const known = told.filter((p) => p !== undefined);
  return known.length === 0 ? undefined : Math.max(...known);
}

function leastOf(list: readonly (number | undefined)[]): number {
  return Math.min(...list.map((p) => p ?? Infinity), ...(list.every((p) => p === undefined) ? [0] : []));
}

/** Every port that liquid can reach is joined as often as it has outlets, or open for a reason that stands. */
function portFaults(
  rig: Rig,
  parts: ReadonlyMap<string, Part>,
  joints: readonly RigJoint[],
  open: Proof['bill']['plumbing']['open'],
): string[] {
  const wet = new Set(rig.lines.flatMap((l) => l.run));
  const faults: string[] = [];
  for (const [id, part] of parts) {
    const isItem = rig.items.has(id);
    if (isItem && !wet.has(id) && part.kind !== 'tank' && part.kind !== 'gauge') continue;
    for (const port of part.ports) {
      if (port.joint === 'shaft') continue;
      const uses = joints
        .filter((j) => j.ends.some((e) => e.of === id && e.port === port.id))
        // A hose in pieces is joined to itself.
        .filter((j) => j.ends[0].of !== j.ends[1].of)
        .reduce((sum, j) => sum + j.times, 0);
      const isOpen = open.some((o) => o.of === id && o.port === port.id);
      const mayBeOpen =
        port.joint === 'cam-lock' || (!isItem && (part.kind === 'valve' || id.includes('bulkhead')));
      const wanted =
        part.kind === 'boom' && port.id === 'out' ? part.nozzles : (rig.items.get(id)?.item.count ?? 1);
      if (isOpen ? !mayBeOpen || uses > 0 : uses !== wanted)
        faults.push(`${id}.${port.id}: ${isOpen ? 'left open' : `joined ${uses} times, wanted ${wanted}`}`);
    }
  }
  return faults;
}

/** Neighbours of each line, line ends at tank and nodes, and the gauge, are connected by added fittings alone. */
function wayFaults(
  rig: Rig,
  added: readonly AddedFitting[],
  joints: readonly RigJoint[],
  open: Proof['bill']['plumbing']['open'],
): string[] {
  const extra = new Set(added.map((f) => f.id));
  const tank = [...rig.items].find(([, { part }]) => part.kind === 'tank')![0];
  const edges = joints.filter((j) => j.line !== 'drive').map((j) => j.ends);
  /** Ports "item.port" reached from a port without passing through an item of the rig. */
  const reach = (of: string, port: string): Set<string> => {
    const seen = new Set<string>();
    const todo = [`${of}.${port}`];
    while (todo.length > 0) {
      const here = todo.pop()!;
      if (seen.has(here)) continue;
      seen.add(here);
      for (const [a, b] of edges)
        for (const [x, y] of [
          [a, b],
          [b, a],
        ] as const) {
          if (`${x.of}.${x.port}` !== here) continue;
          const there = `${y.of}.${y.port}`;
          if (!extra.has(y.of)) seen.add(there);
          else
            for (const p of added.find((f) => f.id === y.of)!.part.ports) todo.push(there, `${y.of}.${p.id}`);
        }
      for (const o of open)
        if (`${o.of}.${o.port}` === here && o.of.includes('bulkhead')) seen.add(`${tank}.inside`);
    }
    return seen;
  };
  const out = (line: Rig['lines'][number], id: string) =>
    rig.items.get(id)!.part.kind === 'regulator' && line.to === 'tank' ? 'bypass' : 'out';
  const faults: string[] = [];
  const must = (from: [string, string], to: string, words: string) => {
    if (!reach(...from).has(to)) faults.push(`${from.join('.')} does not reach ${to}: ${words}`);
  };
  const meeting = new Map<string, { in: string[]; out: [string, string][] }>();
  const at = (node: string) => {
    let list = meeting.get(node);
    if (list === undefined) meeting.set(node, (list = { in: [], out: [] }));
    return list;
  };
  for (const line of rig.lines) {
    for (let i = 1; i < line.run.length; i++)
      must([line.run[i - 1]!, out(line, line.run[i - 1]!)], `${line.run[i]!}.in`, line.name);
    const [head, last] = [line.run[0]!, line.run[line.run.length - 1]!];
    if (line.from === 'tank') must([tank, 'outlet'], `${head}.in`, line.name);
    else at(line.from).in.push(`${head}.in`);
    const ends = rig.items.get(last)!.part.ports.some((p) => p.id === out(line, last));
    if (line.to === 'tank' && ends) {
      const found = reach(last, out(line, last));
      if (!found.has(`${tank}.return`) && !found.has(`${tank}.inside`))
        faults.push(`${last} does not come back to the tank: ${line.name}`);
    } else if (line.to === 'air' && ends) {
      if (![...reach(last, out(line, last))].some((p) => p.startsWith('outside.')))
        faults.push(`${last} ends in nothing: ${line.name}`);
    } else if (line.to !== 'air' && line.to !== 'tank') at(line.to).out.push([last, out(line, last)]);
  }
  const pump = rig.lines.find((l) => l.run.some((id) => /pump$/.test(rig.items.get(id)!.part.kind)))!;
  for (const [id, { part }] of rig.items) if (part.kind === 'gauge') at(pump.to).in.push(`${id}.in`);
  for (const [node, { in: into, out: from }] of meeting)
    for (const start of from) {
      const seen = reach(...start);
      // What hangs behind an unloader in the main is reached through it.
      for (const [id, { part }] of rig.items)
        if (part.kind === 'regulator' && part.ports.length === 3 && seen.has(`${id}.in`))
          reach(id, 'out').forEach((p) => seen.add(p));
      for (const goal of into)
        if (!seen.has(goal)) faults.push(`${start.join('.')} does not reach ${goal} at ${node}`);
    }
  return faults;
}

function elbowFaults(rig: Rig, joints: readonly RigJoint[]): string[] {
  return rig.lines.flatMap((line) => {
    const elbows = joints
      .filter((j) => j.line === line.id)
      .flatMap((j) => j.pieces.filter((p) => p.form === 'elbow')).length;
    return elbows < line.elbows
      ? [`${line.id}: ${elbows} elbows, its loss is reckoned with ${line.elbows}`]
      : [];
  });
}

/** Each piece is on the bill as often as the joints use it. */
function billFaults(joints: readonly RigJoint[], added: readonly AddedFitting[], proof: Proof): string[] {
  const used = new Map<string, number>();
  for (const { pieces, times } of joints)
    for (const { id } of pieces) used.set(id, (used.get(id) ?? 0) + times);
  for (const { part } of added) used.set(part.id, (used.get(part.id) ?? 0) + 1);
  const billed = new Map(
    proof.bill.lines.filter((l) => l.sort === 'fitting').map((l) => [l.part!, l.quantity]),
  );
  return [...new Set([...used.keys(), ...billed.keys()])].flatMap((id) =>
    used.get(id) === billed.get(id)
      ? []
      : [`${id}: used ${used.get(id) ?? 0}, billed ${billed.get(id) ?? 0}`],
  );
}

/** The pump's shaft is turned by something whose shaft fits. */
function driveFaults(rig: Rig, joints: readonly RigJoint[]): string[] {
  const shaft = [...rig.items.values()].find(({ part }) => part.kind === 'pump');
  if (shaft === undefined) return [];
  const size = (id: string, port: string) => rig.items.get(id)?.part.ports.find((p) => p.id === port);
  const drives = joints.filter((j) => j.line === 'drive');
  const onPump = drives.some((j) => j.ends.some((e) => e.of === shaft.item.id && e.port === 'shaft'));
  return [
    ...(onPump ? [] : ['nothing turns the pump']),
    ...drives.flatMap((j) => {
      const [a, b] = j.ends.map((e) => size(e.of, e.port));
      return a !== undefined && b !== undefined && fits(a, b) ? [] : [`${named(j)}: the shafts do not fit`];
    }),
  ];
}
