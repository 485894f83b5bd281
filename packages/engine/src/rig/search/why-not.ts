import type { Catalogue, Shop } from '../../catalogue/index.ts';
import type { Problem, UnitSystem } from '../../quantity/index.ts';
import { readBrief } from '../brief.ts';
import { designRig, type Design } from '../design.ts';
import { layoutsFor } from '../layouts-for.ts';
import type { RigPromise } from '../promise.ts';
import type { Choice } from './front.ts';
import { limitsOf } from './limits.ts';
import { narrowed, type RefusedParts } from './narrow.ts';
import { relaxationsOf, type Relaxation } from './relaxations.ts';
import { searchRigs } from './search.ts';
import { spaceOf, type SearchSpace } from './space.ts';

/** One thing asked less, with which a rig keeps every promise computed. */
export interface SmallestRelaxation {
  readonly name: string;
  readonly now?: string;
  /** What is asked then. */
  readonly text: string;
  /** Of the way from what is asked to hardly anything [0 to 1]. */
  readonly share: number;
  /** The rig that does it. */
  readonly rig: Extract<Design, { ok: true }>['rig'];
  readonly priceCents: number;
  /** Asking more was refused by a condition that no rig of the catalogue meets; otherwise no rig was found there. */
  readonly proven: boolean;
}

