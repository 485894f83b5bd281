import type { PartOf } from '../../catalogue/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import { valveK } from '../fitting-loss.ts';

const BAR = 1e5;
/** Laminar coefficients of bends and of valves, as the network has them. */
const LAMINAR = { bends: 800, valve: 500 } as const;
/**
 * Share by which a loss that is reckoned with the network's own laws may be off: for roundings, and for hoses that the
 * network cuts into pieces.
 */
export const OFF = 5e-4;

/** What a part takes of the pressure by the flow [m3/s]: a linear and a square term. */
export interface Terms {
  readonly linear: number;
  readonly square: number;
}

interface Liquid {
  readonly density: number;
  readonly viscosity: number;
}

/** Of a part that is known by its flow at one bar of water; some times that. */
export function factorTerms(flowAtOneBar: number, { density }: Liquid, times = 1): Terms {
  return { linear: 0, square: (times * BAR * (density / 1000)) / flowAtOneBar ** 2 };
}

/** Of bends and branches of one bore [m] by the sum of their loss coefficients. */
export function bendTerms(lossCoefficient: number, bore: number, liquid: Liquid): Terms {
  return lossCoefficient > 0
    ? fitting(lossCoefficient, LAMINAR.bends, bore, liquid)
    : { linear: 0, square: 0 };
}

export function valveTerms({ flowAtOneBar, form, bore }: PartOf<'valve'>, liquid: Liquid): Terms {
  if (flowAtOneBar !== undefined) return factorTerms(flowAtOneBar, liquid);
  const checks = form === 'swing-check' || form === 'lift-check';
  return fitting(valveK(form, bore), checks ? 0 : LAMINAR.valve, bore, liquid);
}

/** A loss coefficient on the velocity in a bore, and one over the Reynolds number. */
function fitting(k: number, laminar: number, bore: number, { density, viscosity }: Liquid): Terms {
  const area = (Math.PI / 4) * bore ** 2;
  return {
    linear: (laminar * viscosity) / area / (2 * bore),
    square: (k * density) / 2 / area ** 2,
  };
}

export function sumOfTerms(terms: readonly Terms[]): Terms {
  let [linear, square] = [0, 0];
  for (const t of terms) {
    linear += t.linear;
    square += t.square;
  }
  return { linear, square };
}

/** What a hose takes of the pressure by the flow [Pa]; what is wound on a drum of some diameter takes more [m]. */
export function hoseLaw(
  bore: number,
  length: number,
  roughness: number,
  { density, viscosity }: Liquid,
  woundLength = 0,
  coilDiameter = 1,
): (flow: number) => number {
  // Written out, not spread: it is asked millions of times, and of objects of one shape it is answered twice as fast.
  return woundLength > 0
    ? (flow) =>
        hoseLoss({ flow, bore, length, roughness, density, viscosity, woundLength, coilDiameter })
          .pressureLoss
    : (flow) => hoseLoss({ flow, bore, length, roughness, density, viscosity }).pressureLoss;
}

/** The same of a hose that is counted on as far as its law is good, and beyond that not at all. */
export function countedHoseLaw(...hose: Parameters<typeof hoseLaw>): (flow: number) => number {
  const law = hoseLaw(...hose);
  return (flow) => {
    try {
      return law(flow);
    } catch (error) {
      if (error instanceof RangeError) return 0;
      throw error;
    }
  };
}
