/** Random spray rigs, sound and absurd ones: loops, several pumps, regulators, check valves, shut valves, thick liquids. */
import type {
  ElementLaw,
  NetworkElement,
  NetworkLiquid,
  NetworkModel,
  NetworkNode,
} from '../src/hydraulics/index.ts';
import type { RandomSource } from './random-source.ts';

const LPM = 1 / 60000;
const BAR = 1e5;
const K_BAR = LPM / Math.sqrt(BAR);

export interface RandomOptions {
  /** Only a tree behind the pump, plain parts, everything open: what the ordering laws hold for. */
  readonly tree?: boolean;
}

export interface RandomNetwork {
  readonly model: NetworkModel;
  readonly pumps: readonly string[];
  readonly tips: readonly string[];
}

export function randomNetwork(r: RandomSource, options: RandomOptions = {}): RandomNetwork {
  const tree = options.tree === true;
  const nodes: NetworkNode[] = [{ id: 'tank', elevation: 0, surface: r.between(0.2, 3) }];
  const elements: NetworkElement[] = [];
  const node = (extra: Partial<NetworkNode> = {}): string => {
    const id = `n${nodes.length}`;
    nodes.push({ id, elevation: r.between(-1, 5), ...extra });
    return id;
  };
  const add = (from: string, to: string, law: ElementLaw, open = true, count = 1): string => {
    const id = `${law.kind}-${elements.length}`;
    elements.push({ id, from, to, law, open, count });
    return id;
  };
  const sizes: readonly [number, number] = r.chance(0.2) ? [0.002, 0.2] : [0.006, 0.05];
  const pipe = (): ElementLaw => {
    const bore = r.scale(...sizes);
    return {
      kind: 'pipe',
      length: r.chance(0.05) ? r.scale(1e-3, 1e3) : r.scale(0.1, 100),
      bore,
      roughness: r.pick([0, 1.5e-6, 1e-5, 1e-4]),
      lossCoefficient: r.chance(0.3) ? 0 : r.scale(0.05, 50),
      ...(r.chance(0.15) ? { coilDiameter: bore * r.between(6, 60) } : {}),
    };
  };
  const shut = (): boolean => tree || !r.chance(0.04);

  const pumps: string[] = [];
  const main = node();
  const pumpCount = tree || r.chance(0.8) ? 1 : 2;
  for (let i = 0; i < pumpCount; i++) {
    const inlet = node();
    add('tank', inlet, pipe(), shut());
    const outlet = node();
    pumps.push(add(inlet, outlet, randomPump(r), shut()));
    if (!tree && r.chance(0.4)) {
      const behind = node();
      add(outlet, behind, {
        kind: 'check-valve',
        bore: r.scale(...sizes),
        lossCoefficient: r.scale(0.5, 20),
        crackingPressure: r.chance(0.5) ? 0 : r.scale(10, 2e4),
      });
      add(behind, main, pipe());
    } else add(outlet, main, pipe());
  }

  const joints = [main];
  const grow = r.whole(1, r.chance(0.15) ? 30 : 8);
  for (let i = 0; i < grow; i++) {
    const from = r.pick(joints);
    const to = node();
    joints.push(to);
    const law = tree || r.chance(0.7) ? pipe() : randomPart(r, sizes);
    if (!tree && r.chance(0.1)) add(to, from, law, shut());
    else add(from, to, law, shut());
  }
  const tips: string[] = [];
  for (let i = r.whole(1, 8); i > 0; i--) {
    const from = r.pick(joints);
    const air = node({ atmosphere: true });
    const law: ElementLaw = {
      kind: r.pick(['orifice', 'jet-agitator'] as const),
      k: r.scale(0.1, 20) * K_BAR,
    };
    const count = r.chance(0.1) ? r.whole(2, 20) : 1;
    if (r.chance(0.6)) {
      const body = node();
      add(from, body, pipe(), shut(), count);
      tips.push(add(body, air, law, shut(), count));
    } else tips.push(add(from, air, law, shut(), count));
  }
  if (!tree) {
    for (let i = r.chance(0.4) ? r.whole(1, 4) : 0; i > 0; i--) {
      const from = r.pick(joints);
      const to = r.pick(joints);
      if (from !== to) add(from, to, r.chance(0.8) ? pipe() : randomPart(r, sizes), shut());
    }
  }
  for (let i = r.chance(0.6) ? r.whole(1, 2) : 0; i > 0; i--) {
    const from = tree ? main : r.pick(joints);
    const outlet = node();
    add(from, outlet, randomRelief(r));
    add(outlet, 'tank', pipe());
    if (!tree && r.chance(0.3)) add(outlet, 'tank', pipe());
  }
  return { model: { liquid: randomLiquid(r, tree), nodes, elements }, pumps, tips };
}

