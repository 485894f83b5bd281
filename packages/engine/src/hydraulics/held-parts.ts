/**
 * Laws made of parts that meet in a kink: friction in laminar, blended and turbulent flow, and the pieces of measured curves.
 * Held on one part, beyond its ends too, a law is smooth, and so are the flows as functions of what varies. Where parts meet
 * they give the same loss, so that a solution with held parts is the network's own exactly where its flows are within them.
 */
import { COUNT, SLOTS } from './element-parameters.ts';
import { FRICTION_COLEBROOK } from './friction-kernel.ts';
import { pieceAt, pieceEnds } from './loss-curve.ts';
import type { LossCurve } from './loss-curve.ts';
import type { NetworkState } from './network-state.ts';

/** Where the parts of the Colebrook law end, in hundreds of the Reynolds number. */
const FRICTION_ENDS = [-Infinity, 23, 40, Infinity];
/** As in the coefficients: a pump at standstill. */
const LEAST_SPEED = 1e-3;

/** The part, counted from 1, that each element's law is on at the present solution; 0 for laws of one part. */
export function partsOf(network: NetworkState): Uint16Array {
  return Uint16Array.from({ length: network.elementCount }, (_, e) => {
    const at = measureOf(network, e);
    const curve = curveOf(network, e);
    if (curve !== undefined) return pieceAt(curve, at);
    if (!hasFrictionParts(network, e)) return 0;
    return at < FRICTION_ENDS[1]! ? 1 : at < FRICTION_ENDS[2]! ? 2 : 3;
  });
}

/** What decides between the parts of an element's law, at the present solution: Re/100, or a curve's flow. */
export function measureOf(network: NetworkState, e: number): number {
  const q = Math.abs(network.flow(e));
  if (curveOf(network, e) === undefined) return q * network.laws.coefficients.frictionW[e]!;
  const { kind } = network.laws.laws[e]!;
  const speed = kind === 'centrifugal-pump' || kind === 'demand-pump' ? network.values[e * SLOTS]! : 1;
  return q / (Math.max(speed, LEAST_SPEED) * network.values[e * SLOTS + COUNT]!);
}

/** The two always have the same measure: pipes of one size in one chain. */
export function sameMeasure(network: NetworkState, a: number, b: number): boolean {
  const { circuit, laws } = network;
  const { frictionW } = laws.coefficients;
  if (curveOf(network, a) !== undefined || curveOf(network, b) !== undefined) return false;
  return circuit.branchOf[a] === circuit.branchOf[b] && frictionW[a] === frictionW[b];
}

/** From where to where a part holds, in that measure. */
export function endsOf(network: NetworkState, e: number, part: number): readonly [number, number] {
  const curve = curveOf(network, e);
  return curve === undefined ? [FRICTION_ENDS[part - 1]!, FRICTION_ENDS[part]!] : pieceEnds(curve, part);
}

/** Holds every element on its part; all zero frees them. */
export function holdParts(network: NetworkState, parts: Uint16Array): void {
  parts.forEach((part, e) => network.hold(e, part));
}

function curveOf(network: NetworkState, e: number): LossCurve | undefined {
  const curve = network.laws.context.curves[e];
  return curve === undefined || curve.power !== undefined ? undefined : curve;
}

function hasFrictionParts(network: NetworkState, e: number): boolean {
  const { coefficients, context } = network.laws;
  const key = coefficients.friction[e]!;
  const colebrook = key.law === FRICTION_COLEBROOK || context.heldPart[e]! > 0;
  return coefficients.frictionLoss[e]! > 0 && colebrook && key.coilRatio === 0;
}