export type WhyNot =
  | {
      readonly ok: true;
      /** True when a rig keeps every promise computed: there is nothing to explain. */
      readonly possible: boolean;
      /** True when it is certain that no rig of the catalogue does. */
      readonly certain: boolean;
      /** What the best rig found breaks. */
      readonly broken: readonly RigPromise[];
      /** Why not even a rig that breaks a promise was put together. */
      readonly noRig?: string;
      /** Parts that no rig can have, by slot, and how many parts the slot has to choose from. */
      readonly slots: readonly (RefusedParts & { readonly offered: number })[];
      /** Single things asked less with which there is a rig, the smallest change first. */
      readonly relaxations: readonly SmallestRelaxation[];
      /** Selections made on the way. */
      readonly tried: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface WhyNotOptions {
  readonly units?: UnitSystem;
  /** Called with the number of selections made; it stops when it says false. */
  readonly onProgress?: (tried: number) => boolean;
}

/** Shares of the way that are tried, from a little less to hardly anything, and halvings before the first that helps. */
const STEPS = [0.05, 0.1, 0.2, 0.35, 0.6, 1];
const HALVINGS = 4;
/** Whole rigs that a search may prove here. */
const SEARCH_PROOFS = 600;

/** Why no rig keeps every promise of a brief: what breaks, which parts are refused for what, and the least that could be asked less. */
export function whyNot(
  rawBrief: unknown,
  catalogue: Catalogue,
  shop: Shop,
  options: WhyNotOptions = {},
): WhyNot {
  const read = readBrief(rawBrief);
  if (!read.ok) return read;
  const units = options.units ?? 'us';
  let tried = 0;
  let stopped = false;
  const tries = (raw: unknown): Tried => {
    const spaces = spacesOf(raw, catalogue);
    if (spaces.every((s) => s.left.space.size === 0)) return { certain: true, design: undefined };
    tried++;
    stopped ||= options.onProgress?.(tried) === false;
    return { certain: false, design: designRig(raw, catalogue, shop, { units }) };
  };
  // The selection goes by rules and may miss a rig; the search looks further from there.
  const search = (raw: unknown) => {
    const found = searchRigs(raw, catalogue, shop, { units, mostProofs: SEARCH_PROOFS });
    return found.ok ? found.choices[0] : undefined;
  };
  const now = tries(rawBrief);
  if (keeps(now) || (!now.certain && search(rawBrief) !== undefined))
    return { ok: true, possible: true, certain: true, broken: [], slots: [], relaxations: [], tried };
  const nearest = now.design ?? designRig(rawBrief, catalogue, shop, { units });
  const relaxations: SmallestRelaxation[] = [];
  for (const relaxation of relaxationsOf(rawBrief, read.brief, units)) {
    if (stopped) break;
    const smallest =
      relaxation.forPrice === undefined
        ? smallestOf(relaxation, tries, now.certain)
        : atCheapest(relaxation, search);
    if (smallest !== undefined) relaxations.push(smallest);
  }
  return {
    ok: true,
    possible: false,
    certain: now.certain,
    ...(nearest.ok ? {} : { noRig: nearest.problems.map((p) => p.message).join('; ') }),
    broken: nearest.ok ? nearest.proof.promises.filter((p) => p.state === 'broken') : [],
    slots: spacesOf(rawBrief, catalogue).flatMap(({ whole, left }) =>
      left.parts.map((p) => ({
        ...p,
        offered: whole.slots.find((s) => s.id === p.slot)!.options.filter((o) => o !== undefined).length,
      })),
    ),
    relaxations: relaxations.sort((a, b) => a.share - b.share),
    tried,
  };
}

interface Tried {
  /** No rig of the catalogue meets the necessary conditions. */
  readonly certain: boolean;
  readonly design: Design | undefined;
}

function keeps({ design }: Tried): boolean {
  return design?.ok === true && design.proof.counts.broken === 0;
}

function spacesOf(
  raw: unknown,
  catalogue: Catalogue,
): { readonly whole: SearchSpace; readonly left: ReturnType<typeof narrowed> }[] {
  const read = readBrief(raw);
  if (!read.ok) return [];
  return layoutsFor(read.brief, catalogue).map((layout) => {
    const whole = spaceOf(read.brief, raw, catalogue, layout);
    return { whole, left: narrowed(whole, limitsOf(whole)) };
  });
}

/**
 * The smallest share of a relaxation at which a rig is found: the steps from small to large, then halving before the
 * first that does. The selection takes the cheapest tank that is large enough, so that asking much less may find
 * nothing where asking a little less finds a rig. Undefined when no step finds one.
 */
function smallestOf(
  { name, now, at }: Relaxation,
  tries: (raw: unknown) => Tried,
  certainNow: boolean,
): SmallestRelaxation | undefined {
  let [low, proven] = [0, certainNow];
  // What is dropped whole has no steps.
  for (const high of now === undefined ? [1] : STEPS) {
    const asked = at(high);
    const found = tries(asked.brief);
    const { design } = found;
    if (keeps(found) && design?.ok === true) {
      const step = { name, now, share: high, text: asked.text, design };
      return now === undefined ? told(step, proven) : halved(step, low, proven, at, tries);
    }
    [low, proven] = [high, found.certain];
  }
  return undefined;
}

/** The budget at which the cheapest rig that a search finds is within it. */
function atCheapest(
  { name, now, at, forPrice }: Relaxation,
  search: (raw: unknown) => Choice | undefined,
): SmallestRelaxation | undefined {
  const cheapest = search(at(1).brief);
  if (cheapest === undefined || forPrice === undefined) return undefined;
  const { rig, figures } = cheapest;
  const { priceCents } = figures;
  return {
    name,
    ...(now === undefined ? {} : { now }),
    ...forPrice(priceCents),
    rig,
    priceCents,
    proven: false,
  };
}

/** A share of a relaxation with the rig that was found there. */
interface Step {
  readonly name: string;
  readonly now: string | undefined;
  readonly share: number;
  readonly text: string;
  readonly design: Extract<Design, { ok: true }>;
}

function halved(
  first: Step,
  from: number,
  provenFrom: boolean,
  at: Relaxation['at'],
  tries: (raw: unknown) => Tried,
): SmallestRelaxation {
  let [step, low, proven] = [first, from, provenFrom];
  for (let i = 0; i < HALVINGS; i++) {
    const share = (low + step.share) / 2;
    const { brief, text } = at(share);
    if (text === step.text) break;
    const half = tries(brief);
    if (keeps(half) && half.design?.ok === true) step = { ...step, share, text, design: half.design };
    else [low, proven] = [share, half.certain];
  }
  return told(step, proven);
}

function told({ name, now, share, text, design }: Step, proven: boolean): SmallestRelaxation {
  return {
    name,
    ...(now === undefined ? {} : { now }),
    text,
    share,
    rig: design.rig,
    priceCents: design.proof.bill.priceCents,
    proven,
  };
}
