import type { Part, PartOf } from '../src/catalogue/index.ts';
import { readBrief, type Brief } from '../src/rig/brief.ts';
import type { OutletState } from '../src/rig/duty-state.ts';
import type { ProofContext } from '../src/rig/proof/context.ts';
import { liquidOf } from '../src/rig/proof/liquid.ts';
import { boxTank, contextOf, rigOf } from './machine-rig.ts';

// Rigs for the tests of dose, drift, rinse and day: what comes out of them is given, nothing is solved.

const part = (id: string) => ({
  id,
  name: id,
  mass: 1,
  size: { length: 0, width: 0, height: 0 },
  costCents: 0,
  priceCents: 0,
  leadTimeDays: 0,
  stock: 0,
  ports: [],
  wetted: [],
});

export function nozzle(more: Partial<PartOf<'nozzle'>> = {}): PartOf<'nozzle'> {
  return {
    kind: 'nozzle',
    ...part('nozzle'),
    pattern: 'flat-fan',
    angle: (80 * Math.PI) / 180,
    flowAtOneBar: 1e-5,
    minPressure: 1e5,
    maxPressure: 4e5,
    droplets: [
      { pressure: 1e5, class: 'coarse' },
      { pressure: 3e5, class: 'medium' },
      { pressure: 4e5, class: 'fine' },
    ],
    ...more,
  };
}

export function boom(nozzles: number, spacing: number): PartOf<'boom'> {
  return {
    kind: 'boom',
    ...part('boom'),
    width: nozzles * spacing,
    spacing,
    sections: 1,
    nozzles,
    bore: 0.02,
    maxPressure: 1e6,
  };
}

export function tip(more: Partial<PartOf<'tip'>> = {}): PartOf<'tip'> {
  return {
    kind: 'tip',
    ...part('tip'),
    pattern: 'stream',
    angle: 0,
    flowAtOneBar: 1e-4,
    velocityCoefficient: 0.97,
    stream: 'gun',
    minPressure: 1e5,
    maxPressure: 5e6,
    ...more,
  };
}

export function hoseOf(bore: number): PartOf<'hose'> {
  return {
    kind: 'hose',
    ...part('hose'),
    use: 'delivery',
    bore,
    outsideDiameter: bore * 1.4,
    roughness: 0,
    maxPressure: 4e6,
    minPressure: 0,
    bendRadius: 0.2,
    longestPiece: 300,
  };
}

export interface WorkRig {
  readonly brief?: Readonly<Record<string, unknown>>;
  readonly liquid?: Readonly<Record<string, unknown>>;
  readonly duty?: Readonly<Record<string, unknown>>;
  readonly site?: Readonly<Record<string, unknown>>;
  /** Parts of the line to the air, from hose to nozzle or tip. */
  readonly line: Readonly<Record<string, Part>>;
  readonly count?: number;
  readonly hoseLength?: number;
  readonly others?: Readonly<Record<string, Part>>;
  readonly outlet: Pick<OutletState, 'flow' | 'tipPressure'>;
  readonly pumpFlow?: number;
  readonly density?: number;
}

const HEAD = { id: 'test', title: 'Test rig', customer: 'Nobody' };

/** A proof's context with one duty whose outlet gives what the test says. */
export function workContext(w: WorkRig): ProofContext {
  const boomRig = 'boom' in w.line;
  const read = readBrief({
    format: 'spraywright-brief',
    ...HEAD,
    work: 'tractor-spot-and-boom',
    liquids: [
      {
        id: 'mix',
        name: 'Mix',
        liquid: 'glyphosate_mix',
        ...(w.density === undefined ? {} : { density: `${w.density} kg/m3` }),
        ...w.liquid,
      },
      { id: 'rinse', name: 'Water', liquid: 'water', use: 'flush' },
    ],
    duties: [
      {
        id: 'work',
        name: 'Work',
        liquid: 'mix',
        open: [boomRig ? 'boom' : 'gun'],
        tankLevel: '50 %',
        agitate: false,
        ...w.duty,
      },
    ],
    carrier: { form: 'skid' },
    site: { temperature: '68 F', humidity: '50 %', ...w.site },
    limits: {},
    wishes: {},
    ...w.brief,
  });
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  const brief: Brief = read.brief;
  const run = Object.keys(w.line);
  const last = run[run.length - 1]!;
  const rig = rigOf(
    { tank: boxTank(1, 0.5, 1), ...w.others, ...w.line },
    {
      items: {
        [last]: { count: w.count ?? 1 },
        ...(w.hoseLength === undefined ? {} : { hose: { length: w.hoseLength } }),
      },
    },
  );
  const id: 'boom' | 'gun' = boomRig ? 'boom' : 'gun';
  const lines = rig.lines.map((l) => ({ ...l, id, opens: id, run }));
  const bound = { ...rig, brief, lines, document: { ...rig.document, brief, lines } };
  const context = contextOf(bound, w.density ?? 1000);
  const { drySalt } = liquidOf(brief, 'mix', context.site);
  return {
    ...context,
    duties: context.duties.map((d) => {
      const open = {
        ...d.open,
        status: 'converged' as const,
        reason: undefined,
        outlets: [{ line: id, ...w.outlet }],
        pump: {
          item: 'pump',
          flow: w.pumpFlow ?? w.outlet.flow,
          inlet: 0,
          outlet: w.outlet.tipPressure * 1.2,
        },
        highestPressure: w.outlet.tipPressure,
        pressureAt: new Map([[last, w.outlet.tipPressure]]),
      };
      return {
        ...d,
        liquid: { ...d.liquid, id: 'mix', name: 'Mix', ...(drySalt === undefined ? {} : { drySalt }) },
        open,
        dirty: open,
        shut: open,
      };
    }),
  };
}
