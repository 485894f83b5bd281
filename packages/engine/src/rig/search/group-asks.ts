import { portKey, type Part, type PartOf, type Port, type LayoutLine } from '../../catalogue/index.ts';
import type { FallingMain } from './falling-main.ts';
import { jetWay } from './jet.ts';
import { flowOf } from './main-state.ts';
import { SuctionSide } from './trim-margins.ts';
import { marginStep } from './figures.ts';
import type { Rated } from './rated.ts';
import type { LineNeeds } from './line-needs.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import { leastBends, TANK_HEAD, type MadeJoint, type Pieces } from './pieces.ts';
import { factorTerms, OFF } from './part-terms.ts';
import type { PumpFlow } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { portClass, portOf, sumOf, type TrimAsk } from './trims.ts';

const G = 9.80665;

/** What the groups must know of the rest of the rig. */
export interface CoreFacts {
  readonly space: SearchSpace;
  readonly partAt: PartAt;
  readonly pieces: Pieces;
  readonly tank: PartOf<'tank'>;
  readonly pump: Part;
  readonly flow: PumpFlow;
  /** Undefined where the pump holds its flow. */
  readonly falling?: FallingMain | undefined;
  readonly needs: LineNeeds | undefined;
  /** Least ratings of what stands before the shutters of the outlets. */
  readonly rated: Rated;
  /** Most that the height of the outlets takes of the pressure that they see [Pa]. */
  readonly lifted: number;
  /** What the wires add beyond those over the least ways, by the battery. */
  readonly wires?: ReadonlyMap<Part | undefined, Adds>;
  /** No rig of the space has more spare [steps]. */
  readonly cap: number;
}

/** Pressure that the joints behind the pump see at least [Pa]. */
export function mainPressure(needs: Pick<LineNeeds, 'set'> | undefined, regulated: boolean): number {
  return regulated && needs !== undefined ? needs.set * 0.999 : 0;
}

/** From the tank to the pump: tank valve, suction hose, strainer, with the drain behind the valve. */
export function suctionAsk(facts: CoreFacts, line: LayoutLine): TrimAsk {
  const { space, pieces, tank, pump, cap } = facts;
  // In steps of 2 %, so that outlets and pumps much alike ask the same.
  const down = (q: number) => (q > 0 ? 1.02 ** Math.floor(Math.log(q) / Math.log(1.02)) : 0);
  const least = facts.falling?.least.map(down) ?? facts.flow.least;
  const npsh = 'npshRequired' in pump ? pump.npshRequired : 0;
  const speed = least.map((q) => q.toPrecision(4)).join(' ');
  const outlet = portOf(tank, 'outlet');
  const inlet = portOf(pump, 'in');
  return {
    joints: `${outlet === undefined ? '-' : portKey(outlet)} ${inlet === undefined ? '-' : portKey(inlet)}`,
    key: `${tank.id} ${npsh} ${speed}`,
    classOf: portClass,
    laid: (parts) => {
      const there = parts.filter((p) => p !== undefined);
      const joints = there.map((part, i) => {
        const before = i === 0 ? outlet : portOf(there[i - 1], 'out');
        const into = portOf(part, 'in');
        if (i === 1) return pieces.drained(before, into);
        const joint = pieces.joint(before, into, 0, TANK_HEAD);
        return joint && { adds: joint.adds, elbows: joint.elbow ? [joint.elbow] : [] };
      });
      const last = pieces.joint(portOf(there[there.length - 1], 'out'), inlet, 0, TANK_HEAD);
      const adds = sumOf([...joints, last]);
      if (adds === undefined) return undefined;
      const elbows = joints.flatMap((j) => j?.elbows ?? []);
      return { adds: plus(adds, leastBends(elbows, line.elbows ?? 0)), end: undefined };
    },
    margins: () => {
      const side = new SuctionSide(space, line, tank, npsh, least);
      // Of most parts it is never asked: what is cheaper and no heavier has all the spare there is.
      const known = new Map<Part | undefined, readonly number[]>();
      const lossesOf = (part: Part | undefined) => {
        let losses = known.get(part);
        if (losses === undefined) known.set(part, (losses = side.lossesOf(part)));
        return losses;
      };
      return (parts) => {
        const most = side.margin(
          parts.map(lossesOf),
          parts.find((p) => p?.kind === 'hose'),
        );
        return most < 0 ? -1 : Math.min(cap, marginStep(most));
      };
    },
  };
}

