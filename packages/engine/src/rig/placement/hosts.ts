import type { Kind, Part } from '../../catalogue/index.ts';
import { waterDensity } from '../../physics/index.ts';
import { first, type Rig, type RigItem } from '../rig-document.ts';

/** Density of fuel, from memory [kg/m3]. */
const FUEL_DENSITY = { petrol: 745, diesel: 840 } as const;

/** Parts that take room of their own on the rig; everything else rides on one of them. */
const STANDING: ReadonlySet<Kind> = new Set<Kind>([
  'tank',
  'engine',
  'reduction',
  'pump',
  'motor-pump',
  'pto-drive',
  'reel',
  'battery',
  'boom',
]);

/** One part of a rig with the part it rides on and its mass as it works. */
export interface Piece {
  readonly item: RigItem;
  readonly part: Part;
  /** [kg] */
  readonly mass: number;
  /** Item it rides on; its own when it stands by itself. */
  readonly host: string;
}

/** Every part of the rig but its carrier, with what it weighs full of fuel and liquid and what it rides on. */
export function piecesOf(rig: Rig, density: number): Piece[] {
  const entries = [...rig.items.values()].filter(({ part }) => part.kind !== 'carrier');
  const standing = (kinds: readonly Kind[]): string | undefined =>
    entries.find(({ part }) => kinds.includes(part.kind))?.item.id;
  const machine =
    standing(['pump', 'motor-pump']) ?? standing(['engine', 'pto-drive']) ?? standing(['tank']) ?? '';
  const lineOf = new Map(rig.lines.flatMap((l) => l.run.map((id) => [id, l] as const)));
  const inLine = (item: string, kind: Kind): string | undefined =>
    lineOf.get(item)?.run.find((id) => rig.items.get(id)?.part.kind === kind);
  const hostOf = (item: RigItem, part: Part): string => {
    if (STANDING.has(part.kind)) return item.id;
    const tank = standing(['tank']) ?? machine;
    const line = lineOf.get(item.id);
    if (part.kind === 'agitator') return tank;
    if (part.kind === 'valve' && line?.from === 'tank' && line.run[0] === item.id) return tank;
    return inLine(item.id, 'reel') ?? inLine(item.id, 'boom') ?? machine;
  };
  const mainTank = first(rig, 'tank')?.item.id;
  return entries.map(({ item, part }) => ({
    item,
    part,
    mass: workingMass(item, part, density) + (item.id === mainTank ? rinseWaterAboard(rig.brief) : 0),
    host: hostOf(item, part),
  }));
}

/**
 * Clean water for rinsing that rides along [kg]. It is weighed at the tank, full at every level of the tank, since it
 * is kept for the end of the work; its vessel is weighed only where the rig has one among its parts.
 */
export function rinseWaterAboard({ rinse }: Rig['brief']): number {
  return rinse?.where === 'job' ? (rinse.water ?? 0) * waterDensity(15) : 0;
}

/** Hose is weighed by the foot and carries its liquid; an engine carries its fuel. */
function workingMass(item: RigItem, part: Part, density: number): number {
  if (part.kind === 'hose') {
    const length = (item.length ?? 0) * item.count;
    return (part.mass / 0.3048) * length + (Math.PI / 4) * part.bore ** 2 * length * density;
  }
  const own = part.mass * item.count;
  return part.kind === 'engine' ? own + part.fuelTank * FUEL_DENSITY[part.fuel] : own;
}
