import { idealOf, type Completion, type Core, type Group } from './core-types.ts';
import type { Parting } from './core.ts';
import { marginStep, type Figures } from './figures.ts';
import { flowSpare } from './flow-spare.ts';
import { NOTHING, plus } from './money.ts';
import { unbeaten, type Trim, type TrimFront } from './trims.ts';

/** Groups with a line that meets the others at the manifold. */
const MEETING: ReadonlySet<Group['id']> = new Set<Group['id']>(['return', 'agitation', 'induction']);

type Keep = (best: Figures) => boolean;

/** The best ways to fill the groups of a core, as far as bounds can tell one from another. */
export function bestWays(parting: Parting, core: Core, keep: Keep): Completion[] {
  return joinedUp(parting, core, core.fronts, keep, unbeaten, Infinity)!;
}

/**
 * All ways to fill the groups of a core that a test lets through. A way is left out only by what the test says of it,
 * never because another one has better bounds: that other one may turn out to break a promise. Only a gauge is chosen
 * by its figures alone, since no promise reads it. Undefined when they are too many to go through.
 */
export function allWays(parting: Parting, core: Core, keep: Keep, most: number): Completion[] | undefined {
  const ideals = core.fronts.map((fronts) => idealOf(fronts));
  const fronts: (readonly TrimFront[])[] = [];
  for (const [i, list] of core.fronts.entries()) {
    const left = leftOf(parting, core, list, i, ideals, keep, most);
    if (left === undefined) return undefined;
    if (left.length === 0) return [];
    fronts.push(left);
  }
  return joinedUp(parting, core, fronts, keep, inOrder, most);
}

/** The ways of one group that a test lets through with the best of all other groups; undefined when they are too many. */
function leftOf(
  parting: Parting,
  core: Core,
  list: readonly TrimFront[],
  place: number,
  ideals: readonly Omit<Trim, 'parts'>[],
  keep: Keep,
  most: number,
): TrimFront[] | undefined {
  const others = ideals.filter((_, k) => k !== place);
  const base = plus(core.adds, core.node, ...others);
  const margin = Math.min(core.margin, ...others.map((o) => o.margin));
  const passes = (t: Omit<Trim, 'parts'>) =>
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
        : f.table.where(f.margin, passes, (cents) => !passes({ ...least, cents }), parting.cap, most);
    if (trims === undefined) return undefined;
    if (trims.length > 0) left.push({ ...f, trims });
  }
  return left;
}

