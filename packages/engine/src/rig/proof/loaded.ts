import {
  loadedRig,
  placeParts,
  supportLoads,
  withFittings,
  type LoadedRig,
  type PlacedPart,
  type SupportLoads,
} from '../placement/index.ts';
import { first } from '../rig-document.ts';
import type { ProofContext } from './context.ts';

/** The rig on its carrier with the heaviest liquid that a duty sprays. */
export interface Loaded {
  readonly rig: LoadedRig;
  /** Where it rests on its own wheels and coupler, with its loads; empty for a rig that a vehicle carries. */
  readonly supports: readonly SupportLoads[];
  /** Name of that liquid. */
  readonly liquid: string;
  /** Liquids whose density nobody knows: their loads are reckoned with a bound or with water. */
  readonly densityUnknown: readonly string[];
}

const computed = new WeakMap<ProofContext, Loaded | undefined>();

/** Placed once per proof; undefined when the rig has no carrier. */
export function loadedOf(context: ProofContext): Loaded | undefined {
  if (computed.has(context)) return computed.get(context);
  const loaded = load(context);
  computed.set(context, loaded);
  return loaded;
}

function load(context: ProofContext): Loaded | undefined {
  const carrier = first(context.rig, 'carrier')?.part;
  const tank = first(context.rig, 'tank')!;
  if (carrier === undefined) return undefined;
  const liquids = context.duties.map((d) => d.liquid);
  const heaviest = liquids.reduce((a, b) => (b.density > a.density ? b : a));
  const fittings = context.bill.lines.reduce(
    (sum, l) => sum + (l.sort === 'fitting' || l.sort === 'hardware' ? l.mass : 0),
    0,
  );
  const parts = withFittings(
    placedOf(context, () => placeParts(context.rig, carrier, heaviest.density)),
    fittings,
  );
  const tankAt = parts.find((p) => p.item === tank.item.id)!;
  const rig = loadedRig(carrier, parts, tank.part, tankAt, heaviest.density);
  let supports: readonly SupportLoads[] | undefined;
  return {
    rig,
    // Straps and bolts are chosen without them.
    get supports() {
      supports ??= supportLoads(
        rig,
        context.duties.map((d) => d.duty),
      );
      return supports;
    },
    liquid: heaviest.name,
    densityUnknown: [
      ...new Set(liquids.filter((l) => l.missing.some((m) => m.startsWith('density'))).map((l) => l.name)),
    ],
  };
}

const placed = new WeakMap<ProofContext['duties'], readonly PlacedPart[]>();

/** Where the parts stand does not depend on the bill: a proof asks before its hardware is billed and after, with the same duties. */
function placedOf({ duties }: ProofContext, place: () => readonly PlacedPart[]): readonly PlacedPart[] {
  let parts = placed.get(duties);
  if (parts === undefined) placed.set(duties, (parts = place()));
  return parts;
}

export function carrierItem(context: ProofContext): string {
  return first(context.rig, 'carrier')!.item.id;
}
