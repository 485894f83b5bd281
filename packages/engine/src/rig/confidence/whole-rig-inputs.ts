import { driveOf } from '../drive.ts';
import type { Part } from '../../catalogue/index.ts';
import type { Duty } from '../brief.ts';
import { first, type Rig } from '../rig-document.ts';
import type { ToleranceKind } from './tolerances.data.ts';

const someDuty = (has: (duty: Duty) => boolean) => (rig: Rig) => rig.brief.duties.some(has);

/** The rigs that an input of no part can move; those that are not named here it moves in every rig. */
const ONLY_WHERE: Readonly<Partial<Record<ToleranceKind, (rig: Rig) => boolean>>> = {
  'ground-speed': someDuty((d) => d.application !== undefined || d.lane !== undefined),
  'unit-volume': someDuty((d) => d.application === undefined),
  'trigger-time': someDuty((d) => d.trees?.time !== undefined),
  'hand-timing': someDuty((d) => d.drench !== undefined),
  pouring: (rig) => rig.brief.hopper !== undefined,
  'fuel-use': (rig) => driveOf(rig)?.by === 'engine',
  'charge-use': (rig) => first(rig, 'battery') !== undefined,
  cable: (rig) => [...rig.items.values()].some(({ part }) => isElectric(part)),
  drying: (rig) => rig.brief.site.humidity !== undefined,
  'stock-strength': (rig) => rig.brief.liquids.some((l) => l.stock !== undefined || l.store !== undefined),
  'bleach-loss': (rig) => rig.brief.liquids.some((l) => l.store !== undefined),
};

/** Whether an input of no part moves anything in this rig. */
export function rigHas(kind: ToleranceKind, rig: Rig): boolean {
  return ONLY_WHERE[kind]?.(rig) ?? true;
}

function isElectric(part: Part): boolean {
  return (
    part.kind === 'motor-pump' ||
    (part.kind === 'reel' && part.rewind === 'electric') ||
    (part.kind === 'engine' && part.start === 'electric')
  );
}
