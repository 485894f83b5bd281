import { idealOf, type Completion, type Core, type Group } from './core-types.ts';
import type { Parting } from './core.ts';
import { marginStep, type Figures } from './figures.ts';
import { flowSpare } from './flow-spare.ts';
import { NOTHING, plus } from './money.ts';
import { unbeaten, type Trim, type TrimFront } from './trims.ts';

/** Groups with a line that meets the others at the manifold. */
const MEETING: ReadonlySet<Group['id']> = new Set<Group['id']>(['return', 'agitation', 'induction']);

export type Keep = (best: Figures) => boolean;

/** The best ways to fill the groups of a core, as far as bounds can tell one from another. */
export function bestWays(parting: Parting, core: Core, keep: Keep): Completion[] {
  const at = parting.groups.map((g) => g.id);
  const { fronts } = core;
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
  const ways = (k: number, chosen: readonly TrimFront[]): void => {
    const next = meeting[k];
    if (next !== undefined) return next.f.forEach((front) => ways(k + 1, [...chosen, front]));
    const node = parting.joints.node(
      core,
      chosen.flatMap((c) => c.end ?? []),
    );
    if (node === undefined) return;
    const start = plus(core.adds, node);
    let list: Completion[] = [{ parts: [], groups: [], ...start, margin: core.margin }];
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
      list = joined(list, trims, withLater);
    }
    for (const c of list) met.push(c);
  };
  ways(0, []);
  for (const c of inOrder(met)) {
    // The main takes long to reckon: not for what would be sifted out even with all the spare that it may have.
    if (open.some((o) => coversAll(o, c))) continue;
    const margin = Math.min(c.margin, mainSpare(parting, core, ids, c.groups));
    if (margin >= 0 && passes({ ...c, margin })) open.push({ ...c, margin });
  }
  open = unbeaten(open);
  for (const [k, { f }] of others.entries()) {
    restCents -= rest[k]!.cents;
    restMass -= rest[k]!.mass;
    const trims = f.flatMap((x) => x.trims);
    open = joined(open, trims, passes);
    // What a pump moves hangs on what stands behind it, and what it gives on its suction line.
    if (at[order[meeting.length + k]!] === 'suction')
      open = open.flatMap((c) => {
        const margin = Math.min(c.margin, mainSpare(parting, core, ids, c.groups));
        return margin >= 0 && passes({ ...c, margin }) ? [{ ...c, margin }] : [];
      });
    open = unbeaten(open);
  }
  return open.map((c) => ({ ...c, groups: parting.groups.map((_, i) => c.groups[order.indexOf(i)]!) }));
}

/** Whether a group has a line that meets the others at the manifold. */
export function meetsAtManifold({ id }: Group): boolean {
  return MEETING.has(id);
}

/** Most spare of what hangs on the main's pressure and on the pump, as far as groups are joined in an order. */
export function mainSpare(
  { cap }: Parting,
  core: Core,
  order: readonly Group['id'][],
  groups: readonly Trim[],
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

/** Every way joined with every trim that a test lets through. */
function joined(
  list: readonly Completion[],
  trims: readonly Trim[],
  passes: (t: Omit<Trim, 'parts'>) => boolean,
): Completion[] {
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
