/** Networks as documents: quantities as people type them, read into a model. */
import {
  FITTING_BORES,
  lossCoefficientCheckValve,
  lossCoefficientFitting,
  screenCloggingFactor,
  type FittingForm,
} from '../physics/index.ts';
import { fieldName, read, type Path, type Problem } from '../quantity/index.ts';
import { checkModel } from './check-model.ts';
import type {
  ElementLaw,
  FittingLaw,
  HeadPoint,
  NetworkElement,
  NetworkModel,
  PowerCurve,
} from './network-model.ts';
import { networkShape, type ElementDocument, type NetworkDocument } from './network-shapes.ts';
import type { ModelProblem } from './solution.ts';

export type NetworkReading =
  { readonly ok: true; readonly model: NetworkModel } | { readonly ok: false; readonly problems: Problem[] };

const ONE_BAR = 1e5;
/** Open share of a clean strainer's screen, between common meshes: judgement, no source. */
const SCREEN_OPEN = 0.36;

/** Reads a network document: its model, or every problem found in it, each with its place. */
export function readNetwork(raw: unknown): NetworkReading {
  const document = read(networkShape, raw);
  if (!document.ok) return document;
  const problems = [...referenceProblems(document.value), ...choiceProblems(document.value)];
  if (problems.length > 0) return { ok: false, problems };
  const model = modelOf(document.value);
  const unsound = checkModel(model);
  if (unsound.length > 0) return { ok: false, problems: unsound.map((p) => placed(p, model)) };
  return { ok: true, model };
}

function modelOf(document: NetworkDocument): NetworkModel {
  return {
    liquid: document.liquid,
    friction: document.friction,
    nodes: document.nodes.map(({ atmosphere, ...node }) => (atmosphere ? { ...node, atmosphere } : node)),
    elements: document.elements.map(elementOf),
  };
}

function elementOf(element: ElementDocument): NetworkElement {
  const { id, from, to, open, count } = element;
  return { id, from, to, open, count, law: lawOf(element) };
}

function lawOf(element: ElementDocument): ElementLaw {
  switch (element.kind) {
    case 'fitting': {
      const { form, lossCoefficient = 0, ...law } = withoutPlace(element);
      return form === undefined ? { ...law, lossCoefficient } : { ...law, ...lossByName(form, law.bore) };
    }
    case 'check-valve': {
      const { form, lossCoefficient = 0, ...law } = withoutPlace(element);
      return {
        ...law,
        lossCoefficient: form === undefined ? lossCoefficient : lossCoefficientCheckValve(form, law.bore),
      };
    }
    case 'strainer':
      return {
        kind: 'strainer',
        k: flowFactor(element) / Math.sqrt(screenCloggingFactor(SCREEN_OPEN, element.blinded)),
      };
    case 'pipe':
    case 'demand-pump':
    case 'curve':
    case 'eductor':
      return withoutPlace(element);
    case 'flow-factor':
    case 'orifice':
    case 'jet-agitator':
      return { kind: element.kind, k: flowFactor(element) };
    case 'sparger':
      return { kind: element.kind, k: flowFactor(element), orifices: element.orifices };
    case 'positive-displacement-pump': {
      const { slip, ...law } = withoutPlace(element);
      return { ...law, slip: slip.flow / slip.pressure };
    }
    case 'centrifugal-pump': {
      const { curve, powerCurve, ...law } = withoutPlace(element);
      return { ...law, curve: powerCurve === undefined ? (curve ?? []) : powerThrough(powerCurve) };
    }
    case 'back-pressure-regulator':
    case 'unloader':
    case 'relief-valve':
    case 'reducing-regulator': {
      const { gradient, flowAtOneBar, ...law } = withoutPlace(element);
      const slope = gradient === undefined ? {} : { gradient: gradient.pressure / gradient.flow };
      return { ...law, ...slope, k: flowFactor({ flowAtOneBar }) };
    }
  }
}

/** The loss of a fitting that was not measured; what nobody has measured brings its band. */
function lossByName(form: FittingForm, bore: number): Pick<FittingLaw, 'lossCoefficient' | 'guess'> {
  const { lossCoefficient, low, high, basis } = lossCoefficientFitting(form, bore);
  return basis === 'table' ? { lossCoefficient } : { lossCoefficient, guess: [low, high] };
}

const PLACE_FIELDS = ['id', 'from', 'to', 'open', 'count'] as const;
type LawFields<E> = E extends unknown ? Omit<E, (typeof PLACE_FIELDS)[number]> : never;

