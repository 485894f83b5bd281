import { display } from '../../quantity/index.ts';
import { wholeFeet, type HardwareNeed } from '../bill/index.ts';
import { cautionsOf } from './cautions.ts';
import type { ProofContext } from './context.ts';
import { circuitOf } from './electrics-cable.ts';
import { consumersOf } from './electrics-consumers.ts';
import { loadedOf } from './loaded.ts';
import { holdingOf } from './structure-hold.ts';

/** Straps, bolts, wire, terminals, fuses and labels: what the promises of structure and electrics reckon with, and the cautions. */
export function hardwareNeeds(context: ProofContext): HardwareNeed[] {
  return [
    ...holding(context),
    ...consumersOf(context).flatMap((c) => wiring(context, c)),
    ...labels(context),
  ].filter((need) => need.quantity > 0);
}

/** Out of range for the physics is told by the promise; there is then nothing to buy. */
function holding(context: ProofContext): HardwareNeed[] {
  try {
    const loaded = loadedOf(context);
    if (loaded === undefined) return [];
    const { straps, workingLoad, bolts, bolt } = holdingOf(context, loaded);
    return [
      {
        words: () => `strap for ${display(workingLoad, 'force', 'us')} working load`,
        quantity: straps,
        unit: 'each',
        fits: ({ purpose: p }) => p.form === 'strap' && p.workingLoad >= workingLoad * (1 - 1e-6),
      },
      {
        words: () => `bolt ${bolt.thread}, grade ${bolt.grade}`,
        quantity: bolts,
        unit: 'each',
        fits: ({ purpose: p }) => p.form === 'bolt' && p.thread === bolt.thread && p.grade === bolt.grade,
      },
    ];
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** Two conductors there and back, a terminal at each of their four ends, a fuse at the battery. */
function wiring(context: ProofContext, consumer: ReturnType<typeof consumersOf>[number]): HardwareNeed[] {
  const { chosen, oneWay } = circuitOf(context, consumer);
  if (chosen === undefined) return [];
  const { cable, fuse } = chosen;
  const gauge =
    (form: 'wire' | 'terminal'): HardwareNeed['fits'] =>
    ({ purpose: p }) =>
      p.form === form && p.gauge === cable.gauge;
  return [
    {
      words: () => `AWG ${cable.label} wire`,
      quantity: wholeFeet(2 * oneWay),
      unit: 'ft',
      fits: gauge('wire'),
    },
    { words: () => `terminal for AWG ${cable.label}`, quantity: 4, unit: 'each', fits: gauge('terminal') },
    {
      words: () => `fuse of ${fuse ?? 0} A`,
      quantity: fuse === null ? 0 : 1,
      unit: 'each',
      fits: ({ purpose: p }) => p.form === 'fuse' && p.rating === fuse,
    },
  ];
}

/** One label for each caution that the rig brings up; a caution that is still a question gets its label too. */
function labels(context: ProofContext): HardwareNeed[] {
  return [
    {
      words: () => 'label for cautions',
      quantity: cautionsOf(context).length,
      unit: 'each',
      fits: ({ purpose }) => purpose.form === 'label',
    },
  ];
}
