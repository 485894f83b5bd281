import { fluidPower, fuelRateFromConsumption, type DayInput } from '../../physics/index.ts';
import { groundDose } from '../application.ts';
import { looseFactor, type LooseInput } from '../loose-inputs.ts';
import { rinseWaterAboard } from '../placement/index.ts';
import { first } from '../rig-document.ts';
import { STARTS, WORK_STARTS } from '../start-values.data.ts';
import type { ProofContext, ProvenDuty } from './context.ts';
import { mixPerCrown } from './pattern-units.ts';
import { residualOf } from './rinse-residual.ts';

/** What the day is made of, and where each figure that nobody gave comes from. */
export interface DayMade {
  readonly proven: ProvenDuty;
  readonly unit: string;
  /** The day is told in ground done, since units are only acres of it. */
  readonly byArea: boolean;
  readonly input: DayInput;
  /** Start values used, in words. */
  readonly assumed: readonly string[];
}

const ACRE = 43560 * 0.3048 ** 2;
/** An hour of a charge in ampere seconds is stored so already; a small engine runs its pump from a tank of this size at least [m3]. */
const LEAST_FUEL_TANK = 1e-6;

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * The inputs of the working day of a rig; undefined when its main duty sprays nothing.
 *
 * @param moments whether the day is to keep the record of each moment
 */
export function dayInputOf(context: ProofContext, moments = true): DayMade | undefined {
  const { brief } = context.rig;
  const day = brief.day ?? {};
  const proven = context.duties.find((d) => d.duty.id === day.duty) ?? context.duties[0];
  if (proven === undefined) return undefined;
  const { duty, open, liquid } = proven;
  const flow = open.outlets.reduce((sum, o) => sum + Math.max(0, o.flow), 0);
  if (!(flow > 1e-6)) return undefined;
  const start = WORK_STARTS[brief.work];
  const residual = residualOf(context);
  const assumed: string[] = [];
  const or = <T>(given: T | undefined, name: string, fallback: { value: T; source: string }): T => {
    if (given !== undefined) return given;
    assumed.push(`${name}: ${fallback.source}`);
    return fallback.value;
  };
  const own = unitOf(proven);
  const unit = day.unit ?? own?.unit ?? or<string>(undefined, 'what is counted', start.unit);
  const off = (input: LooseInput) => looseFactor(context.rig, input);
  const { application } = duty;
  // What goes on an acre is set by rate and speed; what goes on a tree or a roof, by whoever holds the gun.
  const unitVolume =
    (day.unitVolume ?? own?.volume ?? or<number>(undefined, `mix for one ${unit}`, start.unitVolume)) *
    (application === undefined ? off('unit-volume') : 1);
  const unitArea =
    day.unitArea ?? own?.area ?? or<number>(undefined, `ground of one ${unit}`, start.unitArea);
  // Whole pass at the dose: a rig that drives while it sprays gives the flow its speed asks, not all it could.
  const workFlow =
    application === undefined
      ? flow
      : Math.min(flow, groundDose(application) * application.speed * application.width);
  const input: Writable<DayInput> = {
    dayLength: or(day.length, 'length of the day', STARTS.dayLength),
    tank: context.tank.volume,
    unusable: residual.body,
    flow: Math.max(1e-6, workFlow),
    unitVolume,
    unitArea,
    fillFlow: or(brief.fill?.flow, 'filling', start.fillFlow) * off('fill-flow'),
    startsFull: day.startsFull ?? false,
    preparation: or(day.preparation, 'making ready in the morning', STARTS.preparation) * off('handling'),
    closing: or(day.closing, 'putting away', STARTS.closing) * off('handling'),
    fillDistance: day.fillDistance ?? 0,
    roadSpeed: or(day.roadSpeed, 'speed on the way to the water', STARTS.roadSpeed),
    connectTime: or(day.connectTime, 'coupling up at the water', start.connectTime) * off('handling'),
    mixTime: or(day.mixTime, 'mixing a load', start.mixTime) * off('handling'),
    pauseTime: or(day.pauseTime, `besides spraying at each ${unit}`, start.pauseTime) * off('crew-pace'),
    stopTime: or(day.stopTime, 'parking at each place', start.stopTime) * off('handling'),
    // Hoses stay full over the day and clean water stays aboard: both ride with the empty tank.
    emptyMass:
      context.bill.dryMass + (residual.hoses + residual.plumbing) * liquid.density + rinseWaterAboard(brief),
    density: liquid.density,
  };
  // Field by field, not spread: the odds ask for a thousand days.
  if (!moments) input.moments = false;
  if (application !== undefined) input.workSpeed = Math.min(30, application.speed);
  else if (duty.hoseOut !== undefined) input.hoseLength = duty.hoseOut;
  const product = productShareOf(context, proven);
  if (product !== undefined) input.productShare = product;
  const fuel = fuelOf(context, proven);
  if (fuel !== undefined) {
    input.fuelTank = fuel.tank;
    input.fuelDensity = fuel.density;
    input.fuelRate = fuel.rate;
    input.chargeCurrent = fuel.chargeCurrent;
  }
  const battery = first(context.rig, 'battery')?.part;
  if (battery !== undefined) {
    input.battery = battery.capacity * STARTS.batteryShare.value;
    const reel = first(context.rig, 'reel')?.part;
    if (reel?.rewind === 'electric') input.reelCurrent = reel.rewindCurrent;
  }
  const byArea = day.unit === undefined && application !== undefined;
  return { proven, unit, byArea, assumed, input };
}

