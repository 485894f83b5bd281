import { flushDemand, isLiquid } from '../../liquids/index.ts';
import { continuousRinseWater, rinsePlan, rinseTankVolume, RINSE_TANK_RULE } from '../../physics/index.ts';
import { compared, is, number, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { STARTS } from '../start-values.data.ts';
import { say, type ProofContext } from './context.ts';
import { decisionOn } from './decision.ts';
import { orUnknown } from './out-of-range.ts';
import { residualOf, type Residual } from './rinse-residual.ts';
import { winterPromises } from './rinse-winter.ts';

/** Rinses where the brief names no number: common practice, no source. */
const RINSES = 3;

/** The rig can be rinsed, flushed between liquids, and put away for the winter. */
export function rinsePromises(context: ProofContext): RigPromise[] {
  const residual = residualOf(context);
  return [
    planPromise(context, residual),
    ...tankRulePromises(context, residual),
    ...flushPromises(context),
    ...winterPromises(context, residual),
  ];
}

/** Flow that the rinse water is sprayed out with: the least of all duties, as the slowest decides. */
function rinseFlow(context: ProofContext): number {
  const flows = context.duties.map((d) => d.open.outlets.reduce((sum, o) => sum + o.flow, 0));
  return flows.filter((f) => f > 0).reduce((a, b) => Math.min(a, b), 1);
}

/** Equal rinses that thin what stays in a rig as far as its brief asks. */
export function planOf(context: ProofContext, residual: Residual): ReturnType<typeof rinsePlan> {
  const { rinse } = context.rig.brief;
  return rinsePlan({
    residual: residual.total,
    hose: residual.hoses,
    hoseChanges: STARTS.hoseChanges.value,
    dilution: rinse?.dilution ?? STARTS.dilution.value,
    rinses: rinse?.rinses ?? RINSES,
    carried: rinse?.water ?? 0,
    flow: rinseFlow(context),
  });
}

function planPromise(context: ProofContext, residual: Residual): RigPromise {
  const { rinse } = context.rig.brief;
  const dilution = rinse?.dilution ?? STARTS.dilution.value;
  const rinses = rinse?.rinses ?? RINSES;
  const yard = rinse?.where === 'yard';
  const told = {
    id: 'rinse:plan',
    kind: 'rinse' as const,
    sentence: yard
      ? `Rinses at the yard until the last mix is thinned ${dilution} times`
      : `Carries the water to thin the last mix ${dilution} times`,
    method: 'equal rinses of what stays in the rig',
    source: `mass balance; target: ${rinse?.dilution === undefined ? STARTS.dilution.source : 'the brief'}; hose: ${STARTS.hoseChanges.source}`,
  };
  return orUnknown(told, () => {
    const carried = rinse?.water ?? 0;
    const plan = planOf(context, residual);
    const volume = (text: string, value: number): Step => ({ text, figure: { value, dimension: 'volume' } });
    const working = [
      volume('stays in tank, pump and fittings (2 % of the tank, until it is measured)', residual.body),
      volume('stays in the hoses to the outlets', residual.hoses),
      volume('stays in the other hoses', residual.plumbing),
      ...eachSteps(residual, dilution, rinses, plan),
      worked('water in all', is(plan.water, 'volume'), '{rinses} × {water of each}', {
        rinses: is(rinses, 'count'),
        'water of each': is(plan.each, 'volume'),
      }),
      worked(
        'thinned by these rinses, times',
        number(plan.reached),
        '(1 + {water of each} / {stays in the rig}) ^ {rinses}',
        {
          'water of each': is(plan.each, 'volume'),
          'stays in the rig': is(residual.total, 'volume'),
          rinses: is(rinses, 'count'),
        },
      ),
      worked(
        'the same by running water through without a stop',
        is(continuousRinseWater(residual.total, dilution), 'volume'),
        '{stays in the rig} × ln({thinned})',
        { 'stays in the rig': is(residual.total, 'volume'), thinned: number(dilution) },
      ),
      { text: 'time to spray it out', figure: { value: plan.time, dimension: 'time' as const } },
      { text: 'rinse water goes on ground that the label allows' },
    ];
    const asked = { value: plan.water, dimension: 'volume' as const };
    const most =
      residual.hoses > residual.body
        ? `the hoses hold ${say(context, residual.hoses, 'volume')} of the ${say(context, residual.total, 'volume')} that stays in the rig`
        : `${say(context, residual.total, 'volume')} stays in the rig`;
    if (yard)
      return {
        ...told,
        state: 'kept',
        sense: 'at-least',
        cause: `${most}; ${rinses} rinses of ${say(context, plan.each, 'volume')} from the water at the yard`,
        items: [],
        working,
      };
    if (rinse?.water === undefined)
      return unknown(
        {
          ...told,
          cause: `say how much clean water rides along, or that it is rinsed at the yard; ${most}`,
          working,
        },
        asked,
      );
    return compared(
      { ...told, cause: `${most}; ${rinses} equal rinses`, working },
      asked,
      { value: carried, dimension: 'volume' },
      'at-least',
    );
  });
}

/** Water of each rinse: what thins enough, or what it takes to clear the hoses where that is more. */
function eachSteps(
  { total, body, hoses, plumbing }: Residual,
  dilution: number,
  rinses: number,
  { each, water }: { readonly each: number; readonly water: number },
): Step[] {
  const changes = STARTS.hoseChanges.value;
  const stays = is(total, 'volume');
  const forHoses = hoses * changes >= water;
  return [
    worked('stays in the rig', stays, '{tank and pump} + {hoses out} + {other hoses}', {
      'tank and pump': is(body, 'volume'),
      'hoses out': is(hoses, 'volume'),
      'other hoses': is(plumbing, 'volume'),
    }),
    forHoses
      ? worked(
          `water of each of ${rinses} rinses, to clear the hoses`,
          is(each, 'volume'),
          '{contents} × {hoses out} / {rinses}',
          {
            contents: number(changes),
            'hoses out': is(hoses, 'volume'),
            rinses: number(rinses),
          },
        )
      : worked(
          `water of each of ${rinses} rinses`,
          is(each, 'volume'),
          '{stays in the rig} × ({thinned} ^ (1 / {rinses}) − 1)',
          { 'stays in the rig': stays, thinned: number(dilution), rinses: number(rinses) },
        ),
  ];
}

/** Size of a rinse tank by the standard, where the rig carries one. */
function tankRulePromises(context: ProofContext, residual: Residual): RigPromise[] {
  const { brief } = context.rig;
  const water = brief.rinse?.water;
  const exempt =
    brief.carrier.form === 'three-point' && context.tank.volume <= RINSE_TANK_RULE.exemptMountedUpTo;
  if (water === undefined || exempt) return [];
  const told = {
    id: 'rinse:tank',
    kind: 'rinse' as const,
    sentence: 'Rinse water is as much as the standard asks',
    method: 'tenth of the tank or ten times the residual',
    source: RINSE_TANK_RULE.origin.source,
  };
  return [
    orUnknown(told, () => {
      const rule = rinseTankVolume(context.tank.volume, residual.total);
      return compared(
        {
          ...told,
          cause: 'one of the two rules is enough',
          working: [
            worked('a tenth of the tank', is(rule.byTank, 'volume'), '0.1 × {tank}', {
              tank: is(context.tank.volume, 'volume'),
            }),
            worked('ten times what stays', is(rule.byResidual, 'volume'), '10 × {stays in the rig}', {
              'stays in the rig': is(residual.total, 'volume'),
            }),
          ],
        },
        { value: rule.least, dimension: 'volume' },
        { value: water, dimension: 'volume' },
        'at-least',
      );
    }),
  ];
}

/** Steps of flushing after each liquid, and what must be recorded before the next goes in. */
function flushPromises(context: ProofContext): RigPromise[] {
  const { brief } = context.rig;
  const sprayed = brief.liquids.filter((l) => l.use === 'spray' && l.liquid !== 'water');
  const known = sprayed.filter((l) => isLiquid(l.liquid));
  if (sprayed.length === 0) return [];
  const water = brief.liquids.some((l) => l.use === 'flush') || brief.rinse !== undefined;
  const steps: Step[] = [];
  const dangers = new Set<string>();
  for (const last of known) {
    for (const step of flushDemand(last.liquid).steps) steps.push({ text: `after ${last.name}: ${step}` });
    for (const next of known) {
      if (next === last) continue;
      for (const d of flushDemand(last.liquid, next.liquid).dangers)
        if (d.severity === 'never') {
          const about = `flush:${[last.liquid, next.liquid].sort().join(':')}`;
          if (!dangers.has(about))
            steps.push({ text: `${last.name} and ${next.name} never meet: ${d.result}` });
          dangers.add(about);
        }
    }
  }
  const open = [...dangers].filter((about) => decisionOn(brief, about) === undefined);
  const strangers = sprayed.filter((l) => !isLiquid(l.liquid));
  const told = {
    id: 'rinse:flush',
    kind: 'rinse' as const,
    sentence: 'Can be flushed between liquids',
    method: 'flush steps by liquid',
    source: 'handling rules of the liquids, each with its own sources',
    items: [],
    working: steps,
  };
  const missing = !water
    ? 'the brief names no water to flush with'
    : strangers.length > 0
      ? `nothing is known of ${strangers.map((l) => l.name).join(', ')}: ask the supplier how it is flushed`
      : open.length > 0
        ? 'liquids that must never meet share the lines: record who flushes between them and how'
        : undefined;
  if (missing !== undefined)
    return [{ ...unknown({ ...told, cause: missing }), ...(open.length > 0 ? { decisions: open } : {}) }];
  return [
    {
      ...told,
      state: dangers.size > 0 ? 'thin' : 'kept',
      sense: 'at-least',
      cause: known.map((l) => `after ${l.name}: ${flushDemand(l.liquid).own}`).join('; '),
    },
  ];
}
