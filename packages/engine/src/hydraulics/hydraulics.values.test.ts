import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInp } from '../../test/inp-network.ts';
import {
  displacementPumpFlow,
  frictionFactorBlend,
  frictionFactorChurchill,
  frictionFactorColebrook,
  frictionFactorDunlop,
  frictionFactorLaminar,
  frictionFactorSwameeJain,
  frictionFactorSwameeJainDunlop,
  frictionSlopeBlend,
  pumpDemand,
} from '../physics/index.ts';
import {
  FRICTION_COLEBROOK,
  FRICTION_SWAMEE_JAIN,
  W_PER_REYNOLDS,
  evaluatePsi,
  psiOut,
} from './friction-kernel.ts';
import { compileNetwork, type CompiledNetwork, type ElementLaw, type NetworkModel } from './index.ts';

interface Quantity {
  readonly value: number | string;
  readonly unit: string;
}
interface Entry {
  readonly id: string;
  readonly inputs: Readonly<Record<string, Quantity>>;
  readonly expected: Readonly<Record<string, Quantity>>;
  readonly tolerance: string;
  readonly source: string;
}
type Inputs = Readonly<Record<string, number>>;
type Outputs = Readonly<Record<string, number>>;

const LPM = 1e-3 / 60;
const BAR = 1e5;
const G = 9.80665;
/** Factors to SI, by definition. Metres of the liquid stay what they are. */
const SI: Readonly<Record<string, number>> = {
  '-': 1,
  bool: 1,
  '%': 0.01,
  'L/min': LPM,
  bar: BAR,
  'L/min/bar': LPM / BAR,
  'L/min/bar^0.5': LPM / Math.sqrt(BAR),
  'bar/(L/min)': BAR / LPM,
  cP: 1e-3,
  'm2/s': 1,
  'm of liquid': 1,
};

const folder = new URL('../../reference/hydraulics/', import.meta.url);

/** Pump, outlets and tank at one height, water of 1000 kg/m3, no pipes: pressures are those of the closed forms. */
function bareRig(laws: readonly { id: string; from: string; to: string; law: ElementLaw }[]): NetworkModel {
  return {
    liquid: { density: 1000, viscosity: 1e-3 },
    nodes: [
      { id: 'tank', elevation: 0, surface: 0 },
      { id: 'out', elevation: 0 },
      { id: 'air', elevation: 0, atmosphere: true },
    ],
    elements: laws,
  };
}

function solve(model: NetworkModel): CompiledNetwork {
  const compiled = compileNetwork(model);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  const solution = compiled.network.solve({ start: 'cold' });
  expect(solution.status, solution.reason?.message).toBe('converged');
  return compiled.network;
}

const SPEED = 50;
const pump = (q0: number, slip: number): ElementLaw => ({
  kind: 'positive-displacement-pump',
  displacement: q0 / SPEED,
  speed: SPEED,
  slip,
});
const tip = (k: number): ElementLaw => ({ kind: 'orifice', k });

function pumpTipRegulator(i: Inputs, regulator: ElementLaw): CompiledNetwork {
  return solve(
    bareRig([
      { id: 'pump', from: 'tank', to: 'out', law: pump(i['q0']!, i['slip_per_bar']!) },
      { id: 'tip', from: 'out', to: 'air', law: tip(i['tip_k']!) },
      { id: 'bypass', from: 'out', to: 'tank', law: regulator },
    ]),
  );
}

/** Wide open a regulator of the closed forms loses nothing. */
const NO_LIMIT = 1;

function pressureAndFlows(network: CompiledNetwork): {
  pressure: number;
  tip_flow: number;
  bypass_flow: number;
} {
  return {
    pressure: network.pressure(network.nodeIndex('out'))!,
    tip_flow: network.flow(network.elementIndex('tip')),
    bypass_flow: network.flow(network.elementIndex('bypass')),
  };
}

/** The polyline of the entry's source, [L/min, bar]. */
const DEMAND_CURVE = [
  [0, 5.5],
  [2.2, 3.97],
  [5, 2.97],
  [8, 1.98],
  [11, 0.99],
  [13.6, 0],
].map(([flow, pressure]) => ({ flow: flow! * LPM, pressure: pressure! * BAR }));

