import { first } from '../rig-document.ts';
import type { ProofContext } from './context.ts';
import { circuitOf, voltageLost } from './electrics-cable.ts';
import { consumersOf, type Consumer } from './electrics-consumers.ts';

/** One circuit from the supply to what draws current, as the proof has sized it. */
export interface WiringCircuit {
  readonly item: string;
  readonly name: string;
  readonly use: Consumer['use'];
  /** [A] */
  readonly current: number;
  /** Length of one conductor [m]; there are two. */
  readonly oneWay: number;
  /** Absent when no cable of the table does. */
  readonly cable?: { readonly label: string; /** [A] */ readonly ampacity: number };
  /** [A]; null for a starter, which carries none. */
  readonly fuse: number | null;
  /** Voltage lost there and back, and what may be lost [V]. */
  readonly drop?: number;
  readonly allowed: number;
}

/** How a rig is wired. */
export interface Wiring {
  /** The rig's battery; absent when the vehicle feeds it. */
  readonly battery?: string;
  readonly supply: string;
  /** [V] */
  readonly voltage: number;
  readonly circuits: readonly WiringCircuit[];
  /** Engine whose coil charges the battery, and its current [A]. */
  readonly charging?: { readonly item: string; readonly current: number };
}

/** The wiring of a rig; undefined for one without electrics. */
export function wiringOf(context: ProofContext): Wiring | undefined {
  const consumers = consumersOf(context);
  if (consumers.length === 0) return undefined;
  const battery = first(context.rig, 'battery');
  const engine = first(context.rig, 'engine');
  const circuits = consumers.map((consumer): WiringCircuit => {
    const { item, name, use, current } = consumer;
    const circuit = circuitOf(context, consumer);
    const { oneWay, allowed, chosen } = circuit;
    const drop = voltageLost(context, current, circuit);
    const told = { item, name, use, current, oneWay, allowed };
    if (chosen === undefined) return { ...told, fuse: null };
    const { cable, fuse } = chosen;
    return {
      ...told,
      fuse,
      cable: { label: cable.label, ampacity: cable.ampacity },
      ...(drop === undefined ? {} : { drop }),
    };
  });
  return {
    ...(battery === undefined ? {} : { battery: battery.item.id }),
    supply: battery?.part.name ?? "the vehicle's battery",
    voltage: circuitOf(context, consumers[0]!).voltage,
    circuits,
    ...(battery === undefined || engine === undefined || !(engine.part.chargingCurrent > 0)
      ? {}
      : { charging: { item: engine.item.id, current: engine.part.chargingCurrent } }),
  };
}