/** A unit that follows from the duty itself: a tree by its crown, a pot, an acre at its rate. */
function unitOf({ duty }: ProvenDuty): { unit: string; volume: number; area?: number } | undefined {
  if (duty.trees !== undefined && duty.application === undefined)
    return { unit: 'tree', volume: mixPerCrown(duty.trees) };
  if (duty.drench !== undefined) return { unit: 'pot', volume: duty.drench.dose, area: 0.1 };
  if (duty.application === undefined) return undefined;
  return { unit: 'acre', volume: groundDose(duty.application) * ACRE, area: ACRE };
}

/** Product by volume in the mix; undefined where it is told in another measure. */
function productShareOf(context: ProofContext, { duty }: ProvenDuty): number | undefined {
  const liquid = context.rig.brief.liquids.find((l) => l.id === duty.liquid);
  return liquid?.strengthUnit === 'volume %' && liquid.strength !== undefined
    ? Math.min(1, liquid.strength / 100)
    : undefined;
}

/** Fuel of the rig's own engine while the pump runs; a tractor's or truck's is not counted. */
function fuelOf(
  context: ProofContext,
  { open }: ProvenDuty,
): { tank: number; density: number; rate: number; chargeCurrent: number } | undefined {
  const { drive } = context;
  const pump = first(context.rig, 'pump');
  const p = open.pump;
  if (
    drive?.by !== 'engine' ||
    pump === undefined ||
    p === undefined ||
    p.inlet === null ||
    p.outlet === null
  )
    return undefined;
  const shaft = fluidPower(Math.max(0, p.flow), Math.max(0, p.outlet - p.inlet)) / pump.part.law.efficiency;
  const petrol = drive.engine.fuel === 'petrol';
  const density = (petrol ? STARTS.petrolDensity : STARTS.dieselDensity).value;
  const consumption = (petrol ? STARTS.petrolConsumption : STARTS.dieselConsumption).value;
  const rate = fuelRateFromConsumption(shaft / drive.efficiency, consumption, density).volumeRate;
  const tank = drive.engine.fuelTank;
  if (tank < LEAST_FUEL_TANK) return undefined;
  return {
    tank,
    density,
    rate: Math.min(1e-4, rate * looseFactor(context.rig, 'fuel-use')),
    chargeCurrent: drive.engine.chargingCurrent,
  };
}
