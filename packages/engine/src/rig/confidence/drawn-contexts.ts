import { driveOf } from '../drive.ts';
import type { ProofContext, ProvenDuty } from '../proof/context.ts';
import { first } from '../rig-document.ts';
import type { Condition, DrawnNetwork, Reading } from './drawn-network.ts';
import type { Draws } from './draws.ts';
import { pumpReadings } from './pump-readings.ts';
import type { ToleranceKind } from './tolerances.data.ts';
import type { UncertainInput } from './uncertain-input.ts';
import { withFactors } from './with-factors.ts';

/** Inputs that nothing but a network asks: their effect comes with its readings. */
const IN_NETWORK: ReadonlySet<ToleranceKind> = new Set<ToleranceKind>([
  'pump-flow',
  'pump-slip',
  'drive-speed',
  'hose-roughness',
  'passage',
  'strainer-dirt',
  'set-pressure',
  'override',
  'tip-flow',
  'tip-wear',
  'jet-flow',
  'suction-need',
  'engine-power',
  'throw',
  'dry-mass',
  'liquid-mass',
  'wind',
]);

/** What draws are made of. */
interface Sheet {
  readonly context: ProofContext;
  readonly draws: Draws;
  readonly network: (proven: ProvenDuty, condition: Condition) => DrawnNetwork | undefined;
}

/** A duty with its outlets open as the proof knows it, in each draw. */
export interface DrawnDuty {
  readonly readings: readonly Reading[];
  readonly at: (draw: number) => ProvenDuty;
}

/** What the proof works with, in each draw: so its own functions can be asked. */
export class DrawnContexts {
  private readonly sheet: Sheet;
  private readonly made: ProofContext[] = [];
  private readonly duties = new Map<ProvenDuty, DrawnDuty | undefined>();
  private readonly inputs: readonly UncertainInput[];
  private readonly columns: readonly Float64Array[];

  constructor(sheet: Sheet) {
    this.sheet = sheet;
    const { inputs, columns } = sheet.draws;
    const outside = inputs.map((_, k) => k).filter((k) => !IN_NETWORK.has(inputs[k]!.kind));
    this.inputs = outside.map((k) => inputs[k]!);
    this.columns = outside.map((k) => columns[k]!);
  }

  /** The rig of one draw; its duties are as driven in that draw, their flows still those of the proof. */
  at(draw: number): ProofContext {
    return (this.made[draw] ??= this.make(draw));
  }

  private make(draw: number): ProofContext {
    const { context } = this.sheet;
    const rig = withFactors(context.rig, this.inputs, (_, k) => this.columns[k]![draw]!);
    return {
      ...context,
      rig,
      drive: driveOf(rig),
      tank: first(rig, 'tank')!.part,
      duties: context.duties.map((d, i) => ({ ...d, duty: rig.brief.duties[i]! })),
    };
  }

  /** One duty with what comes out of it in each draw; undefined where its proof has no steady state. */
  duty(proven: ProvenDuty): DrawnDuty | undefined {
    if (!this.duties.has(proven)) this.duties.set(proven, this.makeDuty(proven));
    return this.duties.get(proven);
  }

  private makeDuty(proven: ProvenDuty): DrawnDuty | undefined {
    const { context } = this.sheet;
    const place = context.duties.indexOf(proven);
    const network = this.sheet.network(proven, 'open');
    if (network === undefined) return undefined;
    const outlets = network.made.outlets.map(({ line, last, before }) => ({
      line,
      flow: network.flow(last),
      pressure: network.pressure(before),
    }));
    const pump = pumpOf(context, network);
    const made: ProvenDuty[] = [];
    return {
      readings: [
        ...outlets.flatMap((o) => [o.flow, o.pressure]),
        ...(pump === undefined ? [] : [pump.inlet, pump.outlet, pump.flow]),
      ],
      at: (draw) => {
        let found = made[draw];
        if (found !== undefined) return found;
        const { duty } = this.at(draw).duties[place]!;
        found = {
          ...proven,
          duty,
          open: {
            ...proven.open,
            outlets: outlets.map(({ line, flow, pressure }) => ({
              line,
              flow: flow.values[draw]!,
              tipPressure: pressure.values[draw]!,
            })),
            pump:
              pump === undefined
                ? undefined
                : {
                    item: pump.item,
                    flow: pump.flow.values[draw]!,
                    inlet: pump.inlet.values[draw]!,
                    outlet: pump.outlet.values[draw]!,
                  },
          },
        };
        return (made[draw] = found);
      },
    };
  }
}

function pumpOf({ rig }: ProofContext, network: DrawnNetwork) {
  const item = (first(rig, 'pump') ?? first(rig, 'motor-pump'))?.item.id;
  const found = item === undefined ? undefined : pumpReadings(network, item);
  return item === undefined || found === undefined ? undefined : { item, ...found };
}
