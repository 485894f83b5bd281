import { createHash } from 'node:crypto';
import type { Catalogue } from '@spraywright/engine/catalogue';
import type { Rig } from '@spraywright/engine/rig';

/** Fields that say nothing of how a part works. */
const BESIDE_THE_POINT = [
  'name',
  'mass',
  'wetted',
  'costCents',
  'priceCents',
  'leadTimeDays',
  'stock',
  'supplier',
  'note',
];

/**
 * Parts of a built machine whose data were otherwise then than today, each with a name of that version. What a test says
 * of a part is said against the data of its day: once the shop has put a leaflet right, the same must not be put right again.
 */
export function partVersions(rig: Rig, today: Catalogue): ReadonlyMap<string, string> {
  const versions = new Map<string, string>();
  for (const { part } of rig.items.values()) {
    if (rig.ownParts.has(part.id)) continue;
    const now = today.parts.get(part.id);
    const then = working(part);
    if (now === undefined || working(now) === then) continue;
    versions.set(part.id, createHash('sha256').update(then).digest('hex').slice(0, 8));
  }
  return versions;
}

function working(part: object): string {
  return JSON.stringify(part, (key, value: unknown) => (BESIDE_THE_POINT.includes(key) ? undefined : value));
}
