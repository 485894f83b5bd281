import { mates, type Catalogue, type Part, type PartOf, type Layout } from '../../catalogue/index.ts';
import { engineContinuousPower, siteDerate } from '../../physics/index.ts';
import type { Brief } from '../brief.ts';
import type { Site } from '../proof/site.ts';
import { partsOfSlot } from './slot-parts.ts';

/** What the pump must give in each duty: all open outlets and the agitation together. */
export interface PumpDemand {
  readonly duty: string;
  readonly pressure: number;
  readonly flow: number;
  readonly density: number;
}

/** A pump with what drives it. */
export interface PumpOption {
  readonly parts: ReadonlyMap<string, Part>;
  readonly priceCents: number;
  /** Working speed of the engine where it is held below its rated speed [rad/s]. */
  readonly engineSpeed?: number;
}

const G = 9.80665;

/** Pumps of the layout that meet every demand, each with its cheapest drive; cheapest first. */
export function pumpOptions(
  catalogue: Catalogue,
  layout: Layout,
  brief: Brief,
  site: Site,
  demands: readonly PumpDemand[],
): PumpOption[] {
  const out: PumpOption[] = [];
  for (const pump of partsOfSlot(catalogue, layout, 'pump', 'motor-pump'))
    if (demands.every((d) => motorGives(pump, d)))
      out.push({ parts: new Map([['pump', pump]]), priceCents: pump.priceCents });
  for (const pump of partsOfSlot(catalogue, layout, 'pump', 'pump')) {
    const highest = Math.max(...demands.map((d) => d.pressure));
    if (highest > pump.maxPressure) continue;
    const driven = cheapestDrive(catalogue, layout, brief, site, pump, demands);
    if (driven !== undefined) out.push(driven);
  }
  return out.sort((a, b) => a.priceCents - b.priceCents);
}

function cheapestDrive(
  catalogue: Catalogue,
  layout: Layout,
  brief: Brief,
  site: Site,
  pump: PartOf<'pump'>,
  demands: readonly PumpDemand[],
): PumpOption | undefined {
  let best: PumpOption | undefined;
  const offer = (parts: readonly (readonly [string, Part])[], engineSpeed?: number) => {
    const all = new Map<string, Part>([['pump', pump], ...parts]);
    const priceCents = [...all.values()].reduce((sum, p) => sum + p.priceCents, 0);
    if (best === undefined || priceCents < best.priceCents)
      best = { parts: all, priceCents, ...(engineSpeed === undefined ? {} : { engineSpeed }) };
  };
  for (const pto of partsOfSlot(catalogue, layout, 'pto', 'pto-drive')) {
    const ptoSpeed = brief.carrier.ptoSpeed ?? pto.ptoSpeed;
    // A shaft made for another PTO speed does not fit the tractor's stub.
    if (Math.abs(ptoSpeed / pto.ptoSpeed - 1) > 0.15) continue;
    if (!shaftsMate(pto, 'out', pump)) continue;
    const speed = ptoSpeed * pto.ratio;
    if (speed > pump.maxSpeed || speed < pump.minSpeed) continue;
    const shaft = shaftPower(pump, speed, demands);
    if (shaft === undefined || shaft / pto.efficiency > pto.maxPower) continue;
    if (brief.carrier.ptoPower !== undefined && shaft / pto.efficiency > brief.carrier.ptoPower) continue;
    offer([['pto', pto]]);
  }
  const reductions = partsOfSlot(catalogue, layout, 'reduction', 'reduction').filter((r) =>
    shaftsMate(r, 'out', pump),
  );
  for (const engine of partsOfSlot(catalogue, layout, 'engine', 'engine')) {
    const factor = Math.min(
      1,
      siteDerate(site.derating, site.altitude, site.temperature - 273.15, site.humidity).factor,
    );
    for (const reduction of reductions) {
      if (!shaftsMate(reduction, 'in', engine)) continue;
      const creep = creepOf(reduction);
      const engineSpeed = engineSpeedFor(engine, reduction, pump);
      if (engineSpeed < engine.minSpeed) continue;
      const speed = engineSpeed * reduction.ratio * creep;
      if (speed < pump.minSpeed) continue;
      const shaft = shaftPower(pump, speed, demands);
      if (shaft === undefined) continue;
      const needed = shaft / reduction.efficiency;
      if (needed > reduction.maxPower) continue;
      if (needed * 1.05 > engineContinuousPower(engine.power, factor) * (engineSpeed / engine.ratedSpeed))
        continue;
      offer(
        [
          ['engine', engine],
          ['reduction', reduction],
        ],
        engineSpeed < engine.ratedSpeed * 0.999 ? engineSpeed : undefined,
      );
    }
  }
  return best;
}

/** Creep of a belt under load, as the proof reckons it; gears and couplings have none. */
function creepOf(reduction: PartOf<'reduction'>): number {
  return reduction.type === 'belt' ? 0.99 : 1;
}

/** An engine is held below its rated speed where the pump would turn too fast [rad/s]. */
export function engineSpeedFor(
  engine: PartOf<'engine'>,
  reduction: PartOf<'reduction'>,
  pump: PartOf<'pump'>,
): number {
  return Math.min(engine.ratedSpeed, pump.maxSpeed / (reduction.ratio * creepOf(reduction)));
}

/** Whether one end of a drive fits the shaft of an engine or pump. */
function shaftsMate(drive: Part, end: 'in' | 'out', machine: Part): boolean {
  const a = drive.ports.find((p) => p.id === end);
  const b = machine.ports.find((p) => p.id === 'shaft');
  return a !== undefined && b !== undefined && mates(a, b);
}

/** Shaft power at a speed in the hardest demand; undefined when the pump cannot give one of them. */
function shaftPower(pump: PartOf<'pump'>, speed: number, demands: readonly PumpDemand[]): number | undefined {
  let most = 0;
  for (const { pressure, flow, density } of demands) {
    const { law } = pump;
    if (law.action === 'displacement') {
      const slip = law.slipAtMaxPressure * law.displacement * pump.maxSpeed * (pressure / pump.maxPressure);
      const gives = law.displacement * speed - slip;
      if (gives < flow) return undefined;
      most = Math.max(most, (gives * pressure) / law.efficiency);
    } else {
      const ratio = speed / law.ratedSpeed;
      const head = headAt(law.curve, flow / ratio) * ratio ** 2;
      if (head * density * G < pressure) return undefined;
      most = Math.max(most, (flow * head * density * G * 1.15) / law.efficiency);
    }
  }
  return most;
}

function motorGives(pump: PartOf<'motor-pump'>, { pressure, flow }: PumpDemand): boolean {
  if (pressure >= pump.switchOff) return false;
  const after = pump.curve.findIndex((p) => p.pressure >= pressure);
  if (after === -1) return false;
  const b = pump.curve[after]!;
  const a = pump.curve[Math.max(0, after - 1)]!;
  const gives =
    b.pressure === a.pressure
      ? b.flow
      : a.flow + ((b.flow - a.flow) * (pressure - a.pressure)) / (b.pressure - a.pressure);
  return gives >= flow;
}

function headAt(curve: readonly { flow: number; head: number }[], flow: number): number {
  const after = curve.findIndex((p) => p.flow >= flow);
  if (after === -1) return -Infinity;
  if (after === 0) return curve[0]!.head;
  const [a, b] = [curve[after - 1]!, curve[after]!];
  return a.head + ((b.head - a.head) * (flow - a.flow)) / (b.flow - a.flow);
}
