import type { Catalogue, Shop } from '../../catalogue/index.ts';
import type { Problem, UnitSystem } from '../../quantity/index.ts';
import { readBrief } from '../brief.ts';
import { designRig } from '../design.ts';
import { layoutsFor } from '../layouts-for.ts';
import { Bounds } from './bounds.ts';
import { Branching } from './branching.ts';
import { climb } from './climb.ts';
import { CoreSearch } from './core-search.ts';
import { Front, type Choice } from './front.ts';
import { limitsOf } from './limits.ts';
import { narrowed } from './narrow.ts';
import { Prover } from './prover.ts';
import { hasKnownFamily, partsIn, spaceOf } from './space.ts';

/** How far a search has come. */
export interface SearchProgress {
  /** Sets of parts before any is refused. */
  readonly size: number;
  /** Sets left when every part that no rig can have is gone. */
  readonly narrowed: number;
  /** Share of these that is settled: proven, refused by a necessary condition, or bound to be beaten by enough. */
  readonly settled: number;
  /** Share by which a rig must beat those found to be looked for by now; 0 when all are. */
  readonly sought: number;
  /** Share by which no rig beats those found, once that is known. */
  readonly within: number | undefined;
  readonly nodes: number;
  readonly proofs: number;
  readonly found: number;
}

export interface SearchOptions {
  readonly units?: UnitSystem;
  /** Whole rigs proven before the search stops. */
  readonly mostProofs?: number;
  /** Sets of parts looked at, whole or in part, before it stops. */
  readonly mostNodes?: number;
  /** Share of price and mass, and margin [1], that is no matter: it ends when nothing is better by more; from 0, which it is without, to 1. */
  readonly within?: number;
  /** Called now and then with what is found so far, cheapest first; the search stops when it says false. */
  readonly onProgress?: (progress: SearchProgress, found: readonly Choice[]) => boolean;
}

export type Choices =
  | {
      readonly ok: true;
      /** Rigs that keep every promise computed and that no other found beats, cheapest first. */
      readonly choices: readonly Choice[];
      /** True when nothing is left: no rig of the space beats one of these. */
      readonly complete: boolean;
      /**
       * For every rig of the space there is one of these that costs and weighs at most by this share more, has at most this
       * much less margin, and is ready no later; undefined when that is not known for any share.
       */
      readonly within: number | undefined;
      readonly progress: SearchProgress;
      /** Conditions by the number of sets that each refused. */
      readonly refused: readonly { readonly why: string; readonly sets: number }[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a buyer would not choose by: a hundredth of price and mass, and of margin. */
const COARSE = 0.01;
const MOST_PROOFS = 2000;
const MOST_NODES = 200_000;

/**
 * Searches every rig that a catalogue makes of a brief for those that no other beats in price, dry mass, least margin
 * of the promises and days until it is ready.
 *
 * First good rigs are sought from the quick selection on, one part at a time; then all sets of parts are gone through,
 * and those are left out that break a necessary condition or whose bounds are beaten by a rig already found. What is
 * left is proven whole. First nothing is looked at that is better than a rig found by no more than a buyer would choose
 * by: so it is soon known that no better bargain is missed; then all is. When it stops early it says which share is
 * settled, and gives the best found so far.
 *
 * @throws RangeError for a share outside 0 to 1
 */
export function searchRigs(
  rawBrief: unknown,
  catalogue: Catalogue,
  shop: Shop,
  options: SearchOptions = {},
): Choices {
  const { within: asked = 0 } = options;
  if (!(asked >= 0 && asked <= 1)) throw new RangeError(`within is ${asked}; it must be from 0 to 1`);
  const read = readBrief(rawBrief);
  if (!read.ok) return read;
  const layouts = layoutsFor(read.brief, catalogue);
  const spaces = layouts.map((layout) => spaceOf(read.brief, rawBrief, catalogue, layout));
  const size = spaces.reduce((sum, s) => sum + s.size, 0);
  const prepared = spaces.map((whole) => {
    const { space, refused } = narrowed(whole, limitsOf(whole));
    // Some conditions reckon with all that may stand in a slot: now with less.
    const limits = limitsOf(space);
    return { space, refused, limits, bounds: new Bounds(space, limits, shop) };
  });
  const front = new Front();
  const prover = new Prover(shop, options.units ?? 'us', options.mostProofs ?? MOST_PROOFS);
  const mostNodes = options.mostNodes ?? MOST_NODES;
  // A family of the shop's own may join its lines in ways that the bounds by groups know nothing of.
  const byGroups = new CoreSearch(prover, front, shop, mostNodes);
  const bySlots = new Branching(prover, front, mostNodes);
  const left = prepared.reduce((sum, p) => sum + p.space.size, 0);
  const rounds = asked < COARSE ? [COARSE, asked] : [asked];
  let sought = rounds[0]!;
  let within: number | undefined;
  const progress = (): SearchProgress => ({
    size,
    narrowed: left,
    settled: left === 0 ? 1 : (byGroups.settled + bySlots.settled) / left,
    nodes: byGroups.nodes + bySlots.nodes,
    proofs: prover.proofs,
    found: front.choices.length,
    sought,
    within,
  });
  const goOn = () => options.onProgress?.(progress(), front.choices) ?? true;
  const possible = prepared.filter((p) => p.space.size > 0);
  const design = possible.length === 0 ? undefined : designRig(rawBrief, catalogue, shop, options);
  for (const { space, bounds } of possible)
    if (design?.ok === true && design.rig.layout === space.layout.id)
      climb(
        space,
        bounds,
        prover,
        front,
        partsIn(space, design.rig.items),
        hasKnownFamily(space) ? 1 : Infinity,
        goOn,
      );
  for (const round of rounds) {
    sought = round;
    byGroups.begin(round);
    bySlots.begin(round);
    const ended = prepared.every((p) => (hasKnownFamily(p.space) ? byGroups : bySlots).run(p, goOn));
    if (byGroups.stopped || bySlots.stopped) break;
    if (!ended) continue;
    // Where there is no rig, none is nearly as good as another.
    within = front.choices.length === 0 ? 0 : round;
    if (within === 0) break;
  }
  return {
    ok: true,
    choices: front.choices,
    complete: within === 0,
    within,
    progress: within === sought || within === 0 ? { ...progress(), settled: 1 } : progress(),
    refused: [...byGroups.refused(), ...bySlots.refused()].sort((a, b) => b.sets - a.sets),
  };
}
