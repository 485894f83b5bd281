import type { Catalogue, Kind, Layout, Part, PartOf } from '../../catalogue/index.ts';
import { display, type UnitSystem } from '../../quantity/index.ts';
import type { Brief } from '../brief.ts';
import type { Chosen } from './assemble.ts';
import type { PumpDemand } from './pump-options.ts';
import { partsOfSlot } from './slot-parts.ts';

const PSI = 6894.757293168361;
/** Speeds by which suction and return lines are sized: common practice, no source [m/s]. */
const SUCTION_SPEED = 1.2;
const RETURN_SPEED = 3;
/** Smallest battery for an electric start or reel: common practice, no source [A.s]. */
const LEAST_BATTERY = 50 * 3600;

/** Lengths of the short hoses about the pump: common practice, no source [m]. */
export const SUCTION_HOSE = 1.2;
export const RETURN_HOSE = 1.5;

/** What a regulator is set to: steps of 5 psi, and duty by duty where they differ by more than a tenth. */
export function settingFor(demands: readonly PumpDemand[]): {
  readonly set: number;
  readonly lowest: number;
  readonly chosen: Omit<Chosen, 'part'>;
} {
  const toSet = (p: number) => Math.ceil(p / PSI / 5) * 5 * PSI;
  const set = toSet(Math.max(...demands.map((d) => d.pressure)));
  const sets = new Map(demands.map((d) => [d.duty, toSet(d.pressure)]));
  const lowest = Math.min(...sets.values());
  return { set, lowest, chosen: lowest < set * 0.9 ? { set, setByDuty: sets } : { set } };
}

/** The cheapest tank and carrier that go together and carry the tank full of water; undefined when there are none. */
export function tankAndCarrier(
  catalogue: Catalogue,
  layout: Layout,
  brief: Brief,
): Map<string, Chosen> | undefined {
  const volume = brief.wishes.tank ?? 0;
  const tanks = partsOfSlot(catalogue, layout, 'tank', 'tank').filter((t) => t.volume >= volume * 0.98);
  const carriers = partsOfSlot(catalogue, layout, 'carrier', 'carrier').filter(
    (c) => c.form === brief.carrier.form,
  );
  const pair = carriers
    .flatMap((carrier) =>
      tanks.map((tank) => ({ carrier, tank, priceCents: carrier.priceCents + tank.priceCents })),
    )
    .filter(
      ({ carrier, tank }) =>
        tank.size.length <= carrier.deckLength && tank.size.width <= carrier.deckWidth * 1.05,
    )
    .filter(({ carrier, tank }) => tank.volume * 1000 + tank.mass * 1.5 <= carrier.grossRating - carrier.mass)
    .sort((a, b) => a.priceCents - b.priceCents)[0];
  if (pair === undefined) return undefined;
  return new Map<string, Chosen>([
    ['tank', { part: pair.tank }],
    ['carrier', { part: pair.carrier }],
  ]);
}

/** Why there is no tank with a carrier under it, in the words of the brief. */
export function whyNoTank(catalogue: Catalogue, layout: Layout, brief: Brief, units: UnitSystem): string {
  const form = brief.carrier.form.replaceAll('-', ' ');
  const carriers = partsOfSlot(catalogue, layout, 'carrier', 'carrier');
  if (!carriers.some((c) => c.form === brief.carrier.form))
    return `no carrier that may be taken is a ${form}`;
  const say = (volume: number) => display(volume, 'volume', units);
  const largest = Math.max(0, ...partsOfSlot(catalogue, layout, 'tank', 'tank').map((t) => t.volume));
  if (largest === 0) return 'no tank that may be taken stands the liquids';
  const { tank = 0 } = brief.wishes;
  if (largest < tank * 0.98)
    return `the largest tank that may be taken holds ${say(largest)}, and the brief asks for ${say(tank)}`;
  return `no ${form} that may be taken carries a tank${tank > 0 ? ` of ${say(tank)}` : ' that may be taken'}, by deck or by rating`;
}

/** Smallest agitator that stirs the tank at the working pressure, with its valve; empty when nothing asks for one. */
export function agitationFor(
  catalogue: Catalogue,
  layout: Layout,
  tank: PartOf<'tank'>,
  share: number,
  pressure: number,
  density: number,
): Map<string, Chosen> {
  const chosen = new Map<string, Chosen>();
  if (share === 0) return chosen;
  const asked = share * tank.volume * 1.05;
  const flowOf = (a: PartOf<'agitator'>) => a.flowAtOneBar * Math.sqrt(pressure / 1e5 / (density / 1000));
  const fit = partsOfSlot(catalogue, layout, 'agitator', 'agitator')
    .filter((a) => a.maxPressure >= pressure)
    .sort((a, b) => flowOf(a) - flowOf(b) || a.priceCents - b.priceCents);
  const agitator = fit.find((a) => flowOf(a) >= asked) ?? fit[fit.length - 1];
  if (agitator === undefined) return chosen;
  const inlet = agitator.ports[0]?.size ?? 0.019;
  chosen.set('agitator', { part: agitator });
  const valves = partsOfSlot(catalogue, layout, 'agitation-valve', 'valve');
  const valve = smallestBore(
    valves.filter((v) => v.maxPressure >= pressure),
    inlet * 0.9,
  );
  if (valve !== undefined) chosen.set('agitation-valve', { part: valve });
  return chosen;
}

