/** Everything that can be wrong with a model before it is solved. */
import { PARAMETERS, initialValues, limitBroken } from './element-parameters.ts';
import { lossCurveOf } from './loss-curve.ts';
import type { NetworkElement, NetworkLiquid, NetworkModel, PressurePoint } from './network-model.ts';
import type { ModelProblem, ModelProblemCode } from './solution.ts';

/** For which there is room in `circuit-store.ts`; a rig has a hundred or two. */
const MOST_ELEMENTS = 30_000;

export function checkModel(model: NetworkModel): ModelProblem[] {
  const problems: ModelProblem[] = [];
  const say = (code: ModelProblemCode, message: string, ...ids: string[]): void => {
    problems.push({ code, message, ids });
  };
  for (const text of liquidProblems(model.liquid)) say('out-of-range', text);
  if (model.elements.length === 0) say('no-elements', 'the network has no elements');
  if (model.elements.length > MOST_ELEMENTS)
    say('out-of-range', `the network has ${model.elements.length} elements; it may have ${MOST_ELEMENTS}`);
  const nodes = new Set<string>();
  for (const node of model.nodes) {
    if (nodes.has(node.id)) say('duplicate-id', `node '${node.id}' is there twice`, node.id);
    nodes.add(node.id);
    if (!within(node.elevation, -1e4, 1e4))
      say(
        'out-of-range',
        `elevation of node '${node.id}' is ${node.elevation} m; it must be -10000 to 10000 m`,
        node.id,
      );
    if (node.surface !== undefined && !within(node.surface, -1e4, 1e4))
      say(
        'out-of-range',
        `surface of node '${node.id}' is ${node.surface} m; it must be -10000 to 10000 m`,
        node.id,
      );
    if (node.surface !== undefined && node.atmosphere === true)
      say(
        'two-kinds-of-node',
        `node '${node.id}' is both in a tank and open to the atmosphere; it can be one`,
        node.id,
      );
  }
  const ids = new Set<string>();
  for (const element of model.elements) {
    if (ids.has(element.id)) say('duplicate-id', `element '${element.id}' is there twice`, element.id);
    ids.add(element.id);
    for (const end of [element.from, element.to]) {
      if (!nodes.has(end))
        say(
          'unknown-node',
          `element '${element.id}' ends at node '${end}', which is not there`,
          element.id,
          end,
        );
    }
    if (element.from === element.to)
      say(
        'self-loop',
        `element '${element.id}' starts and ends at node '${element.from}'`,
        element.id,
        element.from,
      );
    for (const text of valueProblems(element)) say('out-of-range', text, element.id);
    for (const p of curveProblems(element, model.liquid.density)) say(p.code, p.message, element.id);
  }
  if (problems.length === 0 && !model.nodes.some((n) => n.surface !== undefined || n.atmosphere === true))
    say(
      'no-path-to-tank-or-atmosphere',
      'no node is in a tank or open to the atmosphere, so no pressure is defined',
    );
  return problems;
}

export function liquidProblems(liquid: NetworkLiquid): string[] {
  const texts: string[] = [];
  const need = (name: string, value: number, min: number, max: number, unit: string): void => {
    if (!within(value, min, max))
      texts.push(`${name} of the liquid is ${value} ${unit}; it must be ${min} to ${max} ${unit}`);
  };
  need('density', liquid.density, 100, 20000, 'kg/m3');
  need('viscosity', liquid.viscosity, 1e-6, 1e3, 'Pa.s');
  const p = liquid.powerLaw;
  if (p === undefined) return texts;
  need('consistency', p.consistency, 1e-6, 1e4, 'Pa.s^n');
  need('flow index', p.index, 0.2, 1.8, '');
  if (p.shearRateMin !== undefined) need('lowest shear rate', p.shearRateMin, 1e-6, 1e6, '1/s');
  if (p.shearRateMax !== undefined)
    need('highest shear rate', p.shearRateMax, p.shearRateMin ?? 1e-6, 1e9, '1/s');
  return texts;
}

function within(value: number, min: number, max: number): boolean {
  return value >= min && value <= max;
}

function valueProblems(element: NetworkElement): string[] {
  const texts: string[] = [];
  const values = initialValues(element.law);
  const parameters = PARAMETERS[element.law.kind];
  for (let i = 0; i <= parameters.length; i++) {
    const value = i < parameters.length ? values[i]! : (element.count ?? 1);
    const text = limitBroken(parameters[i] ?? 'count', value);
    if (text !== undefined) texts.push(`element '${element.id}': ${text}`);
  }
  const law = element.law;
  if (law.kind === 'pipe' && law.roughness > 0.1 * law.bore)
    texts.push(
      `element '${element.id}': roughness is ${law.roughness} m; it must be at most a tenth of the bore, ${law.bore} m`,
    );
  if (law.kind === 'pipe' && law.coilDiameter !== undefined && law.coilDiameter < 3 * law.bore)
    texts.push(
      `element '${element.id}': coilDiameter is ${law.coilDiameter} m; it must be at least 3 bores, ${3 * law.bore} m`,
    );
  if (law.kind === 'demand-pump' && law.switchOn > law.switchOff)
    texts.push(
      `element '${element.id}': switchOn is ${law.switchOn} Pa; it must be at most switchOff, ${law.switchOff} Pa`,
    );
  if (law.kind === 'positive-displacement-pump') {
    if (!within(law.viscosityExponent ?? 0, 0, 1.5))
      texts.push(
        `element '${element.id}': viscosityExponent is ${law.viscosityExponent}; it must be 0 to 1.5`,
      );
    if (!within(law.referenceViscosity ?? 1e-3, 1e-6, 1e3))
      texts.push(
        `element '${element.id}': referenceViscosity is ${law.referenceViscosity} Pa.s; it must be 1e-6 to 1000 Pa.s`,
      );
  }
  if (law.kind === 'centrifugal-pump' && !within(law.viscosityLimit ?? 1e-5, 0, 1))
    texts.push(
      `element '${element.id}': viscosityLimit is ${law.viscosityLimit} m2/s; it must be 0 to 1 m2/s`,
    );
  return texts;
}

function curveProblems(
  element: NetworkElement,
  density: number,
): { code: ModelProblemCode; message: string }[] {
  const found: { code: ModelProblemCode; message: string }[] = [];
  const law = element.law;
  const curve = lossCurveOf(law, density);
  if (curve !== undefined && 'code' in curve)
    found.push({ code: curve.code, message: `element '${element.id}': ${curve.message}` });
  if (law.kind === 'eductor' && law.suction !== undefined && !risesInPressure(law.suction))
    found.push({
      code: 'bad-curve',
      message: `element '${element.id}': the suction curve must rise in pressure, flow never falling`,
    });
  return found;
}

function risesInPressure(points: readonly PressurePoint[]): boolean {
  return points.every((p, i) => {
    const before = points[i - 1];
    if (!Number.isFinite(p.flow) || !Number.isFinite(p.pressure) || p.flow < 0) return false;
    return before === undefined || (p.pressure > before.pressure && p.flow >= before.flow);
  });
}
