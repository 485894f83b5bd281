import { parseQuantity, write, type Change, type Dimension } from '../../quantity/index.ts';
import { setLength, setPressure, setSpeed } from '../edit.ts';
import { slotsOf } from './slot-alternatives.ts';
import type { Trials } from './trials.ts';

/** A setting of a part that is there, at another value. */
export interface Setting {
  readonly slot: string;
  readonly name: string;
  readonly change: (raw: Trials['raw']) => Change;
}

/** Steps from the value that is set, near it and farther off: a knob is turned in such steps, not in hundredths. */
const SHARES = [0.6, 0.7, 0.8, 0.9, 0.95, 1.05, 1.1, 1.2, 1.35, 1.5, 1.75, 2];

/**
 * Settings of a rig that could be others: what its regulator is set to, in the regulator's range and in each duty that has
 * a setting of its own; the speed of its engine; a hose cut to what the duties pay out.
 */
export function settingsOf({ rig, units }: Trials): Setting[] {
  const names = new Map(slotsOf(rig).map((s) => [s.id, s.name]));
  const out: Setting[] = [];
  for (const { item, part } of rig.items.values()) {
    const name = names.get(item.id) ?? item.id;
    if (part.kind === 'regulator' && item.set !== undefined) {
      const [step, unit] = units === 'us' ? ([5, 'psi'] as const) : ([0.5, 'bar'] as const);
      for (const set of steps(item.set, part.setMin, part.setMax, step, unit, 'pressure'))
        out.push({
          slot: item.id,
          name: `${name} set to ${set}`,
          change: (raw) => setPressure(raw, item.id, set),
        });
      for (const [duty, now] of Object.entries(item.setByDuty ?? {})) {
        const called = rig.brief.duties.find((d) => d.id === duty)?.name ?? duty;
        for (const set of steps(now, part.setMin, part.setMax, step, unit, 'pressure'))
          out.push({
            slot: item.id,
            name: `${name} set to ${set} for "${called}"`,
            change: (raw) => setPressure(raw, item.id, set, duty),
          });
      }
    }
    if (part.kind === 'engine') {
      const now = item.speed ?? part.ratedSpeed;
      for (const speed of steps(now, part.minSpeed, part.ratedSpeed, 10, 'rpm', 'rotation'))
        out.push({
          slot: item.id,
          name: `${name} at ${speed}`,
          change: (raw) => setSpeed(raw, item.id, speed),
        });
    }
  }
  return [...out, ...shorterHose(rig, units, names)];
}

/** The hose of the guns cut to the longest that a duty pays out. */
function shorterHose(
  rig: Trials['rig'],
  units: Trials['units'],
  names: ReadonlyMap<string, string>,
): Setting[] {
  const line = rig.lines.find((l) => l.run.includes('hose'));
  const users = rig.brief.duties.filter((d) => d.open.some((o) => o === line?.opens));
  // A duty that does not say how much it pays out may need all of it.
  const asked = Math.max(0, rig.brief.wishes.hose ?? 0, ...users.map((d) => d.hoseOut ?? Infinity));
  const hose = rig.items.get('hose');
  if (hose?.part.kind !== 'hose' || hose.item.length === undefined || asked === 0) return [];
  if (!Number.isFinite(asked)) return [];
  const [step, unit] = units === 'us' ? [0.3048, 'ft'] : [0.1, 'm'];
  const length = write(Math.ceil(asked / step - 1e-6) * step, unit);
  const cut = parseQuantity(length, 'length');
  if (!cut.ok || cut.value >= hose.item.length - step / 2) return [];
  return [
    {
      slot: 'hose',
      name: `${names.get('hose') ?? 'hose'} cut to ${length}`,
      change: (raw) => setLength(raw, 'hose', length),
    },
  ];
}

/** Values about the one that is set, the nearest first, in whole steps of a unit, inside the limits and without the one that is set. */
function steps(
  now: number,
  least: number,
  most: number,
  step: number,
  unit: string,
  dimension: Dimension,
): string[] {
  const one = parseQuantity(`${step} ${unit}`, dimension);
  if (!one.ok) return [];
  const size = one.value;
  const low = Math.ceil(least / size - 1e-6);
  const high = Math.floor(most / size + 1e-6);
  const values = SHARES.map((share) => Math.min(high, Math.max(low, Math.round((now * share) / size))));
  return [...new Set(values)]
    .filter((n) => Math.abs(n * size - now) > size * 0.4 && n > 0)
    .sort((a, b) => Math.abs(a * size - now) - Math.abs(b * size - now))
    .map((n) => `${n * step} ${unit}`);
}