/** The law's own fields. */
function withoutPlace<E extends ElementDocument>(element: E): LawFields<E> {
  const law: Partial<ElementDocument> = { ...element };
  for (const field of PLACE_FIELDS) delete law[field];
  return law as LawFields<E>;
}

/** k of q = k sqrt(dp / SG) [m3/s per sqrt(Pa)]. */
function flowFactor(element: { readonly flowAtOneBar: number }): number {
  return element.flowAtOneBar / Math.sqrt(ONE_BAR);
}

function powerThrough(given: {
  readonly shutOffHead: number;
  readonly point: HeadPoint;
  readonly exponent: number;
}): PowerCurve {
  const { shutOffHead, point, exponent } = given;
  return { shutOffHead, exponent, coefficient: (shutOffHead - point.head) / point.flow ** exponent };
}

/** Ids that are there twice, ends that are not there, elements that start and end at one node. */
function referenceProblems(document: NetworkDocument): Problem[] {
  const problems: Problem[] = [];
  const say = (path: Path, code: string, message: string): void => {
    problems.push({ path, code, message: `${fieldName(path)} is ${message}` });
  };
  const nodes = new Map<string, number>();
  document.nodes.forEach(({ id }, i) => {
    const before = nodes.get(id);
    if (before === undefined) nodes.set(id, i);
    else say(['nodes', i, 'id'], 'duplicate', `'${id}', which nodes[${before}] is called already`);
  });
  const elements = new Map<string, number>();
  document.elements.forEach(({ id, from, to }, i) => {
    const before = elements.get(id);
    if (before === undefined) elements.set(id, i);
    else say(['elements', i, 'id'], 'duplicate', `'${id}', which elements[${before}] is called already`);
    for (const [end, node] of [
      ['from', from],
      ['to', to],
    ] as const) {
      if (!nodes.has(node))
        say(['elements', i, end], 'unknown-reference', `'${node}'; no node of that id is there`);
    }
    if (from === to) say(['elements', i, 'to'], 'self-loop', `'${to}', the node it starts from`);
  });
  return problems;
}

/** A fitting is told by its form or by its loss; a form has a law up to half a metre of bore. */
function lossProblems(element: ElementDocument, path: Path): Problem[] {
  if (element.kind !== 'fitting' && element.kind !== 'check-valve') return [];
  const { form, lossCoefficient, bore } = element;
  const problem = (field: string, code: string, message: string) => [
    { path: [...path, field], code, message },
  ];
  if (form === undefined && lossCoefficient === undefined)
    return problem('form', 'missing', `form is missing; a ${element.kind} needs form or lossCoefficient`);
  if (form === undefined) return [];
  if (lossCoefficient !== undefined)
    return problem('form', 'two-losses', 'form and lossCoefficient are both there; one is needed');
  const [least, most] = FITTING_BORES;
  if (bore < least || bore > most)
    return problem(
      'bore',
      'out-of-range',
      `bore is ${bore} m; with a form it must be ${least} to ${most} m, else give lossCoefficient`,
    );
  return [];
}

/** A centrifugal pump has either a curve or a power curve, and the latter falls; a fitting has a form or a loss. */
function choiceProblems(document: NetworkDocument): Problem[] {
  const problems: Problem[] = [];
  document.elements.forEach((element, i) => {
    problems.push(...lossProblems(element, ['elements', i]));
    if (element.kind !== 'centrifugal-pump') return;
    const { curve, powerCurve } = element;
    const path: Path = ['elements', i, powerCurve === undefined ? 'curve' : 'powerCurve'];
    if (curve === undefined && powerCurve === undefined)
      problems.push({ path, code: 'missing', message: 'curve is missing; a pump needs curve or powerCurve' });
    if (curve !== undefined && powerCurve !== undefined)
      problems.push({
        path,
        code: 'two-curves',
        message: 'curve and powerCurve are both there; one is needed',
      });
    if (powerCurve !== undefined && powerCurve.point.head >= powerCurve.shutOffHead)
      problems.push({
        path: [...path, 'point', 'head'],
        code: 'out-of-range',
        message: `head is ${powerCurve.point.head} m; it must be less than shutOffHead, ${powerCurve.shutOffHead} m`,
      });
  });
  return problems;
}

/** The place in the document of what is wrong with the model. */
function placed(problem: ModelProblem, model: NetworkModel): Problem {
  const [id] = problem.ids;
  const { code, message } = problem;
  if (id === undefined) return { path: [], code, message };
  const list = code === 'two-kinds-of-node' ? 'nodes' : 'elements';
  const index = model[list].findIndex((member) => member.id === id);
  return { path: [list, index], code, message };
}