/** The induction eductor of a batch rig with its valve, where the layout has one. */
export function inductionFor(catalogue: Catalogue, layout: Layout): Map<string, Chosen> {
  const chosen = new Map<string, Chosen>();
  const eductor = partsOfSlot(catalogue, layout, 'eductor', 'eductor')[0];
  if (eductor === undefined) return chosen;
  chosen.set('eductor', { part: eductor });
  const valve = smallestBore(
    partsOfSlot(catalogue, layout, 'eductor-valve', 'valve'),
    (eductor.ports[0]?.size ?? 0.03) * 0.9,
  );
  if (valve !== undefined) chosen.set('eductor-valve', { part: valve });
  return chosen;
}

/** Suction side, regulator, gauge and battery by rules of size; false when the catalogue has no part large enough. */
export function sizePumpSide(
  catalogue: Catalogue,
  layout: Layout,
  chosen: Map<string, Chosen>,
  demands: readonly PumpDemand[],
): boolean {
  const slot = <K extends Kind>(id: string, kind: K) => partsOfSlot(catalogue, layout, id, kind);
  const pressure = Math.max(...demands.map((d) => d.pressure));
  const flow = pumpFlow(chosen, demands);
  const setting = settingFor(demands);
  const { set, lowest } = setting;
  const need = (id: string, part: Part | undefined, more: Omit<Chosen, 'part'> = {}): boolean => {
    if (!layout.slots.some((s) => s.id === id)) return true;
    if (part === undefined) return false;
    chosen.set(id, { part, ...more });
    return true;
  };
  const suctionBore = Math.sqrt(flow / SUCTION_SPEED / (Math.PI / 4));
  const returnBore = Math.sqrt(flow / RETURN_SPEED / (Math.PI / 4));
  const strainers = slot('strainer', 'strainer');
  const regulators = slot('regulator', 'regulator').filter(
    (r) => r.setMax >= set && r.setMin <= lowest && r.ratedFlow >= flow * 0.95,
  );
  const returns = slot('return-hose', 'hose').filter((h) => h.maxPressure >= 5e5);
  const gauges = slot('gauge', 'gauge').filter((g) => g.range >= pressure * 1.3);
  const complete =
    need(
      'suction-hose',
      smallestBore(slot('suction-hose', 'hose'), suctionBore) ??
        largest(slot('suction-hose', 'hose'), (h) => h.bore),
      { length: SUCTION_HOSE },
    ) &&
    need(
      'strainer',
      strainers.find((s) => s.flowAtOneBar >= flow * 4) ?? largest(strainers, (s) => s.flowAtOneBar),
    ) &&
    need(
      'tank-valve',
      smallestBore(slot('tank-valve', 'valve'), suctionBore * 0.9) ??
        largest(slot('tank-valve', 'valve'), (v) => v.bore),
    ) &&
    need('regulator', regulators[0], setting.chosen) &&
    need('return-hose', smallestBore(returns, returnBore) ?? largest(returns, (h) => h.bore), {
      length: RETURN_HOSE,
    });
  if (!complete) return false;
  need('gauge', [...gauges].sort((a, b) => a.range - b.range || a.priceCents - b.priceCents)[0]);
  const engine = chosen.get('engine')?.part;
  const reel = chosen.get('reel')?.part;
  const electric =
    (engine?.kind === 'engine' && engine.start === 'electric') ||
    (reel?.kind === 'reel' && reel.rewind === 'electric');
  if (electric)
    need(
      'battery',
      slot('battery', 'battery').find((b) => b.capacity >= LEAST_BATTERY),
    );
  return true;
}

/** All the pump gives, since what the outlets do not take goes back to the tank. */
function pumpFlow(chosen: ReadonlyMap<string, Chosen>, demands: readonly PumpDemand[]): number {
  const asked = Math.max(...demands.map((d) => d.flow));
  const pump = chosen.get('pump')?.part;
  if (pump?.kind !== 'pump' || pump.law.action !== 'displacement') return asked * 1.1;
  const engine = chosen.get('engine');
  const reduction = chosen.get('reduction')?.part;
  const pto = chosen.get('pto')?.part;
  const speed =
    engine?.part.kind === 'engine'
      ? (engine.speed ?? engine.part.ratedSpeed) * (reduction?.kind === 'reduction' ? reduction.ratio : 1)
      : pto?.kind === 'pto-drive'
        ? pto.ptoSpeed * pto.ratio
        : pump.maxSpeed;
  return Math.max(asked, pump.law.displacement * speed);
}

function smallestBore<T extends { bore: number; priceCents: number }>(
  list: readonly T[],
  bore: number,
): T | undefined {
  return [...list].sort((a, b) => a.bore - b.bore || a.priceCents - b.priceCents).find((p) => p.bore >= bore);
}

function largest<T>(list: readonly T[], size: (part: T) => number): T | undefined {
  return [...list].sort((a, b) => size(b) - size(a))[0];
}