function onDemand(i: Inputs): Outputs {
  const law: ElementLaw = {
    kind: 'demand-pump',
    curve: DEMAND_CURVE,
    switchOff: i['switch_off']!,
    switchOn: i['switch_on']!,
  };
  const network = solve(
    bareRig([
      { id: 'pump', from: 'tank', to: 'out', law },
      { id: 'tip', from: 'out', to: 'air', law: tip(i['tip_k']!) },
    ]),
  );
  if (network.state(0) !== 'cycling')
    return { cycles: 0, flow: network.flow(1), pressure: network.pressure(network.nodeIndex('out'))! };
  const band = network.cyclingBand(0, 1)!;
  return { cycles: 1, flow_at_switch_on: band.flowAtSwitchOn, flow_at_switch_off: band.flowAtSwitchOff };
}

function gapPump(i: Inputs): Outputs {
  const q0 = i['displacement_flow']!;
  const slip = i['slip_at_1cP_10bar']! / (10 * BAR);
  const model = bareRig([
    { id: 'pump', from: 'tank', to: 'high', law: { ...pump(q0, slip), viscosityExponent: 1 } as ElementLaw },
  ]);
  const rise = i['p']! / (1000 * G);
  const network = solve({
    ...model,
    liquid: { density: 1000, viscosity: i['mu']! },
    nodes: [...model.nodes, { id: 'high', elevation: 0, surface: rise }],
  });
  const q = network.flow(0);
  const documented = displacementPumpFlow({
    displacement: (q0 / SPEED) * 2 * Math.PI,
    speed: SPEED,
    slip,
    pressureRise: i['p']!,
    viscosity: i['mu']!,
    viscosityExponent: 1,
  });
  expect(documented / q).toBeCloseTo(1, 9);
  return { q };
}

/** Least and most that the demo's valve pumps lose at their rated pressure. */
function valvePumpSlip(): Outputs {
  const file = new URL('../../../../demo/catalogue/pump.json', import.meta.url);
  const { parts } = JSON.parse(readFileSync(file, 'utf8')) as {
    parts: { law: { action: string; mechanism?: string; slipAtMaxPressure?: string } }[];
  };
  const shares = parts
    .filter(({ law }) => law.mechanism === 'diaphragm' || law.mechanism === 'piston')
    .map(({ law }) => parseFloat(law.slipAtMaxPressure!) / 100);
  expect(shares.length).toBeGreaterThan(10);
  return { slip_low: Math.min(...shares), slip_high: Math.max(...shares) };
}

function referenceNetwork(entry: Entry): Outputs {
  const file = String(entry.inputs['file']!.value);
  const { model } = readInp(readFileSync(new URL(file, folder), 'utf8'), 'swamee-jain');
  expect(model.liquid.density).toBeCloseTo(1000 * Number(entry.inputs['specific_gravity']!.value), 9);
  const kinematic = model.liquid.viscosity / model.liquid.density;
  expect(kinematic / Number(entry.inputs['kinematic_viscosity']!.value)).toBeCloseTo(1, 9);
  const network = solve(model);
  const outputs: Record<string, number> = {};
  for (const field of Object.keys(entry.expected)) {
    const name = field.slice(field.indexOf(':') + 1);
    outputs[field] = field.startsWith('flow:')
      ? network.flow(network.elementIndex(name))
      : network.pressure(network.nodeIndex(name))! / (model.liquid.density * G);
  }
  return outputs;
}

/** Every id of ours belongs to exactly one of these. */
const families: readonly [RegExp, (i: Inputs, entry: Entry) => Outputs][] = [
  [
    /^friction-/,
    ({ Re, relative_roughness }) => {
      const f = Re! < 2300 ? frictionFactorLaminar(Re!) : frictionFactorColebrook(Re!, relative_roughness!);
      expect(frictionFactorBlend(Re!, relative_roughness!)).toBe(f);
      return { darcy_f: f };
    },
  ],
  [/^churchill-/, (i) => ({ darcy_f: frictionFactorChurchill(i['Re']!, i['relative_roughness']!) })],
  [
    /^swameejain-/,
    (i) => {
      const f = frictionFactorSwameeJain(i['Re']!, i['relative_roughness']!);
      return {
        darcy_f: f,
        ratio_to_colebrook: f / frictionFactorColebrook(i['Re']!, i['relative_roughness']!),
      };
    },
  ],
  [
    /^blend-/,
    (i) => ({
      darcy_f: frictionFactorBlend(i['Re']!, i['relative_roughness']!),
      dlnf_dlnRe: frictionSlopeBlend(i['Re']!, i['relative_roughness']!),
    }),
  ],
  [/^dunlop-/, (i) => ({ darcy_f: frictionFactorDunlop(i['Re']!, i['relative_roughness']!) })],
  [/^network-/, (_, entry) => referenceNetwork(entry)],
  [/^pd-visc-/, gapPump],
  [/^pd-slip-handbook$/, valvePumpSlip],
  [
    /^pd-tip-relief-/,
    (i) => {
      const network = pumpTipRegulator(i, {
        kind: 'relief-valve',
        setPressure: i['set_pressure']!,
        k: NO_LIMIT,
      });
      const open = network.state(network.elementIndex('bypass')) === 'holding';
      return { ...pressureAndFlows(network), regulator_open: open ? 1 : 0 };
    },
  ],
  [
    /^pd-tip-droop-/,
    (i) =>
      pressureAndFlows(
        pumpTipRegulator(i, {
          kind: 'back-pressure-regulator',
          setPressure: i['p_crack']!,
          gradient: i['droop']!,
          k: NO_LIMIT,
        }),
      ),
  ],
  [/^ondemand-/, onDemand],
  [/^agit-20pct$/, () => ({ margin: pumpDemand(2e-4, 3e-4) / 5e-4 - 1 })],
];

