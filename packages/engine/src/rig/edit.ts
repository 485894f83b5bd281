import type { Change } from '../quantity/index.ts';
import type { RawRig } from './design/assemble.ts';

/** Edits of single values of a rig document. Each is a change of the document: `changed` makes it and gives its inverse. */

/** A decision of a person on what data do not settle. */
export interface Decision {
  readonly about: string;
  readonly who: string;
  readonly why: string;
  readonly when: string;
}

/** Cuts a hose to a length, as it is typed: "60 ft". */
export function setLength(rig: RawRig, item: string, length: string): Change {
  return setField(rig, item, ['length'], length, `${item} ${length} long`);
}

/** Sets an unloader or regulator, for all duties or for one of them. */
export function setPressure(rig: RawRig, item: string, pressure: string, duty?: string): Change {
  return duty === undefined
    ? setField(rig, item, ['set'], pressure, `${item} set to ${pressure}`)
    : setField(rig, item, ['setByDuty', duty], pressure, `${item} set to ${pressure} for ${duty}`);
}

/** Runs an engine at a speed. */
export function setSpeed(rig: RawRig, item: string, speed: string): Change {
  return setField(rig, item, ['speed'], speed, `${item} at ${speed}`);
}

/** Puts a value into the brief; `path` starts inside the brief. */
export function setInBrief(path: readonly (string | number)[], value: unknown, about: string): Change {
  return { about, puts: [{ path: ['brief', ...path], value }] };
}

/** Writes decisions into the brief, behind those that are there. */
export function decide(rig: RawRig, decisions: readonly Decision[]): Change {
  const before = (rig.brief as { decisions?: readonly Decision[] } | undefined)?.decisions ?? [];
  return setInBrief(['decisions'], [...before, ...decisions], 'Decision');
}

function setField(rig: RawRig, item: string, path: readonly string[], value: string, about: string): Change {
  const at = rig.items.findIndex((i) => i.id === item);
  if (at < 0)
    throw new RangeError(`item is '${item}'; the rig has ${rig.items.map((i) => `'${i.id}'`).join(', ')}`);
  return { about, puts: [{ path: ['items', at, ...path], value }] };
}
