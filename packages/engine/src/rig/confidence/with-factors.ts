import type { Part } from '../../catalogue/index.ts';
import type { LooseInput } from '../loose-inputs.ts';
import type { Rig, RigItem } from '../rig-document.ts';
import type { ToleranceKind } from './tolerances.data.ts';
import type { UncertainInput } from './uncertain-input.ts';

interface Entry {
  readonly item: RigItem;
  readonly part: Part;
}

/** Kinds that change no part: a factor on the reach and on the load, and those of the whole rig. */
type OfNoPart = 'throw' | 'liquid-mass' | 'dry-mass' | 'wind' | 'ground-speed' | LooseInput;

/** What a factor on each kind of input changes of an item and its part. */
const ON_PART: Readonly<Record<Exclude<ToleranceKind, OfNoPart>, (entry: Entry, factor: number) => Entry>> = {
  'pump-flow': (entry, f) => {
    const { part } = entry;
    if (part.kind === 'motor-pump')
      return withPart(entry, { ...part, curve: part.curve.map((p) => ({ ...p, flow: p.flow * f })) });
    if (part.kind !== 'pump') return entry;
    // A centrifugal pump that is better by a factor works as if it turned faster by it (affinity).
    return part.law.action === 'displacement'
      ? withPart(entry, { ...part, law: { ...part.law, displacement: part.law.displacement * f } })
      : withPart(entry, { ...part, law: { ...part.law, ratedSpeed: part.law.ratedSpeed / f } });
  },
  'pump-slip': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'pump' || part.law.action !== 'displacement') return entry;
    return withPart(entry, {
      ...part,
      law: { ...part.law, slipAtMaxPressure: part.law.slipAtMaxPressure * f },
    });
  },
  'pump-efficiency': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'pump') return entry;
    return withPart(entry, {
      ...part,
      law: { ...part.law, efficiency: Math.min(1, part.law.efficiency * f) },
    });
  },
  'suction-need': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'pump' && part.kind !== 'motor-pump') return entry;
    return withPart(entry, { ...part, npshRequired: part.npshRequired * f });
  },
  'drive-speed': (entry, f) => {
    const { item, part } = entry;
    if (part.kind === 'engine')
      return { part, item: { ...item, speed: (item.speed ?? part.ratedSpeed) * f } };
    return part.kind === 'pto-drive' ? withPart(entry, { ...part, ratio: part.ratio * f }) : entry;
  },
  'engine-power': (entry, f) => {
    const { part } = entry;
    return part.kind === 'engine' ? withPart(entry, { ...part, power: part.power * f }) : entry;
  },
  'hose-bore': (entry, f) => {
    const { part } = entry;
    return part.kind === 'hose' ? withPart(entry, { ...part, bore: part.bore * f }) : entry;
  },
  'hose-roughness': (entry, f) => {
    const { part } = entry;
    return part.kind === 'hose' ? withPart(entry, { ...part, roughness: part.roughness * f }) : entry;
  },
  passage: passes,
  'strainer-dirt': (entry, f) => {
    const { part } = entry;
    return part.kind === 'strainer' ? withPart(entry, { ...part, dirtyFactor: part.dirtyFactor * f }) : entry;
  },
  'set-pressure': (entry, f) => {
    const { item, part } = entry;
    if (part.kind !== 'regulator') return entry;
    const byDuty = Object.entries(item.setByDuty ?? {}).map(([duty, set]) => [duty, set * f] as const);
    return {
      part,
      item: { ...item, set: (item.set ?? part.setMax) * f, setByDuty: Object.fromEntries(byDuty) },
    };
  },
  override: (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'regulator') return entry;
    return withPart(entry, { ...part, overridePressure: part.overridePressure * f });
  },
  'tip-flow': passes,
  'tip-wear': passes,
  'jet-flow': passes,
  current: (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'motor-pump') return entry;
    return withPart(entry, { ...part, curve: part.curve.map((p) => ({ ...p, current: p.current * f })) });
  },
  'rewind-current': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'reel' || part.rewind !== 'electric') return entry;
    return withPart(entry, { ...part, rewindCurrent: part.rewindCurrent * f });
  },
  'starting-current': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'engine' || part.start !== 'electric') return entry;
    return withPart(entry, { ...part, startingCurrent: part.startingCurrent * f });
  },
  charging: (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'engine' || part.chargingCurrent === 0) return entry;
    return withPart(entry, { ...part, chargingCurrent: part.chargingCurrent * f });
  },
  'battery-capacity': (entry, f) => {
    const { part } = entry;
    return part.kind === 'battery' ? withPart(entry, { ...part, capacity: part.capacity * f }) : entry;
  },
  'eductor-suction': (entry, f) => {
    const { part } = entry;
    if (part.kind !== 'eductor') return entry;
    return withPart(entry, { ...part, suction: part.suction.map((p) => ({ ...p, flow: p.flow * f })) });
  },
};