/** Share of the expected value allowed, from the words of the entry. */
function allowedShare(tolerance: string, field: string): number {
  // Printed with six figures only.
  if (field === 'ratio_to_colebrook') return 5e-6;
  if (tolerance === 'rule') return 1e-9;
  const share = /^(?:exact )?([\d.e-]+) rel/.exec(tolerance);
  if (share === null) throw new Error(`tolerance not understood: ${tolerance}`);
  return Number(share[1]);
}

const toSi = ({ value, unit }: Quantity): number => {
  const factor = SI[unit];
  if (factor === undefined || typeof value !== 'number') throw new Error(`no factor for unit ${unit}`);
  return value * factor;
};

const ours = /^(friction-|churchill-|swameejain-|blend-|dunlop-|network-|pd-|ondemand-|agit-)/;
const entries = (JSON.parse(readFileSync(new URL('values.json', folder), 'utf8')) as Entry[]).filter(
  ({ id }) => ours.test(id),
);

describe('Published values of friction, pumps, regulators and whole networks', () => {
  it('lists all seventy-seven entries', () => {
    expect(entries).toHaveLength(77);
  });

  it.each(entries.map((entry) => [entry.id, entry.source, entry] as const))(
    'meets %s (%s)',
    (id, _, entry) => {
      const matching = families.filter(([pattern]) => pattern.test(id));
      expect(matching, `${id} needs exactly one mapping`).toHaveLength(1);
      const inputs: Record<string, number> = {};
      for (const [name, quantity] of Object.entries(entry.inputs))
        if (typeof quantity.value === 'number') inputs[name] = toSi(quantity);
      const computed = matching[0]![1](inputs, entry);
      expect(Object.keys(computed).sort()).toEqual(Object.keys(entry.expected).sort());
      for (const [field, quantity] of Object.entries(entry.expected)) {
        const expected = toSi(quantity);
        const got = computed[field]!;
        const message = `${id} ${field}: ${got} instead of ${expected}, ${entry.tolerance}; ${entry.source}`;
        expect(Number.isFinite(got), message).toBe(true);
        if (entry.tolerance === 'range') {
          if (field.endsWith('_low')) expect(got, message).toBeGreaterThanOrEqual(expected);
          else expect(got, message).toBeLessThanOrEqual(expected);
          continue;
        }
        const limit = Math.abs(expected) * allowedShare(entry.tolerance, field);
        expect(Math.abs(got - expected), message).toBeLessThanOrEqual(limit);
      }
    },
  );
});

describe("The solver's own friction", () => {
  const grid: [number, number][] = [];
  for (let re = 3; re < 2e8; re *= 1.0937) for (const rr of [0, 1e-5, 1e-3, 0.05]) grid.push([re, rr]);

  it.each([
    ['Colebrook with its blend', FRICTION_COLEBROOK, frictionFactorBlend],
    ['Swamee-Jain with the cubic of Dunlop', FRICTION_SWAMEE_JAIN, frictionFactorSwameeJainDunlop],
  ] as const)('equals the documented law of %s to 1e-11', (_, law, documented) => {
    let worst = 0;
    for (const [re, relativeRoughness] of grid) {
      const expected = documented(re, relativeRoughness);
      const w = re * W_PER_REYNOLDS;
      evaluatePsi({ law, relativeRoughness, coilRatio: 0, index: 1 }, w);
      worst = Math.max(worst, Math.abs(psiOut[0]! / (w * w) / expected - 1));
    }
    expect(worst).toBeLessThan(1e-11);
  });
});
