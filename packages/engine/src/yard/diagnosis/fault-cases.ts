import type { Kind } from '../../catalogue/index.ts';
import { driveOf, first, type Rig, type ToleranceKind, type UncertainInput } from '../../rig/index.ts';
import type { InstrumentId } from '../instruments.data.ts';
import { faultOf, type FaultId } from './faults.data.ts';

/** What a fault changes of a rig: log factors of its inputs, the rig itself, or what an instrument shows. */
export interface FaultEffect {
  readonly shift?: ReadonlyMap<string, number>;
  readonly rig?: Rig;
  /** Log factor on what these instruments show. */
  readonly shown?: { readonly instruments: readonly InstrumentId[]; readonly by: number };
}

/** One fault of one item of a rig. */
export interface FaultCase {
  /** `fault:item`. */
  readonly id: string;
  readonly fault: FaultId;
  readonly item: string;
  /** "worn tip: Disc tip, 6/64 in". */
  readonly name: string;
  /** Against those of the other cases. */
  readonly rate: number;
  /** @param factor between slight and bad [-] */
  readonly effect: (factor: number) => FaultEffect;
}

/** Every fault that a rig can have by its parts. */
export function faultCases(rig: Rig, inputs: readonly UncertainInput[]): FaultCase[] {
  const known = new Set(inputs.map((i) => i.id));
  const cases: FaultCase[] = [];
  const add = (fault: FaultId, items: readonly string[], effect: FaultCase['effect']) => {
    const item = items[0];
    if (item === undefined) return;
    const { name, rate } = faultOf(fault);
    const parts = [...new Set(items.map((id) => rig.items.get(id)!.part.name))].join(' or ');
    cases.push({ id: `${fault}:${item}`, fault, item, name: `${name}: ${parts}`, rate, effect });
  };
  const factorOn = (kind: ToleranceKind, items: readonly string[]) => {
    const ids = items.map((item) => `${kind}:${item}`).filter((id) => known.has(id));
    return (factor: number): FaultEffect => ({ shift: new Map(ids.map((id) => [id, Math.log(factor)])) });
  };
  const of = (...kinds: Kind[]) =>
    [...rig.items].filter(([, { part }]) => kinds.includes(part.kind)).map(([id]) => id);

  for (const tip of of('tip', 'nozzle'))
    for (const fault of ['worn-tip', 'blocked-tip', 'tip-too-small', 'tip-too-large'] as const)
      add(fault, [tip], factorOn('tip-flow', [tip]));
  for (const s of of('strainer')) add('clogged-strainer', [s], factorOn('passage', [s]));
  for (const p of of('pump', 'motor-pump')) {
    add('worn-pump', [p], wornPump(rig, p));
    add('air-in-suction', [p], factorOn('pump-flow', [p]));
  }
  for (const r of of('regulator')) {
    add('held-low', [r], factorOn('set-pressure', [r]));
    add('held-high', [r], factorOn('set-pressure', [r]));
  }
  const drive = driveOf(rig);
  if (drive !== undefined && drive.by !== 'motor')
    add('low-speed', [drive.item], factorOn('drive-speed', [drive.item]));
  if (drive?.by === 'engine' && drive.reduction?.type === 'belt')
    add('slipping-belt', of('reduction'), (factor) => ({ rig: withBelt(rig, factor) }));
  for (const { run, to } of rig.lines) {
    const hoses = run.filter((id) => rig.items.get(id)!.part.kind === 'hose');
    if (to === 'air') add('kinked-hose', hoses, factorOn('hose-bore', hoses));
  }
  const suction = rig.lines.find((l) => l.from === 'tank')?.run ?? [];
  const inSuction = (kind: Kind) => suction.filter((id) => rig.items.get(id)!.part.kind === kind);
  add('collapsed-suction', inSuction('hose'), factorOn('hose-bore', inSuction('hose')));
  add('valve-half-shut', inSuction('valve').slice(0, 1), (factor) =>
    halfShut(rig, inSuction('valve')[0]!, factor),
  );
  const agitation = rig.lines.filter((l) => l.opens === 'agitation');
  if (agitation.length > 0 && rig.brief.duties.some((d) => !d.agitate))
    add('agitation-left-open', agitation.flatMap((l) => l.run.slice(0, 1)).slice(0, 1), () => ({
      rig: { ...rig, lines: rig.lines.map((l) => (l.opens === 'agitation' ? { ...l, opens: 'always' } : l)) },
    }));
  for (const jet of of('agitator', 'eductor')) add('worn-jet', [jet], factorOn('jet-flow', [jet]));
  for (const gun of of('gun')) add('clogged-gun', [gun], factorOn('passage', [gun]));
  for (const p of of('motor-pump'))
    add('flat-battery', [p], (factor) => ({ rig: atVoltage(rig, p, factor) }));
  for (const gauge of first(rig, 'gauge') === undefined ? [] : [first(rig, 'gauge')!.item.id])
    add('wrong-gauge', [gauge], (factor) => ({
      shown: { instruments: ['pump-gauge', 'shut-gauge'], by: Math.log(factor) },
    }));
  return cases;
}

/**
 * A displacement pump that slips so much more that this share of its flow is left at its highest pressure, but never less
 * than it slips new; any other is worn by its whole flow.
 */
function wornPump(rig: Rig, item: string): FaultCase['effect'] {
  const { part } = rig.items.get(item)!;
  if (part.kind !== 'pump' || part.law.action !== 'displacement')
    return (factor) => ({ shift: new Map([[`pump-flow:${item}`, Math.log(factor)]]) });
  const { slipAtMaxPressure } = part.law;
  return (factor) => ({
    shift: new Map([
      [`pump-slip:${item}`, Math.log((slipAtMaxPressure + 1.5 * (1 - factor)) / slipAtMaxPressure)],
    ]),
  });
}

function withBelt(rig: Rig, factor: number): Rig {
  const found = first(rig, 'reduction')!;
  return replaced(rig, found.item.id, { ...found.part, ratio: found.part.ratio * factor });
}

function halfShut(rig: Rig, item: string, factor: number): FaultEffect {
  const { part } = rig.items.get(item)!;
  if (part.kind !== 'valve') return {};
  // A valve without a flow factor loses by its bore: what passes falls with the square of that.
  return {
    rig: replaced(
      rig,
      item,
      part.flowAtOneBar === undefined
        ? { ...part, bore: part.bore * Math.sqrt(factor) }
        : { ...part, flowAtOneBar: part.flowAtOneBar * factor },
    ),
  };
}

/** A pump at a lower voltage turns more slowly by that share: less flow, and less pressure where it stalls. */
function atVoltage(rig: Rig, item: string, factor: number): Rig {
  const { part } = rig.items.get(item)!;
  if (part.kind !== 'motor-pump') return rig;
  return replaced(rig, item, {
    ...part,
    curve: part.curve.map((p) => ({ ...p, flow: p.flow * factor, pressure: p.pressure * factor })),
  });
}

function replaced(
  rig: Rig,
  id: string,
  part: Rig['items'] extends ReadonlyMap<string, infer E> ? (E extends { part: infer P } ? P : never) : never,
): Rig {
  const items = new Map(rig.items);
  items.set(id, { ...items.get(id)!, part });
  return { ...rig, items };
}
