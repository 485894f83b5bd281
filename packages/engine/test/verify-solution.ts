/**
 * Checks a solution from outside: mass balance at every junction of the model, and every element's law written out anew
 * from the documented formulas (friction and coils through the physics layer), none of the solver's own arrays.
 */
import {
  criticalReynoldsRyanJohnson,
  frictionFactorBlend,
  frictionFactorCoil,
  frictionFactorPowerLaw,
  frictionFactorSwameeJainDunlop,
} from '../src/physics/index.ts';
import type {
  CompiledNetwork,
  ElementLaw,
  HeadPoint,
  NetworkElement,
  NetworkModel,
} from '../src/hydraulics/index.ts';

const G = 9.80665;

/** Flows below 1e-15 m3/s are none; that is 1e-9 of this [m3/s]. */
const LEAST_SCALE = 1e-6;

export interface Verdict {
  /** Largest net flow at a junction over the largest flow. */
  readonly imbalance: number;
  /** Largest error of an element's law as a share of the largest head difference, or of what the flow may be off. */
  readonly lawError: number;
  readonly worst: string;
  readonly finite: boolean;
}

export function verifySolution(model: NetworkModel, network: CompiledNetwork): Verdict {
  const net = new Map<string, number>();
  let largestFlow = 0;
  let finite = true;
  model.elements.forEach((e, i) => {
    const q = network.flow(i);
    finite &&= Number.isFinite(q);
    largestFlow = Math.max(largestFlow, Math.abs(q));
    net.set(e.from, (net.get(e.from) ?? 0) - q);
    net.set(e.to, (net.get(e.to) ?? 0) + q);
  });
  let imbalance = 0;
  for (const node of model.nodes) {
    if (node.surface !== undefined || node.atmosphere === true) continue;
    imbalance = Math.max(imbalance, Math.abs(net.get(node.id) ?? 0));
  }
  let largestHead = 1;
  model.nodes.forEach((n, i) => {
    const head = network.head(i);
    if (head === null) return;
    finite &&= Number.isFinite(head);
    largestHead = Math.max(largestHead, Math.abs(head - n.elevation));
  });
  let lawError = 0;
  let worst = '';
  model.elements.forEach((e, i) => {
    const error = elementError(model, network, e, i, largestFlow, largestHead);
    if (error > lawError) {
      lawError = error;
      worst = e.id;
    }
  });
  return { imbalance: imbalance / Math.max(largestFlow, LEAST_SCALE), lawError, worst, finite };
}

function elementError(
  model: NetworkModel,
  network: CompiledNetwork,
  e: NetworkElement,
  i: number,
  largestFlow: number,
  largestHead: number,
): number {
  const q = network.flow(i);
  if (e.open === false) return Math.abs(q) / Math.max(largestFlow, 1e-12);
  const from = network.head(network.nodeIndex(e.from));
  const to = network.head(network.nodeIndex(e.to));
  if (from === null || to === null) return Math.abs(q) / Math.max(largestFlow, 1e-12);
  const [low, high] = lossRange(model, network, e, i, q, from, to);
  const drop = from - to;
  const off = drop < low ? low - drop : drop > high ? drop - high : 0;
  // A steep law turns rounding of the flow into head: allow for the tolerance of flows.
  const spread = 1e-8 * largestFlow + 1e-12;
  const [, above] = lossRange(model, network, e, i, q + spread, from, to);
  const [below] = lossRange(model, network, e, i, q - spread, from, to);
  const allowance = Number.isFinite(above) && Number.isFinite(below) ? Math.abs(above - below) : 0;
  return Math.max(0, off - allowance) / largestHead;
}