/** Whether a factor on this kind of input changes this part: a pump without slip has none to be off. */
export function hasInput(kind: ToleranceKind, entry: Entry): boolean {
  const change = (ON_PART as Readonly<Partial<Record<ToleranceKind, (typeof ON_PART)['passage']>>>)[kind];
  return change === undefined || change(entry, 2) !== entry;
}

function passes(entry: Entry, factor: number): Entry {
  const { part } = entry;
  if (part.kind === 'valve')
    return part.flowAtOneBar === undefined
      ? entry
      : withPart(entry, { ...part, flowAtOneBar: part.flowAtOneBar * factor });
  return 'flowAtOneBar' in part
    ? withPart(entry, { ...part, flowAtOneBar: part.flowAtOneBar * factor })
    : entry;
}

function withPart({ item }: Entry, part: Part): Entry {
  return { item, part };
}

/**
 * The rig that a draw or a correction stands for: each input times exp(x).
 *
 * @param logFactor logarithm of the factor of each input [-]; 0 leaves it as it is
 * @returns a rig that may be proven like any other; its document still names the parts of the catalogue. `throw` and
 * `liquid-mass` are of no part and change nothing here
 */
export function withFactors(
  rig: Rig,
  inputs: readonly UncertainInput[],
  logFactor: (input: UncertainInput, index: number) => number,
): Rig {
  const items = new Map<string, Entry>(rig.items);
  let { brief } = rig;
  const loose: Partial<Record<LooseInput, number>> = {};
  let isLoose = false;
  inputs.forEach((input, i) => {
    const x = logFactor(input, i);
    if (x === 0) return;
    const factor = Math.exp(x);
    switch (input.kind) {
      case 'throw':
      case 'liquid-mass':
        return;
      case 'dry-mass':
        for (const [id, entry] of items)
          items.set(id, withPart(entry, { ...entry.part, mass: entry.part.mass * factor }));
        return;
      case 'wind':
        brief = inWind(brief, factor);
        return;
      case 'ground-speed':
        brief = atSpeed(brief, factor);
        return;
      default: {
        if (!(input.kind in ON_PART)) {
          loose[input.kind as LooseInput] = factor;
          isLoose = true;
          return;
        }
        const entry = items.get(input.item);
        if (entry !== undefined)
          items.set(input.item, ON_PART[input.kind as keyof typeof ON_PART](entry, factor));
      }
    }
  });
  return { ...rig, brief, items, ...(isLoose ? { loose } : {}) };
}

/** Every duty that is driven, at another speed than it is told for. */
function atSpeed(brief: Rig['brief'], factor: number): Rig['brief'] {
  return {
    ...brief,
    duties: brief.duties.map(({ application, lane, ...d }) => ({
      ...d,
      ...(application === undefined
        ? {}
        : { application: { ...application, speed: application.speed * factor } }),
      ...(lane === undefined ? {} : { lane: { ...lane, speed: lane.speed * factor } }),
    })),
  };
}

function inWind(brief: Rig['brief'], factor: number): Rig['brief'] {
  const { site } = brief;
  return {
    ...brief,
    site: site.wind === undefined ? site : { ...site, wind: site.wind * factor },
    duties: brief.duties.map((d) => (d.wind === undefined ? d : { ...d, wind: d.wind * factor })),
  };
}
