import { TOLERANCES, type Proof } from '../rig/index.ts';
import { instrumentOf } from './instruments.data.ts';
import type { SheetReading } from './sheet-reading.ts';

/** Doubt of where the masses stand along the rig, as a share of a load: judgement, no source. */
const PLACING = 0.03;
const NINETY_FIVE = 1.6449;

/** What wheels and coupler weigh with the tank empty; nothing for a rig that stands on a vehicle of unknown weight. */
export function scaleReadings(proof: Proof): SheetReading[] {
  const { name, dimension, deviation: noise } = instrumentOf('scale');
  return (proof.placement?.supports ?? [])
    .filter((s) => !s.id.startsWith('vehicle') && s.empty > 0)
    .map((support): SheetReading => {
      const parts = [
        {
          of: `${support.name}: ${TOLERANCES['dry-mass'].name}`,
          variance: TOLERANCES['dry-mass'].deviation ** 2,
        },
        { of: 'where the parts stand', variance: PLACING ** 2 },
        { of: name, variance: noise ** 2 },
      ].sort((a, b) => b.variance - a.variance);
      const variance = parts.reduce((sum, p) => sum + p.variance, 0);
      const deviation = Math.sqrt(variance);
      return {
        id: `scale:${support.id}`,
        instrument: 'scale',
        dimension,
        line: support.name,
        needed: false,
        expected: support.empty,
        low: support.empty * Math.exp(-NINETY_FIVE * deviation),
        high: support.empty * Math.exp(NINETY_FIVE * deviation),
        deviation,
        limits: [],
        doubt: parts.map((p) => ({ of: p.of, share: p.variance / variance })),
      };
    });
}
