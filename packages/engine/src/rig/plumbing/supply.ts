import {
  jointFinder,
  narrowestOf,
  ratingOf,
  type Catalogue,
  type Joint,
  type JointFinder,
  type Part,
  type PartOf,
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
  /** Ball valves that a line is drained through, cheapest first. */
  readonly drains: readonly PartOf<'valve'>[];
}

/**
 * The fittings of a catalogue as plumbing asks for them.
 *
 * @param allowed whether a part may be used at all: its wetted materials against the rig's liquids
 */
export function supplyOf(catalogue: Catalogue, allowed: (part: Part) => boolean): Supply {
  const fittings = catalogue.byKind.fitting.filter(allowed);
  const join = jointFinder(catalogue, allowed);
  return {
    join,
    joinRound: withElbow(
      join,
      fittings.filter((f) => f.form === 'elbow' && f.ports.length === 2),
    ),
    branches: fittings.filter((f) => (f.form === 'tee' || f.form === 'manifold') && f.ports.length > 2),
    bulkheads: fittings.filter((f) => f.form === 'bulkhead' && f.ports.length === 2),
    caps: fittings.filter((f) => f.form === 'cap' && f.ports.length === 1),
    drains: catalogue.byKind.valve
      .filter((v) => allowed(v) && v.form.startsWith('ball-') && v.ports.length === 2)
      .sort((a, b) => a.priceCents - b.priceCents),
  };
}

export function priceOf(pieces: readonly { readonly priceCents: number }[]): number {
  return pieces.reduce((sum, p) => sum + p.priceCents, 0);
}

/** Cheapest of several ways; at equal price the one with fewest joints, since every joint can leak. */
export function cheapest<T extends { readonly priceCents: number; readonly joints: number }>(
  ways: readonly T[],
): T | undefined {
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

function withElbow(join: JointFinder, elbows: readonly PartOf<'fitting'>[]): JointFinder {
  const remembered = new Map<string, Joint>();
  return (from, to, pressure) => {
    const key = [from.joint, from.size, from.gender, to.joint, to.size, to.gender, pressure].join(' ');
    let joint = remembered.get(key);
    if (joint === undefined) {
      const narrowest = narrowestOf(from, to);
      const ways = elbows.flatMap((elbow) => {
        if (ratingOf(elbow) < pressure || elbow.ports.some((p) => p.size < narrowest)) return [];
        const [a, b] = [elbow.ports[0]!, elbow.ports[1]!];
        return [
          [a, b],
          [b, a],
        ].flatMap(([enter, leave]) => {
          const before = join(from, enter!, pressure);
          const after = join(leave!, to, pressure);
          if (!before.ok || !after.ok) return [];
          const pieces = [...before.pieces, elbow, ...after.pieces];
          return [{ pieces, priceCents: priceOf(pieces), joints: pieces.length }];
        });
      });
      const best = cheapest(ways);
      joint =
        best === undefined
          ? { ok: false, gap: 'no elbow in the catalogue fits' }
          : { ok: true, pieces: best.pieces };
      remembered.set(key, joint);
    }
    return joint;
  };
}
