import { driveOf } from '../drive.ts';
import type { ProofContext } from '../proof/context.ts';
import { guarded } from '../proof/guarded.ts';
import { driftPromises } from '../proof/pattern-drift.ts';
import { weatherPromises } from '../proof/pattern-weather.ts';
import { siteOf } from '../proof/site.ts';
import { loadedOf } from '../proof/loaded.ts';
import { recipePromises } from '../proof/recipe.ts';
import { stabilityPromises } from '../proof/stability.ts';
import { lastLiquidPromises } from '../proof/stability-last-liquid.ts';
import { strengthPromises } from '../proof/strength.ts';
import { structurePromises } from '../proof/structure.ts';
import { weightPromises } from '../proof/weight.ts';
import type { RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import type { Draws } from './draws.ts';
import type { ToleranceKind } from './tolerances.data.ts';
import type { UncertainInput } from './uncertain-inputs.ts';
import { withFactors } from './with-factors.ts';

/** Where the last liquid lies hangs on the slope alone. */
const LAST_LIQUID = 'stability:last-liquid';

/** Promises that ask nothing of the network, and the inputs they move with. */
const GROUPS: readonly {
  readonly kinds: readonly ToleranceKind[];
  readonly promises: (context: ProofContext) => RigPromise[];
}[] = [
  {
    // A hose weighs what it holds.
    kinds: ['dry-mass', 'liquid-mass', 'hose-bore'],
    promises: (context) => [
      ...guarded('weight', '', () => weightPromises(context)),
      ...guarded('stability', '', () => stabilityPromises(context).filter((p) => p.id !== LAST_LIQUID)),
      ...guarded('structure', '', () => structurePromises(context)),
    ],
  },
  {
    kinds: ['slope'],
    promises: (context) => {
      const loaded = loadedOf(context);
      return loaded === undefined ? [] : guarded('stability', '', () => lastLiquidPromises(context, loaded));
    },
  },
  {
    kinds: ['wind', 'drying'],
    promises: (context) => [...driftPromises(context), ...weatherPromises(context)],
  },
  {
    kinds: ['stock-strength', 'bleach-loss'],
    promises: (context) => [...strengthPromises(context), ...recipePromises(context)],
  },
];

/** How far to each side the proof is made anew: so many deviations of an input beyond its mean. */
const SIDE = 2;

/** What weighs so little that a straight line does: the liquid in a hose. */
const STRAIGHT: ReadonlySet<ToleranceKind> = new Set<ToleranceKind>(['hose-bore']);

/** What a promise has and what it asks, in each draw. */
export interface SteadyColumns {
  readonly id: string;
  readonly has: Float64Array;
  readonly asked: Float64Array;
}

/**
 * Figures of the promises that ask nothing of the network: smooth in few inputs, so they are proven at the middle and on
 * both sides of each input and follow a parabola between; the effects of several inputs add up.
 *
 * @param context with every part in its place, see inPlace: a part that weighs more is not put elsewhere for it
 */
export function steadyPromises(context: ProofContext, draws: Draws): SteadyColumns[] {
  return GROUPS.flatMap(({ kinds, promises }) => {
    const middle = promises(context).filter((p) => p.has !== undefined && p.asked !== undefined);
    const columns = middle.map((p) => ({
      id: p.id,
      has: new Float64Array(draws.count).fill(p.has!.value),
      asked: new Float64Array(draws.count).fill(p.asked!.value),
      twoSided: false,
    }));
    draws.inputs.forEach((input, k) => {
      if (!kinds.includes(input.kind)) return;
      const step = SIDE * input.deviation + Math.abs(input.mean);
      const above = byId(promises(changed(context, input, step)));
      const below = STRAIGHT.has(input.kind) ? undefined : byId(promises(changed(context, input, -step)));
      middle.forEach((p, i) => {
        const column = columns[i]!;
        // A window that may be missed on either side (a tongue too light or too heavy) has no one figure to follow.
        if ([below ?? above, above].some((side) => side.get(p.id)?.sense !== p.sense)) column.twoSided = true;
        for (const what of ['has', 'asked'] as const) {
          const [mid, high] = [p[what]?.value, above.get(p.id)?.[what]?.value];
          if (mid === undefined || high === undefined) continue;
          const low = below === undefined ? 2 * mid - high : below.get(p.id)?.[what]?.value;
          if (low === undefined || (low === mid && high === mid)) continue;
          addParabola(column[what], draws.columns[k]!, step, [low, mid, high]);
        }
      });
    });
    return columns.filter((c) => !c.twoSided);
  });
}

/**
 * Adds what the input does to the figure, through three points; through their logarithms where it acts as a power on the
 * whole of the figure, as wind does.
 */
function addParabola(
  out: Float64Array,
  x: Float64Array,
  step: number,
  [low, mid, high]: readonly [number, number, number],
): void {
  const power = low > 0 && mid > 0 && high > 0 && Math.abs(low * high - mid * mid) < 1e-9 * mid * mid;
  const of = power ? Math.log : (v: number) => v;
  const slope = (of(high) - of(low)) / (2 * step);
  const bend = (of(high) - 2 * of(mid) + of(low)) / (2 * step * step);
  for (let i = 0; i < out.length; i++) {
    const change = x[i]! * (slope + bend * x[i]!);
    out[i]! += power ? mid * (Math.exp(change) - 1) : change;
  }
}

/** The proof's context with one input changed. */
function changed(context: ProofContext, input: UncertainInput, x: number): ProofContext {
  const rig = withFactors(context.rig, [input], () => x);
  const load = input.kind === 'liquid-mass' ? Math.exp(x) : 1;
  return {
    ...context,
    rig,
    drive: driveOf(rig),
    tank: first(rig, 'tank')!.part,
    site: siteOf(rig.brief),
    duties: context.duties.map((d) => ({
      ...d,
      duty: rig.brief.duties.find((duty) => duty.id === d.duty.id) ?? d.duty,
      liquid: { ...d.liquid, density: d.liquid.density * load },
    })),
  };
}

function byId(promises: readonly RigPromise[]): Map<string, RigPromise> {
  return new Map(promises.map((p) => [p.id, p]));
}
