import type { Group } from './core-types.ts';
import type { SearchSpace } from './space.ts';

/** The groups of a space: slots whose parts meet the rest of a rig in few things only. */
export function trimGroups({ layout, slots }: SearchSpace): readonly Group[] {
  const has = new Set(slots.map((s) => s.id));
  const lineWith = (slot: string) => layout.lines.find((l) => l.run.includes(slot));
  const suction = layout.lines.find((l) => l.from === 'tank');
  const groups: Group[] = [
    { id: 'suction', slots: suction?.run ?? [], line: suction },
    { id: 'return', slots: ['regulator', 'return-hose'], line: lineWith('regulator') },
    { id: 'agitation', slots: ['agitation-valve', 'agitator'], line: lineWith('agitator') },
    { id: 'induction', slots: ['eductor-valve', 'eductor'], line: lineWith('eductor') },
    { id: 'gauge', slots: ['gauge'], line: undefined },
    { id: 'battery', slots: ['battery'], line: undefined },
  ];
  return groups.filter((g) => g.slots.length > 0 && g.slots.every((s) => has.has(s)));
}