/** Groups joined one after another; undefined when at some point more than some number of ways are open. */
function joinedUp(
  parting: Parting,
  core: Core,
  fronts: readonly (readonly TrimFront[])[],
  keep: Keep,
  sift: (list: Completion[]) => Completion[],
  most: number,
): Completion[] | undefined {
  const at = parting.groups.map((g) => g.id);
  const meeting = fronts.flatMap((f, i) => (MEETING.has(at[i]!) ? [{ f, i }] : []));
  const others = fronts.flatMap((f, i) => (MEETING.has(at[i]!) ? [] : [{ f, i }]));
  const rest = others.map(({ f }) => idealOf(f));
  let restCents = rest.reduce((s, r) => s + r.cents, 0);
  let restMass = rest.reduce((s, r) => s + r.mass, 0);
  const passes = (t: Omit<Trim, 'parts'>) =>
    keep(parting.figures(t.cents + restCents, t.mass + restMass, t.late, t.margin));
  const met: Completion[] = [];
  let open: Completion[] = [];
  const order = [...meeting, ...others].map(({ i }) => i);
  const ids = order.map((i) => at[i]!);
  /** False when they are too many. */
  const ways = (k: number, chosen: readonly TrimFront[]): boolean => {
    const next = meeting[k];
    if (next !== undefined) return next.f.every((front) => ways(k + 1, [...chosen, front]));
    const node = parting.joints.node(
      core,
      chosen.flatMap((c) => c.end ?? []),
    );
    if (node === undefined) return true;
    const start = plus(core.adds, node);
    let list: Completion[] | undefined = [{ parts: [], groups: [], ...start, margin: core.margin }];
    for (const [at, { trims }] of chosen.entries()) {
      const later = chosen.slice(at + 1).map((f) => idealOf([f]));
      const more = later.reduce((sum, l) => plus(sum, l), NOTHING);
      const spare = Math.min(...later.map((l) => l.margin));
      const withLater = (t: Omit<Trim, 'parts'>) =>
        passes({
          cents: t.cents + more.cents,
          mass: t.mass + more.mass,
          late: Math.max(t.late, more.late),
          margin: Math.min(t.margin, spare),
        });
      list = joined(list, trims, withLater, most - met.length);
      if (list === undefined) return false;
    }
    for (const c of list) met.push(c);
    return true;
  };
  if (!ways(0, [])) return undefined;
  for (const c of inOrder(met)) {
    // The main takes long to reckon: not for what would be sifted out even with all the spare that it may have.
    if (sift === unbeaten && open.some((o) => coversAll(o, c))) continue;
    const margin = Math.min(c.margin, mainSpare(parting, core, ids, c));
    if (margin >= 0 && passes({ ...c, margin })) open.push({ ...c, margin });
  }
  open = sift(open);
  for (const [k, { f }] of others.entries()) {
    restCents -= rest[k]!.cents;
    restMass -= rest[k]!.mass;
    const trims = f.flatMap((x) => x.trims);
    const more = joined(open, trims, passes, most);
    if (more === undefined) return undefined;
    open = more;
    // What a pump moves hangs on what stands behind it, and what it gives on its suction line.
    if (at[order[meeting.length + k]!] === 'suction')
      open = open.flatMap((c) => {
        const margin = Math.min(c.margin, mainSpare(parting, core, ids, c));
        return margin >= 0 && passes({ ...c, margin }) ? [{ ...c, margin }] : [];
      });
    open = sift(open);
  }
  return open.map((c) => ({ ...c, groups: parting.groups.map((_, i) => c.groups[order.indexOf(i)]!) }));
}

/** Most spare of what hangs on the main's pressure and on the pump, as far as groups are joined in an order. */
function mainSpare(
  { cap }: Parting,
  core: Core,
  order: readonly Group['id'][],
  { groups }: Completion,
): number {
  const part = (id: Group['id'], k: number) => groups[order.indexOf(id)]?.parts[k];
  const most = flowSpare(core, {
    regulator: part('return', 0),
    returnHose: part('return', 1),
    agitator: part('agitation', 1),
    agitationValve: part('agitation', 0),
    eductor: part('induction', 1),
    eductorValve: part('induction', 0),
    suction: groups[order.indexOf('suction')]?.parts ?? [],
  });
  return most < 0 ? -1 : Math.min(cap, marginStep(most));
}

/** Every way joined with every trim that a test lets through; undefined when they are more than some number. */
function joined(
  list: readonly Completion[],
  trims: readonly Trim[],
  passes: (t: Omit<Trim, 'parts'>) => boolean,
  most: number,
): Completion[] | undefined {
  const out: Completion[] = [];
  for (const c of list)
    for (const t of trims) {
      const next = {
        parts: [],
        groups: c.groups,
        cents: c.cents + t.cents,
        mass: c.mass + t.mass,
        late: Math.max(c.late, t.late),
        margin: Math.min(c.margin, t.margin),
      };
      if (!passes(next)) continue;
      if (out.length >= most) return undefined;
      out.push({ ...next, groups: [...c.groups, t] });
    }
  return out;
}

/** Whether one is as good as another in everything. */
function coversAll(a: Completion, b: Completion): boolean {
  return a.cents <= b.cents && a.mass <= b.mass && a.late <= b.late && a.margin >= b.margin;
}

function inOrder(list: Completion[]): Completion[] {
  return list.sort((a, b) => a.cents - b.cents || a.mass - b.mass || b.margin - a.margin || a.late - b.late);
}