function randomLiquid(r: RandomSource, plain: boolean): NetworkLiquid {
  const density = r.between(950, 1350);
  const viscosity = density * (r.chance(0.3) ? r.scale(0.8e-6, 2e-4) : r.scale(0.8e-6, 3e-6));
  if (plain || !r.chance(0.08)) return { density, viscosity };
  return {
    density,
    viscosity,
    powerLaw: {
      consistency: r.scale(0.05, 3),
      index: r.between(0.35, 1),
      shearRateMin: r.scale(0.1, 30),
      shearRateMax: 1e5,
    },
  };
}

function randomPump(r: RandomSource): ElementLaw {
  const kind = r.pick([
    'positive-displacement-pump',
    'positive-displacement-pump',
    'centrifugal-pump',
    'demand-pump',
  ] as const);
  if (kind === 'positive-displacement-pump') {
    const flow = r.scale(5, 200) * LPM;
    const speed = r.between(50, 300);
    return {
      kind,
      displacement: flow / speed,
      speed,
      slip: (flow * r.scale(1e-4, 0.03)) / BAR,
      viscosityExponent: r.pick([0, 1]),
      constantSlip: r.pick([0, 0.04]),
    };
  }
  if (kind === 'demand-pump') {
    const flow = r.scale(3, 20) * LPM;
    const pressure = r.scale(2, 7) * BAR;
    return {
      kind,
      curve: [0, 0.3, 0.6, 0.8, 1].map((x) => ({
        flow: x * flow,
        pressure: pressure * (1 - 0.3 * x - 0.7 * x * x),
      })),
      switchOff: 0.8 * pressure,
      switchOn: 0.6 * pressure,
    };
  }
  const flow = r.scale(50, 600) * LPM;
  const head = r.scale(10, 120);
  const speed = r.between(0.4, 1.2);
  if (r.chance(0.3))
    return {
      kind,
      curve: { shutOffHead: head, coefficient: head / flow ** 2, exponent: r.between(1.6, 2.4) > 2 ? 2 : 2 },
      speed,
    };
  return {
    kind,
    curve: [0, 0.25, 0.5, 0.75, 1].map((x) => ({ flow: x * flow, head: head * (1 - 0.1 * x - 0.6 * x * x) })),
    interpolation: r.pick(['linear', 'smooth'] as const),
    speed,
  };
}

function randomRelief(r: RandomSource): ElementLaw {
  return {
    kind: r.pick(['back-pressure-regulator', 'unloader', 'relief-valve'] as const),
    setPressure: r.scale(0.3, 40) * BAR,
    ...(r.chance(0.5) ? { gradient: (r.scale(0.001, 0.5) * BAR) / LPM } : {}),
    k: r.scale(2, 60) * K_BAR,
    reference: r.chance(0.85) ? 'atmosphere' : 'outlet',
  };
}

function randomPart(r: RandomSource, sizes: readonly [number, number]): ElementLaw {
  switch (r.whole(0, 5)) {
    case 0:
      return {
        kind: 'check-valve',
        bore: r.scale(...sizes),
        lossCoefficient: r.scale(0.5, 20),
        crackingPressure: r.chance(0.5) ? 0 : r.scale(10, 2e4),
      };
    case 1:
      return {
        kind: 'fitting',
        bore: r.scale(...sizes),
        lossCoefficient: r.scale(0.05, 20),
        laminarCoefficient: r.pick([0, 800]),
      };
    case 2:
      return { kind: 'flow-factor', k: r.scale(1, 100) * K_BAR };
    case 3:
      return {
        kind: 'reducing-regulator',
        setPressure: r.scale(0.3, 15) * BAR,
        ...(r.chance(0.5) ? { gradient: (r.scale(0.001, 0.5) * BAR) / LPM } : {}),
        k: r.scale(2, 60) * K_BAR,
      };
    case 4: {
      const flow = r.scale(10, 200) * LPM;
      return {
        kind: 'curve',
        curve: [0.2, 0.5, 1].map((x) => ({ flow: x * flow, head: 10 * x * x })),
        oneWay: r.chance(0.3),
      };
    }
    default: {
      const flow = r.scale(10, 200) * LPM;
      return {
        kind: 'eductor',
        curve: [0.2, 0.5, 1].map((x) => ({ flow: x * flow, pressure: BAR * x * x })),
        suction: [
          { flow: 0, pressure: 0.1 * BAR },
          { flow: 0.05 * flow, pressure: BAR },
        ],
      };
    }
  }
}
