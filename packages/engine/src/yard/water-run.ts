import {
  compileNetwork,
  type CompiledNetwork,
  type NetworkLiquid,
  type NetworkModel,
} from '../hydraulics/index.ts';
import { dutyNetwork, retune, type Brief, type DutyNetwork, type Rig } from '../rig/index.ts';

type Duty = Brief['duties'][number];

/** What a rig shows in one duty with water in the tank; a pressure is null where nothing defines it [Pa, m3/s]. */
export interface WaterRun {
  readonly pumpInlet: number | null;
  readonly pumpOutlet: number | null;
  readonly outlets: readonly { readonly line: string; readonly flow: number; readonly tipPressure: number }[];
  /** A demand pump that switches on and off shows no steady figure. */
  readonly cycling: boolean;
  /** Gauge at the pump with every outlet shut; null where that has no steady state. */
  readonly shut: number | null;
}

/**
 * Runs one duty of rigs that differ in numbers only, with water. The network is compiled for the first rig and set anew for
 * the others, so that a hundred variations cost little.
 *
 * @returns undefined for a rig that finds no steady state
 */
export function waterRunner(duty: Duty, water: NetworkLiquid): (rig: Rig) => WaterRun | undefined {
  let last: { readonly network: CompiledNetwork; readonly model: NetworkModel } | undefined;
  return (rig) => {
    const made = dutyNetwork(rig, duty, water);
    const network =
      last !== undefined && retune(last.network, last.model, made.model)
        ? last.network
        : compiled(made.model);
    last = network === undefined ? undefined : { network, model: made.model };
    if (network === undefined || network.solve().status === 'failed') return undefined;
    const open = readOpen(rig, made, network);
    for (const t of made.triggers) network.open(t, false);
    const shutOff = network.solve({ start: 'cold' }).status === 'converged';
    const shut = shutOff ? atPump(rig, made, network).outlet : null;
    for (const t of made.triggers) network.open(t, true);
    return { ...open, shut };
  };
}

function compiled(model: NetworkModel): CompiledNetwork | undefined {
  const result = compileNetwork(model);
  return result.ok ? result.network : undefined;
}

function readOpen(rig: Rig, made: DutyNetwork, network: CompiledNetwork): Omit<WaterRun, 'shut'> {
  const pump = atPump(rig, made, network);
  return {
    pumpInlet: pump.inlet,
    pumpOutlet: pump.outlet,
    cycling: pump.cycling,
    outlets: made.outlets.map(({ line, last, before }) => ({
      line,
      flow: network.flow(last),
      tipPressure: network.pressure(before) ?? 0,
    })),
  };
}

function atPump(rig: Rig, made: DutyNetwork, network: CompiledNetwork) {
  for (const run of made.lines.values())
    for (const { element, from, to, item } of run) {
      const kind = item === undefined ? undefined : rig.items.get(item)?.part.kind;
      if (kind !== 'pump' && kind !== 'motor-pump') continue;
      return {
        inlet: network.pressure(from),
        outlet: network.pressure(to),
        cycling: network.state(element) === 'cycling',
      };
    }
  return { inlet: null, outlet: null, cycling: false };
}