/** From the manifold back to the tank through the regulator. */
export function returnAsk(facts: CoreFacts, line: LayoutLine): TrimAsk {
  const { pieces, tank, needs, rated, lifted, cap } = facts;
  const back = portOf(tank, 'return');
  const set = needs?.set ?? 0;
  return {
    joints: back === undefined ? '-' : portKey(back),
    key: `${set} ${needs?.lowest ?? 0} ${rated.near} ${rated.far} ${lifted}`,
    classOf: portClass,
    laid: ([regulator, hose]) => {
      const into = portOf(regulator, 'in');
      const first = pieces.joint(portOf(regulator, 'bypass'), portOf(hose, 'in'), 0);
      const out = portOf(hose, 'out');
      if (into === undefined || first === undefined || out === undefined) return undefined;
      const last = intoTank(pieces, out, back);
      if (last === undefined) return undefined;
      const through = portOf(regulator, 'out');
      return {
        adds: plus(first.adds, last.adds),
        end: {
          line: line.id,
          port: into,
          ...(through === undefined ? {} : { through }),
          bends: line.elbows ?? 0,
          elbows: [first.elbow, last.elbow].flatMap((e) => e ?? []),
        },
      };
    },
    margins: () => (parts) => {
      const regulator = parts[0];
      if (regulator?.kind !== 'regulator') return cap;
      if (needs !== undefined && (regulator.setMax < needs.set || regulator.setMin > needs.lowest)) return -1;
      const [held, peak] = [set * 0.999, 1 + regulator.shutPeak];
      const most =
        1 - peak * Math.max(held / Math.min(rated.near, regulator.maxPressure), (held - lifted) / rated.far);
      return most < 0 ? -1 : Math.min(cap, marginStep(most));
    },
  };
}

/** From the manifold into the tank through a jet. */
export function agitationAsk(facts: CoreFacts, line: LayoutLine, highest: readonly number[]): TrimAsk {
  const { space, pieces, tank, needs, cap } = facts;
  const { brief, contexts } = space;
  const regulated = space.slots.some((s) => s.id === 'regulator');
  const pressure = mainPressure(needs, regulated);
  const stirred = brief.duties.flatMap((duty, i) => {
    const liquid = contexts[0]!.liquids.get(duty.liquid)!;
    return duty.agitate && liquid.agitationShare > 0
      ? [{ asked: liquid.agitationShare * tank.volume, liquid, pressure: highest[i]! }]
      : [];
  });
  return {
    joints: pieces.levels(pressure).join(' '),
    key: `${tank.volume} ${pressure} ${highest.map((p) => p.toPrecision(4)).join(' ')}`,
    classOf: portClass,
    laid: ([valve, agitator]) => {
      if (valve === undefined && agitator === undefined) return { adds: NOTHING, end: undefined };
      const jet = portOf(agitator, 'in');
      const into = portOf(valve, 'in');
      if (jet === undefined || into === undefined) return undefined;
      const wall = pieces.throughWall(jet, portOf(valve, 'out'), jet, pressure);
      if (wall === undefined) return undefined;
      return {
        adds: wall.adds,
        end: {
          line: line.id,
          port: into,
          bends: line.elbows ?? 0,
          elbows: wall.elbow === undefined ? [] : [wall.elbow],
        },
      };
    },
    margins: () => (parts) => {
      const agitator = parts[1];
      if (agitator?.kind !== 'agitator') return stirred.length > 0 && !regulated ? -1 : cap;
      let most = Infinity;
      for (const { asked, liquid, pressure: p } of stirred) {
        const flow = flowOf(jetWay(line, agitator, parts[0], liquid, 0)!, p);
        most = Math.min(most, (flow - asked) / asked + OFF);
      }
      // The jet sees what its valve and the bends leave it, and its valve no less.
      for (const { liquid } of stirred) {
        const over = pressure - liquid.density * G * tank.size.height;
        const flow = flowOf(jetWay(line, agitator, parts[0], liquid, 0)!, over) * (1 - OFF);
        const seen = factorTerms(agitator.flowAtOneBar, liquid).square * flow ** 2;
        for (const part of parts)
          if (part !== undefined && 'maxPressure' in part) most = Math.min(most, 1 - seen / part.maxPressure);
      }
      return most < 0 ? -1 : Math.min(cap, marginStep(most));
    },
  };
}

/** From the manifold into the tank through an eductor. */
export function inductionAsk(facts: CoreFacts, line: LayoutLine): TrimAsk {
  const { pieces, tank, cap } = facts;
  const back = portOf(tank, 'return');
  return {
    joints: back === undefined ? '-' : portKey(back),
    key: '',
    classOf: portClass,
    laid: ([valve, eductor]) => {
      if (valve === undefined && eductor === undefined) return { adds: NOTHING, end: undefined };
      const into = portOf(valve, 'in');
      const between = pieces.joint(portOf(valve, 'out'), portOf(eductor, 'in'), 0);
      const out = portOf(eductor, 'out');
      if (into === undefined || between === undefined || out === undefined) return undefined;
      const last = intoTank(pieces, out, back);
      if (last === undefined) return undefined;
      const drawn = pieces.outside(portOf(eductor, 'suction'), 'female', 0);
      return {
        adds: plus(between.adds, last.adds, drawn?.adds ?? NOTHING),
        end: {
          line: line.id,
          port: into,
          bends: line.elbows ?? 0,
          elbows: [between.elbow, last.elbow].flatMap((e) => e ?? []),
        },
      };
    },
    margins: () => () => cap,
  };
}

/** From the end of a line to the tank's own port, or through its wall where it has none. */
function intoTank(pieces: Pieces, out: Port, back: Port | undefined): MadeJoint | undefined {
  return back === undefined ? pieces.throughWall(out, out, undefined, 0) : pieces.joint(out, back, 0);
}