/** Head drops the element's law allows at flow q: one value, or everything up to it when a one-way part is closed. */
function lossRange(
  model: NetworkModel,
  network: CompiledNetwork,
  e: NetworkElement,
  i: number,
  total: number,
  from: number,
  to: number,
): [number, number] {
  const law = e.law;
  const q = total / (e.count ?? 1);
  const weight = model.liquid.density * G;
  const one = (loss: number): [number, number] => [loss, loss];
  const oneWay = (loss: (q: number) => number): [number, number] =>
    q > 0 ? one(loss(q)) : q === 0 ? [-Infinity, loss(0)] : [-Infinity, -Infinity];
  const factor = (k: number): number => (q * Math.abs(q)) / (k * k * 1000 * G);
  switch (law.kind) {
    case 'pipe': {
      const loss = pipeLoss(model, law, q);
      return Number.isNaN(loss) ? [-Infinity, Infinity] : one(loss);
    }
    case 'fitting': {
      const v = velocity(q, law.bore);
      const kinematic = model.liquid.viscosity / model.liquid.density;
      return one(
        (law.lossCoefficient * v * Math.abs(v)) / (2 * G) +
          ((law.laminarCoefficient ?? 0) * kinematic * v) / (2 * G * law.bore),
      );
    }
    case 'flow-factor':
    case 'strainer':
      return one(factor(law.k));
    case 'orifice':
    case 'jet-agitator':
      return oneWay(() => factor(law.k));
    case 'sparger':
      return oneWay(() => factor(law.k * law.orifices));
    case 'check-valve':
      return oneWay(
        (x) =>
          (law.crackingPressure ?? 0) / weight + (law.lossCoefficient * velocity(x, law.bore) ** 2) / (2 * G),
      );
    case 'positive-displacement-pump': {
      const slip =
        law.slip *
        ((law.referenceViscosity ?? 1e-3) / model.liquid.viscosity) ** (law.viscosityExponent ?? 0);
      const free = law.displacement * law.speed * (1 - (law.constantSlip ?? 0));
      return oneWay((x) => -(free - x) / slip / weight);
    }
    case 'centrifugal-pump': {
      const n = law.speed ?? 1;
      const curve = law.curve;
      if ('shutOffHead' in curve)
        return oneWay((x) => -n * n * (curve.shutOffHead - curve.coefficient * (x / n) ** curve.exponent));
      // A smooth curve is checked at its points only by its own test; here within the chord's neighbourhood.
      if (law.interpolation === 'smooth')
        return q > 0 ? smoothBand(curve, q / n, n) : oneWay(() => -n * n * curve[0]!.head);
      return oneWay((x) => -n * n * onLine(curve, x / n));
    }
    case 'demand-pump': {
      const n = law.speed ?? 1;
      const points = law.curve.map((p) => ({ flow: p.flow, head: p.pressure / weight }));
      if (total === 0 && network.state(i) === 'cycling') return [-Infinity, Infinity];
      return oneWay((x) => -onLine(points, x / n));
    }
    case 'curve':
      return law.oneWay === true
        ? oneWay((x) => onLine(withOrigin(law.curve), x))
        : one(Math.sign(q) * onLine(withOrigin(law.curve), Math.abs(q)));
    case 'eductor': {
      const points = withOrigin(law.curve.map((p) => ({ flow: p.flow, head: p.pressure / (1000 * G) })));
      return one(Math.sign(q) * onLine(points, Math.abs(q)));
    }
    case 'back-pressure-regulator':
    case 'unloader':
    case 'relief-valve': {
      const slope = Math.max((law.gradient ?? 0) / weight, 0.02);
      const z = model.nodes.find((n) => n.id === e.from)!.elevation;
      const held = law.setPressure / weight + slope * q;
      const holding = law.reference === 'outlet' ? held : held + z - to;
      return oneWay(() => Math.max(holding, factor(law.k)));
    }
    case 'reducing-regulator': {
      const slope = Math.max((law.gradient ?? 0) / weight, 0.02);
      const z = model.nodes.find((n) => n.id === e.to)!.elevation;
      const outlet = law.setPressure / weight - slope * q + z;
      return oneWay(() => Math.max(from - outlet, factor(law.k)));
    }
  }
}

function velocity(q: number, bore: number): number {
  return q / ((Math.PI / 4) * bore * bore);
}

/** The documented law of thick liquids ends here; a rig that absurd is not checked. */
const MOST_REYNOLDS = 1e8;

function pipeLoss(model: NetworkModel, law: Extract<ElementLaw, { kind: 'pipe' }>, q: number): number {
  if (q === 0) return 0;
  const v = velocity(q, law.bore);
  const speed = Math.abs(v);
  const { liquid } = model;
  const minor = ((law.lossCoefficient ?? 0) * v * speed) / (2 * G);
  const darcy = (f: number, u: number): number => (f * law.length * u * u) / (law.bore * 2 * G);
  const power = liquid.powerLaw;
  if (power !== undefined) {
    const n = power.index;
    const wall = (3 * n + 1) / (4 * n);
    const slowest = ((power.shearRateMin ?? 1) * law.bore) / (8 * wall);
    const at = Math.max(speed, slowest);
    const re =
      (liquid.density * at ** (2 - n) * law.bore ** n) / (8 ** (n - 1) * power.consistency * wall ** n);
    if (re > MOST_REYNOLDS) return NaN;
    const f = re > criticalReynoldsRyanJohnson(n) ? frictionFactorPowerLaw(re, n) : 64 / re;
    return Math.sign(q) * darcy(f, at) * Math.min(1, speed / slowest) + minor;
  }
  const re = (liquid.density * speed * law.bore) / liquid.viscosity;
  const rr = law.roughness / law.bore;
  const f =
    re < 1e-5
      ? 64 / re
      : law.coilDiameter !== undefined
        ? frictionFactorCoil(re, law.bore, law.coilDiameter, rr)
        : model.friction === 'swamee-jain'
          ? frictionFactorSwameeJainDunlop(re, rr)
          : frictionFactorBlend(re, rr);
  return Math.sign(q) * darcy(f, speed) + minor;
}

function withOrigin(points: readonly HeadPoint[]): readonly HeadPoint[] {
  return points[0]!.flow > 0 ? [{ flow: 0, head: 0 }, ...points] : points;
}

function onLine(points: readonly HeadPoint[], q: number): number {
  let i = 1;
  while (i < points.length - 1 && q > points[i]!.flow) i++;
  const a = points[i - 1]!;
  const b = points[i]!;
  return a.head + ((b.head - a.head) * (q - a.flow)) / (b.flow - a.flow);
}

function smoothBand(points: readonly HeadPoint[], q: number, n: number): [number, number] {
  let i = 1;
  while (i < points.length - 1 && q > points[i]!.flow) i++;
  const a = points[i - 1]!;
  const b = points[i]!;
  if (q > b.flow) return [-Infinity, -n * n * (b.head - 1e9 * (q - b.flow))];
  return [-n * n * a.head - 1e-6, -n * n * b.head + 1e-6];
}
