import { galvanicPairs, isLiquid, liquidOf, materialOf, type GalvanicPair } from '../../liquids/index.ts';
import type { RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { decisionOn } from './decision.ts';

const METHOD = 'potentials of metals that are joined in a liquid';
const SOURCE =
  'ASM Handbook Vol. 13, galvanic series in sea water (reproduced); limits by liquid: MIL-STD-889 (recalled), 0.20 V seen elsewhere';

interface Joined {
  readonly pair: GalvanicPair;
  readonly items: readonly [string, string];
  readonly names: string;
  readonly liquid: string;
}

/** Different metals side by side in one liquid: the baser of them is eaten. A hose between them parts them. */
export function metalPromises(context: ProofContext): RigPromise[] {
  const liquids = [...new Set(context.rig.brief.liquids.map((l) => l.liquid).filter(isLiquid))];
  const neighbours = neighboursOf(context);
  if (neighbours.length === 0 || liquids.length === 0) return [];
  const warned = new Map<string, Joined>();
  for (const { items, names, metals } of neighbours)
    for (const liquid of liquids)
      for (const [a, b] of metals)
        for (const pair of pairIn(a, b, liquid)) {
          const id = decisionId(pair, liquid);
          if (!warned.has(id)) warned.set(id, { pair, items, names, liquid });
        }
  const told = {
    id: 'materials:metals',
    kind: 'materials' as const,
    sense: 'at-least' as const,
    method: METHOD,
    source: SOURCE,
  };
  if (warned.size === 0)
    return [
      {
        ...told,
        state: 'kept',
        sentence: 'Metals that are joined do not eat each other',
        cause: `${neighbours.length} joints of metal parts without a hose between them`,
        items: [],
        working: [],
      },
    ];
  const { brief } = context.rig;
  const open = [...warned].filter(([id]) => decisionOn(brief, id) === undefined);
  const all = [...warned.values()];
  return [
    {
      ...told,
      state: open.length > 0 ? 'unknown' : 'thin',
      sentence:
        open.length === 0
          ? 'Unlike metals side by side are accepted by name'
          : `${open.length} ${open.length === 1 ? 'pair of unlike metals asks' : 'pairs of unlike metals ask'} for a decision`,
      cause: reasonOf((open[0]?.[1] ?? all[0])!),
      items: [...new Set(all.flatMap((w) => w.items))],
      working: [...warned].slice(0, 40).map(([id, w]) => {
        const d = decisionOn(brief, id);
        return {
          text: `${reasonOf(w)}${d === undefined ? '' : `. Accepted by ${d.who}, ${d.when}: ${d.why}`}`,
        };
      }),
      ...(open.length > 0 ? { decisions: open.map(([id]) => id) } : {}),
    },
  ];
}

function reasonOf({ names, pair, liquid }: Joined): string {
  return `${names}, in ${liquidOf(liquid).name}: ${pair.reason}`;
}

/** Decisions are recorded for two metals in a liquid, wherever they meet. */
function decisionId({ a, b }: GalvanicPair, liquid: string): string {
  return `metals:${[a, b].sort().join(':')}:${liquid}`;
}

const known = new Map<string, readonly GalvanicPair[]>();

function pairIn(a: string, b: string, liquid: string): readonly GalvanicPair[] {
  const key = `${a} ${b} ${liquid}`;
  let found = known.get(key);
  if (found === undefined) known.set(key, (found = galvanicPairs([a, b], liquid)));
  return found;
}

const metalsKnown = new Map<string, boolean>();

function isMetal(material: string): boolean {
  let metal = metalsKnown.get(material);
  if (metal === undefined) metalsKnown.set(material, (metal = isKnownMetal(material)));
  return metal;
}

/** A material that is in no table is told among the materials, not here. */
function isKnownMetal(material: string): boolean {
  try {
    return materialOf(material).galvanic !== undefined;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

interface Neighbours {
  readonly items: readonly [string, string];
  readonly names: string;
  readonly metals: readonly (readonly [string, string])[];
}

/** Parts that follow each other in a line and both touch the liquid with metal, unlike ones only. */
function neighboursOf(context: ProofContext): Neighbours[] {
  const out: Neighbours[] = [];
  for (const { run } of context.rig.lines)
    for (let i = 1; i < run.length; i++) {
      const [first, second] = [run[i - 1]!, run[i]!];
      const [a, b] = [context.rig.items.get(first)!.part, context.rig.items.get(second)!.part];
      const metals = a.wetted.flatMap((x) =>
        b.wetted.flatMap((y) =>
          x.material !== y.material && isMetal(x.material) && isMetal(y.material)
            ? [[x.material, y.material] as const]
            : [],
        ),
      );
      if (metals.length > 0) out.push({ items: [first, second], names: `${a.name} on ${b.name}`, metals });
    }
  return out;
}
