import { createHash } from 'node:crypto';
import type { Catalogue, Part } from '@spraywright/engine/catalogue';
import type { Rig } from '@spraywright/engine/rig';

/** Fields that say nothing of how a part works. */
const BESIDE_THE_POINT: ReadonlySet<string> = new Set([
  'name',
  'mass',
  'wetted',
  'costCents',
  'priceCents',
  'leadTimeDays',
  'stock',
  'supplier',
  'note',
]);

/** What readings are said against: how a part works, or what it weighs. */
const SAID_AGAINST = {
  work: (part: Part) =>
    JSON.stringify(part, (key, value: unknown) => (BESIDE_THE_POINT.has(key) ? undefined : value)),
  mass: (part: Part) => String(part.mass),
} as const;

/**
 * Parts of a built machine whose data were otherwise then than today, each with a name of that version. What a test says
 * of a part is said against the data of its day: once the shop has put a leaflet right, the same must not be put right again.
 */
export function partVersions(
  rig: Rig,
  today: Catalogue,
  against: keyof typeof SAID_AGAINST,
): ReadonlyMap<string, string> {
  const said = SAID_AGAINST[against];
  const versions = new Map<string, string>();
  for (const { part } of rig.items.values()) {
    if (rig.ownParts.has(part.id)) continue;
    const now = today.parts.get(part.id);
    const then = said(part);
    if (now === undefined || said(now) === then) continue;
    versions.set(part.id, createHash('sha256').update(then).digest('hex').slice(0, 8));
  }
  return versions;
}
