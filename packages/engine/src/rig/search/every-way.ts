import { idealOf, type Completion, type Core } from './core-types.ts';
import type { Parting } from './core.ts';
import { mainSpare, meetsAtManifold, type Keep } from './completions.ts';
import { NOTHING, plus } from './money.ts';
import type { Trim, TrimFront } from './trims.ts';

/** Ways to fill one group of a core that are kept at a time. */
const MOST_WAYS = 50_000;

/** How often pump, main and suction line may be reckoned yet, or a whole rig be judged. */
export interface Allowance {
  left: number;
}

/**
 * Goes through all ways to fill the groups of a core that a test lets through, one after another: what is found of one
 * may let the test refuse the next. A way is left out only by what the test says of it, never because another one has
 * better bounds: that other one may turn out to break a promise. Only a gauge is chosen by its figures alone, since no
 * promise reads it.
 *
 * @param allowance is counted down; with it spent, ways are left
 * @param use takes a way; false when no more are wanted
 * @returns false when ways are left
 */
export function everyWay(
  parting: Parting,
  core: Core,
  keep: Keep,
  allowance: Allowance,
  use: (way: Completion) => boolean,
): boolean {
  const ideals = core.fronts.map((fronts) => idealOf(fronts));
  const fronts: (readonly TrimFront[])[] = [];
  for (const [i, list] of core.fronts.entries()) {
    const left = leftOf(parting, core, list, i, ideals, keep);
    if (left === undefined) return false;
    if (left.length === 0) return true;
    fronts.push(left);
  }
  const { groups } = parting;
  const meeting = groups.flatMap((g, i) => (meetsAtManifold(g) ? [i] : []));
  const order = [...meeting, ...groups.flatMap((g, i) => (meetsAtManifold(g) ? [] : [i]))];
  const ids = order.map((i) => groups[i]!.id);
  /** Joins what may stand at each place, the least of all later ones counted, and hands on what passes. */
  const join = (k: number, way: Completion, places: Places): boolean => {
    const { at, leasts, rests } = places;
    const trims = at[k];
    if (trims === undefined)
      return (
        --allowance.left >= 0 && use({ ...way, groups: groups.map((_, i) => way.groups[order.indexOf(i)]!) })
      );
    const later = rests[k]!;
    const passes = (margin: number, cents: number, mass: number, late: number) =>
      keep(
        parting.figures(
          cents + later.cents,
          mass + later.mass,
          Math.max(late, later.late),
          Math.min(margin, later.margin),
        ),
      );
    const least = leasts[k]!;
    for (const t of trims) {
      const cents = way.cents + t.cents;
      const mass = way.mass + t.mass;
      const late = Math.max(way.late, t.late);
      let margin = Math.min(way.margin, t.margin);
      if (!passes(margin, cents, mass, late)) {
        // They stand by price: no dearer one passes where the best of the rest at this price does not.
        const best = Math.min(way.margin, least.margin);
        if (!passes(best, cents, way.mass + least.mass, Math.max(way.late, least.late))) break;
        continue;
      }
      const next = [...way.groups, t];
      // What a pump moves hangs on what stands behind it, and what it gives on its suction line.
      if (k + 1 === meeting.length || ids[k] === 'suction') {
        if (allowance.left-- <= 0) return false;
        margin = Math.min(margin, mainSpare(parting, core, ids, next));
        if (margin < 0 || !passes(margin, cents, mass, late)) continue;
      }
      if (!join(k + 1, { parts: [], groups: next, cents, mass, late, margin }, places)) return false;
    }
    return true;
  };
  const others = order.slice(meeting.length).map((i) => byPrice(fronts[i]!.flatMap((f) => f.trims)));
  /** Chooses how each group meets the others at the manifold; what joins them there is then known. */
  const choose = (k: number, chosen: readonly TrimFront[]): boolean => {
    const place = meeting[k];
    if (place !== undefined) return fronts[place]!.every((front) => choose(k + 1, [...chosen, front]));
    const node = parting.joints.node(
      core,
      chosen.flatMap((c) => c.end ?? []),
    );
    if (node === undefined) return true;
    const at = [...chosen.map((f) => byPrice(f.trims)), ...others];
    const start = { parts: [], groups: [], ...plus(core.adds, node), margin: core.margin };
    return join(0, start, placesOf(at));
  };
  return choose(0, []);
}

type Rest = Omit<Trim, 'parts'>;

/** What may stand at each place by price, the least that any of it adds, and the least of all that stands behind it. */
interface Places {
  readonly at: readonly (readonly Trim[])[];
  readonly leasts: readonly Rest[];
  readonly rests: readonly Rest[];
}

function placesOf(at: readonly (readonly Trim[])[]): Places {
  const leasts = at.map((trims) => idealOf([{ trims }]));
  const rests: Rest[] = [];
  let rest: Rest = { ...NOTHING, margin: Infinity };
  for (let k = at.length - 1; k >= 0; k--) {
    rests[k] = rest;
    const least = leasts[k]!;
    rest = { ...plus(rest, least), margin: Math.min(rest.margin, least.margin) };
  }
  return { at, leasts, rests };
}

function byPrice(trims: readonly Trim[]): Trim[] {
  return [...trims].sort((a, b) => a.cents - b.cents);
}

/** The ways of one group that a test lets through with the best of all other groups; undefined when they are too many. */
function leftOf(
  parting: Parting,
  core: Core,
  list: readonly TrimFront[],
  place: number,
  ideals: readonly Rest[],
  keep: Keep,
): TrimFront[] | undefined {
  const others = ideals.filter((_, k) => k !== place);
  const base = plus(core.adds, core.node, ...others);
  const margin = Math.min(core.margin, ...others.map((o) => o.margin));
  const passes = (t: Rest) =>
    keep(
      parting.figures(
        base.cents + t.cents,
        base.mass + t.mass,
        Math.max(base.late, t.late),
        Math.min(margin, t.margin),
      ),
    );
  const least = ideals[place]!;
  const left: TrimFront[] = [];
  for (const f of list) {
    const trims =
      parting.groups[place]!.id === 'gauge'
        ? f.trims.filter(passes)
        : f.table.where(f.margin, passes, (cents) => !passes({ ...least, cents }), parting.cap, MOST_WAYS);
    if (trims === undefined) return undefined;
    if (trims.length > 0) left.push({ ...f, trims });
  }
  return left;
}
