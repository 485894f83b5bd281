import type { PartOf } from '../../catalogue/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { engineSpeedFor } from '../design/pump-options.ts';
import type { PartAt, SearchSpace } from './space.ts';

const RPM = (2 * Math.PI) / 60;
/** Thin liquids slip by more than the figure of the catalogue: our judgement, on the safe side. */
const MORE_SLIP = 1.5;

/** Speed at which the proof has the pump turn [rad/s]; its highest where nothing else is known. */
export function pumpSpeed({ brief }: SearchSpace, pump: PartOf<'pump'>, partAt: PartAt): number {
  const [engine, reduction, pto] = [partAt('engine'), partAt('reduction'), partAt('pto')];
  if (pto?.kind === 'pto-drive') return (brief.carrier.ptoSpeed ?? pto.ptoSpeed) * pto.ratio;
  if (engine?.kind !== 'engine' || reduction?.kind !== 'reduction') return pump.maxSpeed;
  const held = engineSpeedFor(engine, reduction, pump);
  const speed =
    held < engine.ratedSpeed * 0.999 ? Math.floor(held / RPM / 10 + 1e-6) * 10 * RPM : engine.ratedSpeed;
  return speed * reduction.ratio * (reduction.type === 'belt' ? 0.99 : 1);
}

/** Slip of a displacement pump by pressure, least and most [m3/s/Pa]. */
function slipPerPressure({ law, maxSpeed, maxPressure }: PartOf<'pump'>): {
  least: number;
  most: number;
} {
  if (law.action !== 'displacement') return { least: 0, most: 0 };
  const slip = (law.slipAtMaxPressure * law.displacement * maxSpeed) / maxPressure;
  // Rollers and gears slip by the viscosity; pistons and diaphragms do not.
  const byViscosity = law.mechanism === 'roller' || law.mechanism === 'gear';
  return byViscosity ? { least: 0, most: slip * MORE_SLIP } : { least: slip * 0.98, most: slip * 1.02 };
}

/** Viscosity at which the slip of a catalogue is stated [Pa.s]. */
const SLIP_VISCOSITY = 1e-3;

/** Slip of a displacement pump by pressure with a liquid, as the network has it [m3/s/Pa]. */
export function slipAt({ law, maxSpeed, maxPressure }: PartOf<'pump'>, viscosity: number): number {
  if (law.action !== 'displacement') return 0;
  const slip = (law.slipAtMaxPressure * law.displacement * maxSpeed) / maxPressure;
  const byViscosity = law.mechanism === 'roller' || law.mechanism === 'gear';
  return byViscosity ? (slip * SLIP_VISCOSITY) / viscosity : slip;
}

/** What a pump moves at least and at most in a rig that keeps its promises, the least by duty [m3/s]. */
export interface PumpFlow {
  readonly least: readonly number[];
  readonly most: number;
  /** What a displacement pump moves without slip, at least: what it moves at most where its drive is known. */
  readonly slowest: number;
}

/** What the outlets of a layout must get in each duty [m3/s]. */
export function askedFlows({ brief, contexts, layout }: SearchSpace): readonly number[] {
  return brief.duties.map((duty) => {
    const outlets = duty.open.filter((o) => layout.lines.some((l) => l.opens === o)).length;
    return (askedFlow(duty, contexts[0]!.liquids.get(duty.liquid)!) ?? 0) * outlets;
  });
}

/**
 * All that a displacement pump gives comes back or goes out, whatever it works against, less its slip. Any pump gives at
 * least the flow that a duty asks: a rig in which it does not breaks a promise.
 */
export function pumpFlow(space: SearchSpace, partAt: PartAt): PumpFlow {
  const asked = askedFlows(space);
  const pump = partAt('pump');
  if (pump?.kind !== 'pump' || pump.law.action !== 'displacement')
    return { least: asked, most: Infinity, slowest: 0 };
  const most = pump.law.displacement * pumpSpeed(space, pump, partAt);
  const least = most - slipPerPressure(pump).most * pump.maxPressure;
  return { least: asked.map((a) => Math.max(a, least)), most, slowest: most };
}
