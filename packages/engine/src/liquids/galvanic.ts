import { inRange } from '../physics/index.ts';
import { GALVANIC_RULES, type GalvanicRule } from './galvanic.data.ts';
import { liquidOf, materialOf } from './liquid-of.ts';
import type { MaterialId } from './materials.data.ts';
import type { SourceId } from './sources.data.ts';

/** Anode over cathode area below which any difference over the limit is bad. */
const SMALL_ANODE = 0.1;

/**
 * Potential difference of two metals in contact in a liquid.
 *
 * @formula ΔE = |E_a - E_b|
 * @param potentialA potential of the first metal in sea water [V] -2..1
 * @param potentialB potential of the second metal, same series [V] -2..1
 * @returns difference [V]
 * @valid a series in sea water ranks metals; it does not tell a rate, and other series differ by 0.05-0.2 V
 * @throws RangeError when a parameter is outside its range
 * @source ASM Handbook Vol. 13, galvanic series in flowing sea water (reproduced)
 */
export function galvanicDifference(potentialA: number, potentialB: number): number {
  inRange('potentialA', potentialA, -2, 1, 'V');
  inRange('potentialB', potentialB, -2, 1, 'V');
  return Math.abs(potentialA - potentialB);
}

/**
 * Which of two metals in contact is eaten: the one of lower potential.
 *
 * @formula anode: 1 when E_a < E_b, 2 when E_b < E_a, 0 when they are equal
 * @param potentialA potential of the first metal in sea water [V] -2..1
 * @param potentialB potential of the second metal, same series [V] -2..1
 * @returns 1 for the first, 2 for the second, 0 for neither [-]
 * @throws RangeError when a parameter is outside its range
 * @source ASM Handbook Vol. 13, galvanic series in flowing sea water (reproduced)
 */
export function galvanicAnode(potentialA: number, potentialB: number): 0 | 1 | 2 {
  galvanicDifference(potentialA, potentialB);
  if (potentialA === potentialB) return 0;
  return potentialA < potentialB ? 1 : 2;
}

/** Two metals that touch in a liquid. */
export interface GalvanicPair {
  readonly a: MaterialId;
  readonly b: MaterialId;
  /** [V]; undefined when a potential is not known. */
  readonly difference: number | undefined;
  /** The metal that is eaten. */
  readonly anode: MaterialId | undefined;
  readonly limit: number;
  readonly verdict: 'fine' | 'warn' | 'no-data';
  /** True when the anode is so small that the attack is concentrated. */
  readonly smallAnode: boolean;
  readonly reason: string;
  readonly sources: readonly SourceId[];
}

/**
 * Whether two metals may touch in a liquid.
 *
 * @throws RangeError for an unknown liquid or material, or a material that is no metal.
 */
export function galvanicPair(q: {
  readonly a: string;
  readonly b: string;
  readonly liquid: string;
  /** Crevices, deposits or standing chloride: stainless steel is taken at its active potential. Default: true in chloride, bleach and acid. */
  readonly crevices?: boolean | undefined;
  /** Wetted area of `a` over that of `b`. */
  readonly areaRatio?: number | undefined;
}): GalvanicPair {
  const [a, b] = [metal(q.a), metal(q.b)];
  if (q.areaRatio !== undefined) inRange('areaRatio', q.areaRatio, 1e-6, 1e6);
  const rule = ruleFor(q.liquid);
  const active = q.crevices ?? rule === GALVANIC_RULES[0];
  const potential = (m: typeof a) =>
    active ? (m.galvanic.activePotential ?? m.galvanic.potential) : m.galvanic.potential;
  const [ea, eb] = [potential(a), potential(b)];
  const base = { a: a.id, b: b.id, limit: rule.limit };
  if (ea === undefined || eb === undefined) {
    const missing = ea === undefined ? a : b;
    const reason = `no potential of ${missing.name} was found; ${missing.galvanic.remark}`;
    return {
      ...base,
      difference: undefined,
      anode: undefined,
      verdict: 'no-data',
      smallAnode: false,
      reason,
      sources: [],
    };
  }
  const difference = galvanicDifference(ea, eb);
  const anode = a.id === b.id ? 0 : galvanicAnode(ea, eb);
  const anodeShare =
    q.areaRatio === undefined || anode === 0 ? undefined : anode === 1 ? q.areaRatio : 1 / q.areaRatio;
  const warn = a.id !== b.id && difference > rule.limit;
  const eaten = anode === 0 ? undefined : anode === 1 ? a : b;
  const smallAnode = warn && anodeShare !== undefined && anodeShare < SMALL_ANODE;
  const taken = active && [a, b].some((m) => m.galvanic.activePotential !== undefined);
  const reason = [
    `${a.name} at ${ea} V, ${b.name} at ${eb} V${taken ? ' (stainless taken as active)' : ''}: ${difference.toFixed(2)} V against ${rule.limit} V for ${rule.liquids}`,
    ...(warn && eaten !== undefined
      ? [`${eaten.name} is eaten: part them with an insulating joint or change one`]
      : []),
    ...(smallAnode ? ['its area is under a tenth of the other: the attack is concentrated'] : []),
  ].join('; ');
  return {
    ...base,
    difference,
    anode: eaten?.id,
    verdict: warn ? 'warn' : 'fine',
    smallAnode,
    reason,
    sources: [...new Set<SourceId>([...a.galvanic.sources, ...b.galvanic.sources, rule.source])],
  };
}

/** Every pair of different metals of a list that is warned of or not known, in a liquid. */
export function galvanicPairs(materials: readonly string[], liquid: string): readonly GalvanicPair[] {
  const metals = [...new Set(materials)].filter((id) => materialOf(id).galvanic !== undefined);
  const pairs: GalvanicPair[] = [];
  metals.forEach((a, i) => {
    for (const b of metals.slice(i + 1)) pairs.push(galvanicPair({ a, b, liquid }));
  });
  return pairs.filter((p) => p.verdict !== 'fine');
}

/**
 * Copper that dissolves upstream plates out on aluminium downstream and pits it: 20 µg/L is enough.
 *
 * @param materials wetted materials in the order the liquid meets them.
 * @returns a sentence when brass stands upstream of aluminium, otherwise undefined.
 */
export function brassUpstreamOfAluminium(materials: readonly string[]): string | undefined {
  const brass = materials.findIndex((id) => materialOf(id).id === 'brass');
  const aluminium = materials.findLastIndex((id) => materialOf(id).id.startsWith('al_'));
  if (brass < 0 || aluminium < brass) return undefined;
  return 'Brass stands upstream of aluminium: copper dissolved from it pits the aluminium, 20 µg/L is enough.';
}

function ruleFor(liquid: string): GalvanicRule {
  const { groups } = liquidOf(liquid);
  const rule = GALVANIC_RULES.find((r) => r.groups.length === 0 || r.groups.some((g) => groups.includes(g)));
  if (rule === undefined) throw new RangeError(`no galvanic rule fits ${liquid}`);
  return rule;
}

function metal(id: string) {
  const material = materialOf(id);
  const { galvanic } = material;
  if (galvanic === undefined)
    throw new RangeError(`material is '${id}'; only metals have a galvanic potential`);
  return { ...material, galvanic };
}
