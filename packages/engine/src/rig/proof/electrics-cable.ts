import {
  cableDrop,
  cableFor,
  copperAreaForDrop,
  copperResistance,
  fuseFor,
  WIRE_SIZES,
  type CableChoice,
} from '../../physics/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import type { PlacedPart } from '../placement/index.ts';
import { first } from '../rig-document.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import type { Consumer } from './electrics-consumers.ts';
import { loadedOf } from './loaded.ts';

/** Voltage that may be lost: 3 % for a pump, 10 % for a motor of short use or a starter: boat practice, from memory. */
export const DROP = { pump: 0.03, reel: 0.1, starter: 0.1 } as const;
/** Fuses that can be had: common practice, no source [A]. */
const FUSES = [3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 350, 400];
/** Cable goes along the frame, down and up again; and to the vehicle's battery when the rig has none [m]. */
export const DETOUR = 0.6;
export const TO_VEHICLE = 3;
export const SYSTEM_VOLTAGE = 12;

/** Cable by drop, ampacity and fuse for each consumer. */
export function cablePromises(context: ProofContext, consumers: readonly Consumer[]): RigPromise[] {
  return consumers.map((consumer) => cablePromise(context, consumer));
}

/** A consumer's circuit: what it is laid out for, and the cable and fuse that do it. */
export interface Circuit {
  readonly voltage: number;
  /** [m] */
  readonly oneWay: number;
  /** Voltage that may be lost [V]. */
  readonly allowed: number;
  /** Absent when no cable of the table does. */
  readonly chosen: { readonly cable: CableChoice; readonly fuse: number | null } | undefined;
}

/** Cable and fuse of one consumer, from the rig's battery or the vehicle's. */
export function circuitOf(context: ProofContext, { item, current, use }: Consumer): Circuit {
  const battery = first(context.rig, 'battery');
  const voltage = battery?.part.voltage ?? first(context.rig, 'motor-pump')?.part.voltage ?? SYSTEM_VOLTAGE;
  const oneWay = lengthTo(context, item, battery?.item.id);
  const allowed = DROP[use] * voltage;
  // Cranking lasts seconds: a starter is sized by drop, and carries no fuse.
  const steady = use === 'starter' ? 0 : current;
  return { voltage, oneWay, allowed, chosen: cableAndFuse(current, steady, oneWay, allowed) };
}

/** Voltage that a current loses on the way there and back [V]. */
export function voltageLost({ rig }: ProofContext, current: number, circuit: Circuit): number | undefined {
  const area = circuit.chosen?.cable.area;
  return area === undefined
    ? undefined
    : cableDrop(current, area, circuit.oneWay, circuit.voltage).drop * looseFactor(rig, 'cable');
}

function cablePromise(context: ProofContext, consumer: Consumer): RigPromise {
  const { current, use } = consumer;
  const battery = first(context.rig, 'battery');
  const circuit = circuitOf(context, consumer);
  const { oneWay, allowed, chosen } = circuit;
  const told = {
    id: `electrics:cable:${consumer.item}`,
    kind: 'electrics' as const,
    items: [consumer.item, ...(battery === undefined ? [] : [battery.item.id])],
    method: 'cable by voltage drop, ampacity and fuse',
    source:
      'ABYC E-11 table of AWG cable as reprinted; 3 and 10 % drop and 125 % fuse are common practice, from memory',
  };
  const asked = { value: allowed, dimension: 'voltage' as const };
  const drop = voltageLost(context, current, circuit);
  if (chosen === undefined || drop === undefined)
    return unknown(
      {
        ...told,
        sentence: `Cable and fuse for ${consumer.name}`,
        cause: `no cable of the table carries ${say(context, current, 'current')} over ${say(context, oneWay, 'length')}: ask an electrician`,
      },
      asked,
      'at-most',
    );
  const { cable, fuse } = chosen;
  return compared(
    {
      ...told,
      sentence:
        fuse === null
          ? `AWG ${cable.label} cable turns the starter`
          : `AWG ${cable.label} cable and a ${fuse} A fuse feed ${use === 'reel' ? 'the reel' : 'the pump'}`,
      cause: `${say(context, current, 'current')} over ${say(context, oneWay, 'length')} each way${battery === undefined ? " to the vehicle's battery, a start value of ours" : ''}`,
      working: [
        { text: 'current', figure: { value: current, dimension: 'current' } },
        { text: 'one way', figure: { value: oneWay, dimension: 'length' } },
        worked(
          'voltage lost, copper at 20 °C',
          is(drop, 'voltage'),
          '{current} × 2 × {one way} × {resistance of the cable}',
          {
            current: is(current, 'current'),
            'one way': is(oneWay, 'length'),
            'resistance of the cable': is(copperResistance(cable.area, 1), 'resistancePerLength'),
          },
        ),
        { text: `AWG ${cable.label} carries`, figure: { value: cable.ampacity, dimension: 'current' } },
        ...(fuse === null ? [] : [{ text: 'fuse', figure: { value: fuse, dimension: 'current' as const } }]),
      ],
    },
    asked,
    { value: drop, dimension: 'voltage' },
    'at-most',
  );
}

/** Thinnest cable that keeps the drop, carries the current, and that a fuse of a usual size protects. */
export function cableAndFuse(
  current: number,
  steady: number,
  oneWay: number,
  allowed: number,
): { cable: CableChoice; fuse: number | null } | undefined {
  const area = copperAreaForDrop(current, 2 * oneWay, allowed);
  const thickest = WIRE_SIZES[WIRE_SIZES.length - 1]!;
  for (const least of [steady, ...WIRE_SIZES.map((s) => s.ampacityEngineSpace)]) {
    if (least < steady || least > thickest.ampacityEngineSpace) continue;
    const cable = cableOrNone(area, least);
    if (cable === undefined) return undefined;
    if (steady === 0) return { cable, fuse: null };
    const fuse = fuseFor(steady, cable.ampacity, FUSES);
    if (fuse.chosen !== null) return { cable, fuse: fuse.chosen };
  }
  return undefined;
}

function cableOrNone(area: number, ampacity: number): CableChoice | undefined {
  try {
    return cableFor(area, 'AWG', ampacity, true);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Along the frame from the battery to a consumer; to the vehicle when the rig has no battery. */
function lengthTo(context: ProofContext, item: string, battery: string | undefined): number {
  const parts = loadedOf(context)?.rig.parts ?? [];
  const to = parts.find((p) => p.item === item);
  if (to === undefined) return TO_VEHICLE;
  return cableWay(to, battery === undefined ? undefined : parts.find((p) => p.item === battery));
}

type Place = Pick<PlacedPart, 'x' | 'y' | 'z'>;

/** Way of a cable from a battery on the rig, or without one from the vehicle's, to what it feeds [m]. */
export function cableWay(to: Place, battery: Place | undefined): number {
  if (battery === undefined) return TO_VEHICLE + Math.max(0, to.x);
  return Math.abs(to.x - battery.x) + Math.abs(to.y - battery.y) + Math.abs(to.z - battery.z) + DETOUR;
}
