/**
 * Reads the subset of EPANET's input text that the reference networks use into a network of ours: D-W pipes, CV pipes,
 * HEAD pumps, PSV and GPV valves, emitters. Flows in L/min, pressures in metres of the liquid, SI constants.
 */
import type {
  ElementLaw,
  HeadPoint,
  NetworkElement,
  NetworkModel,
  NetworkNode,
} from '../src/hydraulics/index.ts';

const G = 9.80665;
const LPM = 1 / 60000;

export interface InpNetwork {
  readonly model: NetworkModel;
  /** Our tip element for an emitter's junction. */
  readonly tipOf: (junction: string) => string;
  readonly links: readonly string[];
}

export function readInp(text: string, friction: 'colebrook' | 'swamee-jain'): InpNetwork {
  const sections = sectionsOf(text);
  const rows = (name: string): string[][] => sections.get(name) ?? [];
  const options = new Map(
    rows('OPTIONS').map((r) => [r.slice(0, -1).join(' ').toLowerCase(), r[r.length - 1]!]),
  );
  const density = 1000 * Number(options.get('specific gravity'));
  const kinematic = Number(options.get('viscosity'));
  const elevation = new Map<string, number>();
  const nodes: NetworkNode[] = [];
  for (const [id, z] of rows('JUNCTIONS')) {
    elevation.set(id!, Number(z));
    nodes.push({ id: id!, elevation: Number(z) });
  }
  for (const [id, head] of rows('RESERVOIRS')) {
    elevation.set(id!, Number(head));
    nodes.push({ id: id!, elevation: Number(head), surface: Number(head) });
  }
  const curves = new Map<string, HeadPoint[]>();
  for (const [id, x, y] of rows('CURVES')) {
    const points = curves.get(id!) ?? [];
    points.push({ flow: Number(x) * LPM, head: Number(y) });
    curves.set(id!, points);
  }
  const elements: NetworkElement[] = [];
  const add = (id: string, from: string, to: string, law: ElementLaw, open = true): void => {
    elements.push({ id, from, to, law, open });
  };
  for (const [id, from, to, length, bore, roughness, k, status] of rows('PIPES')) {
    const law: ElementLaw = {
      kind: 'pipe',
      length: Number(length),
      bore: Number(bore) / 1000,
      roughness: Number(roughness) / 1000,
      lossCoefficient: Number(k),
    };
    if (status!.toUpperCase() === 'CV') {
      const between = `${id}:check`;
      nodes.push({ id: between, elevation: elevation.get(to!)! });
      add(id!, from!, between, law);
      add(between, between, to!, { kind: 'check-valve', bore: law.bore, lossCoefficient: 0 });
    } else add(id!, from!, to!, law, status!.toUpperCase() === 'OPEN');
  }
  for (const [id, from, to, , curveName, , speed] of rows('PUMPS')) {
    add(id!, from!, to!, {
      kind: 'centrifugal-pump',
      curve: pumpCurve(curves.get(curveName!)!),
      speed: Number(speed ?? 1),
    });
  }
  for (const [id, from, to, diameter, type, setting, k] of rows('VALVES')) {
    if (type === 'GPV') add(id!, from!, to!, { kind: 'curve', curve: curves.get(setting!)! });
    else if (type === 'PSV') {
      const area = (Math.PI / 4) * (Number(diameter) / 1000) ** 2;
      // K q^2/(2 g A^2) = q^2/(k^2 1000 g)
      add(id!, from!, to!, {
        kind: 'back-pressure-regulator',
        setPressure: Number(setting) * density * G,
        k: area * Math.sqrt(2 / (1000 * Number(k))),
      });
    } else throw new Error(`valve type ${type} is not read`);
  }
  for (const [junction, coefficient] of rows('EMITTERS')) {
    const air = `${junction}:air`;
    nodes.push({ id: air, elevation: elevation.get(junction!)!, atmosphere: true });
    // q = C sqrt(h), h in m of the liquid; q = k sqrt(h 1000 g).
    add(`tip:${junction}`, junction!, air, {
      kind: 'orifice',
      k: (Number(coefficient) * LPM) / Math.sqrt(1000 * G),
    });
  }
  const links = [...rows('PIPES'), ...rows('PUMPS'), ...rows('VALVES')].map((r) => r[0]!);
  return {
    model: { liquid: { density, viscosity: kinematic * density }, nodes, elements, friction },
    tipOf: (junction) => `tip:${junction}`,
    links,
  };
}

/** EPANET refits three points that start at no flow as H = A - B q^C. */
function pumpCurve(
  points: readonly HeadPoint[],
): readonly HeadPoint[] | { shutOffHead: number; coefficient: number; exponent: number } {
  if (points.length !== 3 || points[0]!.flow !== 0) return points;
  const [a, b, c] = points as [HeadPoint, HeadPoint, HeadPoint];
  const exponent = Math.log((a.head - c.head) / (a.head - b.head)) / Math.log(c.flow / b.flow);
  return { shutOffHead: a.head, coefficient: (a.head - b.head) / b.flow ** exponent, exponent };
}

function sectionsOf(text: string): Map<string, string[][]> {
  const sections = new Map<string, string[][]>();
  let current: string[][] = [];
  for (const line of text.split('\n')) {
    const content = line.split(';')[0]!.trim();
    if (content === '') continue;
    if (content.startsWith('[')) {
      current = [];
      sections.set(content.slice(1, -1), current);
    } else current.push(content.split(/\s+/));
  }
  return sections;
}
