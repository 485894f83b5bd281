import type { Layout } from '../../catalogue/index.ts';
import type { Choice } from './front.ts';

/** Kinds of parts that make one rig another: whoever buys it sees them. The rest are joints, valves and small hoses. */
const TELLING: ReadonlySet<string> = new Set([
  'carrier',
  'tank',
  'pump',
  'motor-pump',
  'engine',
  'pto-drive',
  'reel',
  'gun',
  'boom',
]);
/** As many as a person compares at a sitting: common practice, no source. */
const MOST_GROUPS = 12;

/** Choices with the same parts where a buyer sees them; they differ in valves, hoses, tips and the like. */
export interface ChoiceGroup {
  /** The cheapest of them. */
  readonly choice: Choice;
  /** How many there are, that one included. */
  readonly alike: number;
  /** Its part in each telling slot, by slot. */
  readonly parts: Readonly<Record<string, string>>;
}

/**
 * Puts choices together that do not differ in kind, and keeps about a dozen: the best of each figure, then the cheapest
 * of those that are left, evenly through their prices.
 *
 * @returns groups, cheapest first, and how many groups are not among them
 */
export function groupsOf(
  choices: readonly Choice[],
  layouts: readonly Layout[],
): {
  readonly groups: readonly ChoiceGroup[];
  readonly more: number;
} {
  const byParts = new Map<string, { choice: Choice; alike: number; parts: Record<string, string> }>();
  for (const choice of choices) {
    const parts = tellingParts(choice, layouts);
    const key = JSON.stringify(parts);
    const known = byParts.get(key);
    if (known === undefined) byParts.set(key, { choice, alike: 1, parts });
    else known.alike++;
  }
  const all = [...byParts.values()];
  if (all.length <= MOST_GROUPS) return { groups: all, more: 0 };
  const best = (value: (group: ChoiceGroup) => number) => all.reduce((a, b) => (value(b) < value(a) ? b : a));
  const kept = new Set<ChoiceGroup>([
    best((g) => g.choice.figures.priceCents),
    best((g) => g.choice.figures.mass),
    best((g) => -g.choice.figures.margin),
    best((g) => g.choice.figures.days),
  ]);
  const rest = all.filter((g) => !kept.has(g));
  const wanted = MOST_GROUPS - kept.size;
  for (let i = 0; i < wanted; i++) kept.add(rest[Math.floor((i * rest.length) / wanted)]!);
  return { groups: all.filter((g) => kept.has(g)), more: all.length - kept.size };
}

function tellingParts({ rig }: Choice, layouts: readonly Layout[]): Record<string, string> {
  const slots = layouts.find((l) => l.id === rig.layout)?.slots ?? [];
  return Object.fromEntries(
    slots.flatMap(({ id, kinds }): [string, string][] => {
      const item = rig.items.find((i) => i.id === id);
      return item !== undefined && kinds.some((k) => TELLING.has(k)) ? [[id, item.part]] : [];
    }),
  );
}
