import { mates, portName, type Joint } from '../../catalogue/index.ts';
import type { Rig } from '../rig-document.ts';
import { drainSuction } from './drain.ts';
import { elbowsOf } from './elbows.ts';
import { layLines } from './lay-lines.ts';
import { closeLoosePorts } from './loose-ports.ts';
import { Plan, pressureBetween, type Meeting, type Plumbing, type RigJoint, type Side } from './plan.ts';
import { shaftJoints } from './shafts.ts';
import type { Supply } from './supply.ts';

/**
 * Joins every port of a rig: the items of each line, the line ends at tank, tees and outlets, gauges, the drain, the
 * shafts; closes what is left over. What the catalogue cannot make is a named gap.
 *
 * @param pressureAt highest gauge pressure on either side of an item, over all duties [Pa]
 */
export function plumbingOf(rig: Rig, supply: Supply, pressureAt: (item: string) => number): Plumbing {
  const plan = new Plan(rig, supply, pressureAt);
  layLines(plan);
  drainSuction(plan);
  closeLoosePorts(plan);
  const turning = elbowsOf(plan);
  const joints = [...plan.meetings.map((m) => made(m, supply, turning.has(m))), ...shaftJoints(rig)];
  return {
    joints,
    added: plan.added,
    open: plan.open,
    gaps: [...joints.flatMap((j) => j.gap ?? []), ...plan.gaps],
  };
}

function made(meeting: Meeting, supply: Supply, turns: boolean): RigJoint {
  const { a, b, line, times } = meeting;
  const pressure = pressureBetween(a, b);
  const found = between(a, b, pressure, supply, turns);
  const joint = {
    between: [a.words, b.words] as const,
    ends: [
      { of: a.of, port: a.port },
      { of: b.of, port: b.port },
    ] as const,
    line,
    times,
    pressure,
    pieces: found.ok ? found.pieces : [],
  };
  return found.ok ? joint : { ...joint, gap: found.gap };
}

const FITS: Joint = { ok: true, pieces: [] };

function between(a: Side, b: Side, pressure: number, supply: Supply, turns: boolean): Joint {
  if (a.at === undefined || b.at === undefined)
    return { ok: false, gap: `${(a.at === undefined ? a : b).words}: the part lists no such port` };
  const weak =
    (a.at.maxPressure ?? Infinity) < pressure ? a : (b.at.maxPressure ?? Infinity) < pressure ? b : undefined;
  if (weak !== undefined)
    return { ok: false, gap: `${weak.words}: its joint does not stand the pressure there` };
  if (!turns && mates(a.at, b.at)) return FITS;
  const found = (turns ? supply.joinRound : supply.join)(a.at, b.at, pressure);
  if (found.ok) return found;
  return {
    ok: false,
    gap: `${a.words} (${portName(a.at)}) to ${b.words} (${portName(b.at)}): ${found.gap}`,
  };
}
