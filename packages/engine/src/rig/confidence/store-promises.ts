import { rinseTankVolume } from '../../physics/index.ts';
import type { ProofContext } from '../proof/context.ts';
import { chargeOfDay } from '../proof/electrics.ts';
import { circuitOf, voltageLost } from '../proof/electrics-cable.ts';
import { consumersOf } from '../proof/electrics-consumers.ts';
import { planOf } from '../proof/rinse.ts';
import { residualOf } from '../proof/rinse-residual.ts';
import { thinnedAntifreeze } from '../proof/rinse-winter.ts';
import { first } from '../rig-document.ts';
import type { DrawnPromise, DrawSheet } from './draw-sheet.ts';
import type { Reading } from './drawn-network.ts';

/** What is aboard is enough: water to rinse with, antifreeze, charge, and copper. */
export function storePromises(sheet: DrawSheet): DrawnPromise[] {
  return [...rinsing(sheet), ...winter(sheet), ...electrics(sheet)];
}

/** Water carried is known; what it must rinse out is not. */
function rinsing({ context, contexts, draws }: DrawSheet): DrawnPromise[] {
  const carried = context.rig.brief.rinse?.water;
  if (carried === undefined) return [];
  const promise = (id: string, asked: (at: ProofContext) => number): DrawnPromise => {
    const nominal = asked(context);
    return {
      id,
      as: 'figure',
      askedFactor: Float64Array.from({ length: draws.count }, (_, i) => asked(contexts.at(i)) / nominal),
      contenders: [{ readings: [], value: () => carried }],
    };
  };
  return [
    promise('rinse:plan', (at) => planOf(at, residualOf(at)).water),
    promise('rinse:tank', (at) => rinseTankVolume(at.tank.volume, residualOf(at).total).least),
  ];
}

function winter({ context, contexts }: DrawSheet): DrawnPromise[] {
  const { rinse, liquids } = context.rig.brief;
  const strength = liquids.find((l) => l.use === 'winterise')?.strength;
  const volume = rinse?.antifreeze;
  if (volume === undefined || strength === undefined) return [];
  return [
    {
      id: 'rinse:winter',
      as: 'figure',
      contenders: [
        {
          readings: [],
          value: (draw) => thinnedAntifreeze(volume, strength / 100, residualOf(contexts.at(draw))).freezing,
        },
      ],
    },
  ];
}

/** Battery through the day, and the voltage that each cable loses; the cable is the one that the proof has chosen. */
function electrics({ context, contexts }: DrawSheet): DrawnPromise[] {
  const consumers = consumersOf(context);
  const battery = first(context.rig, 'battery');
  const pumped = consumers.some((c) => c.use === 'pump');
  const duties = pumped ? context.duties.flatMap((d) => contexts.duty(d) ?? []) : [];
  const readings = duties.flatMap((d): readonly Reading[] => d.readings);
  const known: ReturnType<typeof consumersOf>[] = [];
  const consumersIn = (draw: number) => {
    let found = known[draw];
    if (found === undefined) {
      const at = contexts.at(draw);
      found = consumersOf(pumped ? { ...at, duties: duties.map((d) => d.at(draw)) } : at);
      known[draw] = found;
    }
    return found;
  };
  const out: DrawnPromise[] = consumers.map((consumer) => {
    const circuit = circuitOf(context, consumer);
    return {
      id: `electrics:cable:${consumer.item}`,
      as: 'figure',
      contenders: [
        {
          readings,
          value: (draw) => {
            const current = consumersIn(draw).find((c) => c.item === consumer.item)?.current ?? 0;
            return voltageLost(contexts.at(draw), current, circuit) ?? NaN;
          },
        },
      ],
    };
  });
  if (battery !== undefined)
    out.push({
      id: 'electrics:day',
      as: 'figure',
      contenders: [
        {
          readings,
          value: (draw) => {
            const at = contexts.at(draw);
            return chargeOfDay(at, consumersIn(draw), first(at.rig, 'battery')!.part).left;
          },
        },
      ],
    });
  else
    // A reel on the vehicle's supply.
    out.push({
      id: 'electrics:day',
      as: 'figure',
      contenders: [{ readings, value: (draw) => Math.max(0, ...consumersIn(draw).map((c) => c.current)) }],
    });
  return out;
}
