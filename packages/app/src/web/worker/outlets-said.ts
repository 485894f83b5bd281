import { display, type UnitSystem } from '@spraywright/engine/quantity';
import type { DutyState } from '@spraywright/engine/rig';

/** What comes out where, outlets that read alike told together: "2.7 gpm at 51 psi at the boom and the boom-2". */
export function outletsSaid(outlets: DutyState['outlets'], units: UnitSystem): string[] {
  const places = new Map<string, string[]>();
  for (const { flow, tipPressure, line } of outlets) {
    const words = `${display(flow, 'flow', units)} at ${display(tipPressure, 'pressure', units)}`;
    places.set(words, [...(places.get(words) ?? []), `the ${line}`]);
  }
  return [...places].map(([words, at]) => {
    const last = at.pop()!;
    return `${words} at ${at.length === 0 ? last : `${at.join(', ')} and ${last}`}`;
  });
}
