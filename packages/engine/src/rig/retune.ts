import type {
  CompiledNetwork,
  ElementLaw,
  ElementParameter,
  NetworkLiquid,
  NetworkModel,
} from '../hydraulics/index.ts';

/** Numbers of a law that a compiled network can change in place. */
export const PARAMETERS: ReadonlySet<string> = new Set<ElementParameter>([
  'length',
  'bore',
  'roughness',
  'lossCoefficient',
  'coilDiameter',
  'laminarCoefficient',
  'k',
  'orifices',
  'crackingPressure',
  'displacement',
  'speed',
  'slip',
  'constantSlip',
  'ratedPressure',
  'switchOff',
  'switchOn',
  'setPressure',
  'gradient',
]);

/**
 * Sets a compiled network to another model of the same shape, which costs far less than compiling it.
 *
 * @param from the model the network was compiled from or last set to
 * @returns false, with nothing changed, when the models differ in more than numbers a network can change
 */
export function retune(network: CompiledNetwork, from: NetworkModel, to: NetworkModel): boolean {
  if (!sameShape(from, to)) return false;
  if (!sameLiquid(from.liquid, to.liquid)) network.setLiquid(to.liquid);
  to.nodes.forEach((node, i) => {
    if (node.surface !== undefined && node.surface !== from.nodes[i]!.surface)
      network.setSurface(i, node.surface);
  });
  to.elements.forEach((element, i) => {
    const before = from.elements[i]!;
    const [now, then] = [element.law, before.law] as unknown as Record<string, number>[];
    for (const name of Object.keys(now!))
      if (PARAMETERS.has(name) && now![name] !== then![name])
        network.set(i, name as ElementParameter, now![name]!);
    if (element.count !== before.count) network.set(i, 'count', element.count ?? 1);
    network.open(i, element.open ?? true);
  });
  return true;
}

function sameShape(a: NetworkModel, b: NetworkModel): boolean {
  return (
    a.nodes.length === b.nodes.length &&
    a.elements.length === b.elements.length &&
    a.nodes.every((n, i) => {
      const other = b.nodes[i]!;
      return n.id === other.id && n.elevation === other.elevation && n.atmosphere === other.atmosphere;
    }) &&
    a.elements.every((e, i) => {
      const other = b.elements[i]!;
      return e.id === other.id && e.from === other.from && e.to === other.to && sameLaw(e.law, other.law);
    })
  );
}

/** Equal but for numbers that can be set: same kind, same fields, same curves. */
function sameLaw(a: ElementLaw, b: ElementLaw): boolean {
  const keys = Object.keys(a) as (keyof ElementLaw)[];
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => {
    const [x, y] = [a[key] as unknown, b[key] as unknown];
    return PARAMETERS.has(key) ? typeof x === 'number' && typeof y === 'number' : x === y;
  });
}

function sameLiquid(a: NetworkLiquid, b: NetworkLiquid): boolean {
  return a.density === b.density && a.viscosity === b.viscosity && a.powerLaw === b.powerLaw;
}
