import type { Part, LayoutLine } from '../../catalogue/index.ts';
import { RETURN_HOSE, SUCTION_HOSE } from '../design/rest-of-rig.ts';
import { lineHose } from '../design/line-options.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import type { Rig, RigLine } from '../rig-document.ts';
import type { PartAt, SearchSpace } from './space.ts';

const lengths = new WeakMap<SearchSpace['brief'], WeakMap<SearchSpace['layout'], Map<string, number>>>();

/** Length that a hose of a slot is cut to, whatever its part: the brief decides it [m]. */
export function hoseLength({ layout, brief }: Pick<SearchSpace, 'layout' | 'brief'>, slot: string): number {
  let ofBrief = lengths.get(brief);
  if (ofBrief === undefined)
    lengths.set(brief, (ofBrief = new WeakMap<typeof layout, Map<string, number>>()));
  let known = ofBrief.get(layout);
  if (known === undefined) ofBrief.set(layout, (known = new Map<string, number>()));
  let length = known.get(slot);
  if (length === undefined) known.set(slot, (length = lengthOf(layout, brief, slot)));
  return length;
}

function lengthOf(layout: SearchSpace['layout'], brief: SearchSpace['brief'], slot: string): number {
  if (slot === 'return-hose') return RETURN_HOSE;
  const line = usedOutlets(layout, brief).find((l) => l.run.includes(slot));
  if (line === undefined) return SUCTION_HOSE;
  const duties = brief.duties.filter((d) => (d.open as readonly string[]).includes(line.opens));
  return lineHose(brief, line, duties);
}

/** How often a part stands in its slot: nozzles as often as the boom has places for them. */
export function timesOf(part: Part, partAt: PartAt): number {
  if (part.kind !== 'nozzle') return 1;
  const boom = partAt('boom');
  return boom?.kind === 'boom' ? boom.nozzles : 1;
}

/**
 * Some slots of a space as a rig of their own: enough of one for what looks at parts and their joints only. It has no
 * settings, and is never proven.
 */
export function partRig(
  space: SearchSpace,
  partAt: PartAt,
  slots: readonly string[],
  lines: readonly LayoutLine[],
): Rig {
  const items: [string, Rig['items'] extends ReadonlyMap<string, infer T> ? T : never][] = [];
  for (const id of slots) {
    const part = partAt(id);
    if (part === undefined) continue;
    const length =
      part.kind === 'hose' ? { length: Math.ceil(hoseLength(space, id) / 0.3048 - 1e-6) * 0.3048 } : {};
    items.push([id, { item: { id, part: part.id, count: timesOf(part, partAt), ...length }, part }]);
  }
  const present = new Set(items.map(([id]) => id));
  const runs = lines.flatMap((line): RigLine[] => {
    const run = line.run.filter((id) => present.has(id));
    if (run.length === 0) return [];
    const { elbows = 0, teesRun = 0, teesBranch = 0 } = line;
    return [{ ...line, run, elbows, teesRun, teesBranch }];
  });
  const { brief, layout } = space;
  return {
    document: {
      format: 'spraywright-rig',
      id: brief.id,
      title: brief.title,
      layout: layout.id,
      brief,
      items: items.map(([, { item }]) => item),
      ownParts: [],
      nodes: Object.entries(layout.nodes).map(([id, height]) => ({ id, height })),
      lines: runs,
    },
    brief,
    items: new Map(items),
    lines: runs,
    ownParts: new Map(),
  };
}
