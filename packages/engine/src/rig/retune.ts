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
 * Sets a compiled network to another model of the same shape, heights included, which costs far less than compiling it.
 *
 * @param from the model the network was compiled from or last set to
 * @returns false, with nothing changed, when the models differ in more than numbers a network can change
 */
export function retune(network: CompiledNetwork, from: NetworkModel, to: NetworkModel): boolean {
  if (!sameShape(from, to)) return false;
  if (!sameLiquid(from.liquid, to.liquid)) network.setLiquid(to.liquid);
  to.nodes.forEach(({ elevation, surface }, i) => {
    const before = from.nodes[i]!;
    if (elevation !== before.elevation) network.setElevation(i, elevation);
    if (surface !== undefined && surface !== before.surface) network.setSurface(i, surface);
  });
  to.elements.forEach((element, i) => {
    const before = from.elements[i]!;
    const [now, then] = [element.law, before.law] as unknown as [Fields, Fields];
    if (now !== then)
      for (const name in now)
        if (now[name] !== then[name]) network.set(i, name as ElementParameter, now[name] as number);
    if (element.count !== before.count) network.set(i, 'count', element.count ?? 1);
    network.open(i, element.open ?? true);
  });
  return true;
}

function sameShape(a: NetworkModel, b: NetworkModel): boolean {
  return (
    a.nodes.length === b.nodes.length &&
    a.elements.length === b.elements.length &&
    a.nodes.every((n, i) => n.id === b.nodes[i]!.id && n.atmosphere === b.nodes[i]!.atmosphere) &&
    a.elements.every((e, i) => {
      const other = b.elements[i]!;
      return e.id === other.id && e.from === other.from && e.to === other.to && sameLaw(e.law, other.law);
    })
  );
}

/** A law with its fields by name. */
type Fields = Readonly<Record<string, unknown>>;

/** Equal but for numbers that can be set: same kind, same fields, same curves. */
function sameLaw(a: ElementLaw, b: ElementLaw): boolean {
  if (a === b) return true;
  const [x, y] = [a, b] as unknown as [Fields, Fields];
  for (const key in y) if (!(key in x)) return false;
  for (const key in x) {
    if (!(key in y)) return false;
    if (
      x[key] !== y[key] &&
      (!PARAMETERS.has(key) || typeof x[key] !== 'number' || typeof y[key] !== 'number')
    )
      return false;
  }
  return true;
}

function sameLiquid(a: NetworkLiquid, b: NetworkLiquid): boolean {
  return a.density === b.density && a.viscosity === b.viscosity && a.powerLaw === b.powerLaw;
}
