import {
  jointFinder,
  narrowestOf,
  oncePerPorts,
  ratingOf,
  type Catalogue,
  type JointFinder,
  type Part,
  type PartOf,
  type Port,
} from '../../catalogue/index.ts';

/** What plumbing is made of: the fittings of a catalogue that may be used, by what they are for. */
export interface Supply {
  /** Cheapest chain between two ports. */
  readonly join: JointFinder;
  /** The same with one elbow in it. */
  readonly joinRound: JointFinder;
  /** Fittings that part a line: tees and manifolds. */
  readonly branches: readonly PartOf<'fitting'>[];
  readonly bulkheads: readonly PartOf<'fitting'>[];
  readonly caps: readonly PartOf<'fitting'>[];
  /** Ball valves that a line is drained through. */
  readonly drains: readonly PartOf<'valve'>[];
  /** Clamps, straps, wire and the like: no liquid touches them. */
  readonly hardware: readonly PartOf<'hardware'>[];
  /** The least rating of the supply that stands a pressure: all pressures up to it have one answer [Pa]. */
  readonly level: (pressure: number) => number;
  /** Makes an answer once: a search or a page asks the same of one supply thousands of times. */
  readonly once: <T>(question: string, make: () => T) => T;
}

/**
 * The fittings of a catalogue as plumbing asks for them.
 *
 * @param allowed whether a part may be used at all: its wetted materials against the rig's liquids
 */
export function supplyOf(catalogue: Catalogue, allowed: (part: Part) => boolean): Supply {
  const fittings = catalogue.byKind.fitting.filter(allowed);
  const drains = catalogue.byKind.valve.filter(
    (v) => allowed(v) && v.form.startsWith('ball-') && v.ports.length === 2,
  );
  const ratings = [...new Set([...fittings.map(ratingOf), ...drains.map((d) => d.maxPressure)])].sort(
    (a, b) => a - b,
  );
  const level = (pressure: number) => ratings.find((r) => r >= pressure) ?? Infinity;
  const join = jointFinder(catalogue, allowed);
  const answers = new Map<string, unknown>();
  const once = <T>(question: string, make: () => T): T => {
    if (!answers.has(question)) answers.set(question, make());
    return answers.get(question) as T;
  };
  const elbows = fittings.filter((f) => f.form === 'elbow' && f.ports.length === 2);
  return {
    join,
    joinRound: oncePerPorts(ratings, (from, to, pressure) => withElbow(join, elbows, from, to, pressure)),
    branches: fittings.filter((f) => (f.form === 'tee' || f.form === 'manifold') && f.ports.length > 2),
    bulkheads: fittings.filter((f) => f.form === 'bulkhead' && f.ports.length === 2),
    caps: fittings.filter((f) => f.form === 'cap' && f.ports.length === 1),
    drains,
    hardware: catalogue.byKind.hardware,
    level,
    once,
  };
}

/** One way to do it: its price, and how many joints can leak. */
export interface Way {
  readonly priceCents: number;
  readonly joints: number;
}

/** Cheapest of several ways; at equal price the one with fewest joints, since every joint can leak. */
export function cheapest<T extends Way>(ways: readonly T[]): T | undefined {
  return ways.reduce<T | undefined>(
    (best, way) =>
      best === undefined ||
      way.priceCents < best.priceCents ||
      (way.priceCents === best.priceCents && way.joints < best.joints)
        ? way
        : best,
    undefined,
  );
}

/** What parts and the joints between them cost together; undefined when one of the joints cannot be made. */
export function wayOf(parts: readonly Part[], joints: readonly ReturnType<JointFinder>[]): Way | undefined {
  let priceCents = parts.reduce((sum, p) => sum + p.priceCents, 0);
  let count = 0;
  for (const joint of joints) {
    if (!joint.ok) return undefined;
    for (const piece of joint.pieces) priceCents += piece.priceCents;
    count += joint.pieces.length + 1;
  }
  return { priceCents, joints: count };
}

function withElbow(
  join: JointFinder,
  elbows: readonly PartOf<'fitting'>[],
  from: Port,
  to: Port,
  pressure: number,
): ReturnType<JointFinder> {
  const narrowest = narrowestOf(from, to);
  const best = cheapest(
    elbows.flatMap((elbow) => {
      if (ratingOf(elbow) < pressure || elbow.ports.some((p) => p.size < narrowest)) return [];
      const [a, b] = [elbow.ports[0]!, elbow.ports[1]!];
      return [[a, b] as const, [b, a] as const].flatMap(([enter, leave]) => {
        const before = join(from, enter, pressure);
        const after = join(leave, to, pressure);
        const way = wayOf([elbow], [before, after]);
        if (way === undefined || !before.ok || !after.ok) return [];
        return [{ ...way, pieces: [...before.pieces, elbow, ...after.pieces] }];
      });
    }),
  );
  return best === undefined
    ? { ok: false, gap: 'no elbow in the catalogue fits' }
    : { ok: true, pieces: best.pieces };
}
