import { compileNetwork } from '../hydraulics/index.ts';
import type { Duty } from './brief.ts';
import { dutyNetwork, opensIn } from './duty-network.ts';
import { noState, stateOf, type DutyState } from './duty-state.ts';
import { liquidOf } from './proof/liquid.ts';
import { siteOf } from './proof/site.ts';
import type { Rig, RigLine } from './rig-document.ts';

/** A valve or trigger that somebody can open and shut. */
export interface RigValve {
  readonly item: string;
  readonly line: RigLine;
  /** It is what opens and shuts its line in a duty; others only stand in the way. */
  readonly leads: boolean;
}

/** Every valve and trigger of a rig that is turned by hand or by a switch, in the order of its lines; check valves are not. */
export function valvesOf(rig: Rig): RigValve[] {
  return rig.lines.flatMap((line) => {
    const items = line.run.filter((id) => {
      const { part } = rig.items.get(id)!;
      return part.kind === 'gun' || (part.kind === 'valve' && !part.form.endsWith('check'));
    });
    const gun = items.find((id) => rig.items.get(id)!.part.kind === 'gun');
    const leader = line.opens === 'always' ? undefined : (gun ?? items[0]);
    return items.map((item) => ({ item, line, leads: item === leader }));
  });
}

/** Valves that stand shut in a duty because their line is not open in it. */
export function shutInDuty(rig: Rig, duty: Duty): Set<string> {
  return new Set(
    valvesOf(rig)
      .filter(({ leads, line }) => leads && !opensIn(line, duty))
      .map(({ item }) => item),
  );
}

/** A rig in one duty with further valves shut: how it would stand if somebody turned them while it runs. */
export function valveState(rig: Rig, duty: Duty, shut: ReadonlySet<string>): DutyState {
  const liquid = liquidOf(rig.brief, duty.liquid, siteOf(rig.brief));
  const made = dutyNetwork(rig, duty, liquid);
  const elements = made.model.elements.map((e) => (shut.has(e.id) ? { ...e, open: false } : e));
  const model = { ...made.model, elements };
  const compiled = compileNetwork(model);
  if (!compiled.ok) return noState(compiled.problems.map((p) => p.message).join('; '), 0);
  const { network } = compiled;
  return stateOf(rig, { ...made, model }, network, network.solve(), false);
}
