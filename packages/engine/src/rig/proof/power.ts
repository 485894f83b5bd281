import type { PartOf } from '../../catalogue/index.ts';
import { DERATE_RULES, engineContinuousPower, fluidPower, siteDerate } from '../../physics/index.ts';
import type { Drive } from '../drive.ts';
import { pumpCurrentAt } from '../pump-current.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { first } from '../rig-document.ts';
import { say, type WorkContext } from './context.ts';

/** The duty and condition in which the pump asks most of its shaft. */
interface Hardest {
  /** Shaft power at the pump [W]. */
  readonly shaft: number;
  readonly flow: number;
  readonly rise: number;
  readonly duty: string;
}

/** The drive is strong enough all day, and turns the pump at a speed it is made for. */
export function powerPromises(context: WorkContext): RigPromise[] {
  const { drive } = context;
  const told = {
    id: 'power:drive',
    kind: 'power' as const,
    sentence: 'The drive is strong enough all day',
    method: 'power chain from liquid to label',
    source: 'power balance',
  };
  if (drive === undefined) return [unknown({ ...told, cause: 'nothing drives the pump' })];
  if (drive.by === 'motor') return motorPromises(context);
  const hardest = hardestDuty(context);
  if (hardest === undefined) return [unknown({ ...told, cause: 'no duty could be solved' })];
  return [
    ...(drive.by === 'engine'
      ? enginePromises(context, drive, hardest)
      : ptoPromises(context, drive, hardest)),
    ...speedPromises(context, drive),
  ];
}

/** Power at the shaft of a pump [W]. */
export function shaftPower(pump: PartOf<'pump'>, flow: number, rise: number): number {
  return fluidPower(flow, rise) / pump.law.efficiency;
}

function hardestDuty(context: WorkContext): Hardest | undefined {
  const pump = first(context.rig, 'pump')?.part;
  if (pump === undefined) return undefined;
  let hardest: Hardest | undefined;
  for (const { duty, open, shut } of context.duties)
    for (const state of [open, shut]) {
      const p = state.pump;
      if (p === undefined || p.inlet === null || p.outlet === null) continue;
      const rise = Math.max(0, p.outlet - p.inlet);
      const flow = Math.max(0, p.flow);
      const shaft = shaftPower(pump, flow, rise);
      if (hardest === undefined || shaft > hardest.shaft)
        hardest = { shaft, flow, rise, duty: state === shut ? `${duty.name}, outlets shut` : duty.name };
    }
  return hardest;
}

function chain(context: WorkContext, drive: Drive, hardest: Hardest): Step[] {
  const efficiency = first(context.rig, 'pump')?.part.law.efficiency ?? 1;
  const liquid = is(hardest.shaft * efficiency, 'power');
  const shaft = is(hardest.shaft, 'power');
  return [
    { text: 'flow through the pump', figure: { value: hardest.flow, dimension: 'flow' } },
    { text: 'pressure rise across it', figure: { value: hardest.rise, dimension: 'pressure' } },
    worked('power in the liquid', liquid, '{flow} × {pressure rise}', {
      flow: is(hardest.flow, 'flow'),
      'pressure rise': is(hardest.rise, 'pressure'),
    }),
    worked('at the pump shaft', shaft, '{power in the liquid} / {efficiency of the pump}', {
      'power in the liquid': liquid,
      'efficiency of the pump': is(efficiency, 'ratio'),
    }),
    worked(
      'before the drive',
      is(hardest.shaft / drive.efficiency, 'power'),
      '{power at the shaft} / {efficiency of the drive}',
      { 'power at the shaft': shaft, 'efficiency of the drive': is(drive.efficiency, 'ratio') },
    ),
  ];
}

/** Power falls with speed below the rated one; above it there is no more [-]. */
export function speedShareOf({ engine }: Extract<Drive, { by: 'engine' }>, speed: number): number {
  return Math.min(1, speed / engine.ratedSpeed);
}

function enginePromises(
  context: WorkContext,
  drive: Extract<Drive, { by: 'engine' }>,
  hardest: Hardest,
): RigPromise[] {
  const { site } = context;
  const needed = hardest.shaft / drive.efficiency;
  const derate = siteDerate(site.derating, site.altitude, site.temperature - 273.15, site.humidity);
  // Cold dense air may give more than the label; that is not counted on.
  const siteFactor = Math.min(1, derate.factor);
  const speedShare = speedShareOf(drive, drive.engineSpeed);
  const available = engineContinuousPower(drive.engine.power, siteFactor) * speedShare;
  const out = [
    compared(
      {
        id: 'power:engine',
        kind: 'power',
        sentence: `Engine strong enough all day at ${say(context, site.temperature, 'temperature')}`,
        cause: `hardest in "${hardest.duty}"`,
        items: [drive.item],
        method: `power chain from liquid to label, site derating by ${DERATE_RULES[derate.rule].name}${derate.estimate ? ' (estimate)' : ''}`,
        source:
          'site factor by the rule named; SAE J1940 label fraction 0.95; continuous fraction 0.85 is common practice, no source',
        working: [
          ...chain(context, drive, hardest),
          { text: 'on the label', figure: { value: drive.engine.power, dimension: 'power' } },
          {
            text: `left at the site: ${Math.round(siteFactor * 1000) / 10} %; label met to 95 %; 85 % all day`,
          },
          ...(speedShare < 1
            ? [{ text: `at ${say(context, drive.engineSpeed, 'rotation')}, power falls with speed` }]
            : []),
          worked(
            'continuous power available',
            is(available, 'power'),
            '{power on the label} × {left at the site} × 0.95 × 0.85 × {left at its speed}',
            {
              'power on the label': is(drive.engine.power, 'power'),
              'left at the site': is(siteFactor, 'ratio'),
              'left at its speed': is(speedShare, 'ratio'),
            },
          ),
        ],
      },
      { value: available, dimension: 'power' },
      { value: needed, dimension: 'power' },
      'at-most',
    ),
  ];
  const reduction = drive.reduction;
  if (reduction !== undefined)
    out.push(
      compared(
        {
          id: 'power:reduction',
          kind: 'power',
          sentence: `${reduction.type === 'belt' ? 'Belt' : reduction.type === 'gear' ? 'Gear' : 'Coupling'} carries the power`,
          cause: `hardest in "${hardest.duty}"`,
          items: ['reduction'],
          method: 'power chain from liquid to label',
          source: 'rating of the catalogue',
        },
        { value: reduction.maxPower, dimension: 'power' },
        { value: needed, dimension: 'power' },
        'at-most',
      ),
    );
  return out;
}

function ptoPromises(
  context: WorkContext,
  drive: Extract<Drive, { by: 'pto' }>,
  hardest: Hardest,
): RigPromise[] {
  const needed = hardest.shaft / drive.efficiency;
  const told = {
    id: 'power:pto',
    kind: 'power' as const,
    sentence: "The tractor's PTO is strong enough",
    cause: `hardest in "${hardest.duty}"`,
    items: [drive.item],
    method: 'power chain from liquid to PTO',
    source: "power balance; the tractor's PTO power is the customer's word",
    working: chain(context, drive, hardest),
  };
  const has = { value: needed, dimension: 'power' as const };
  const given = context.rig.brief.carrier.ptoPower;
  return [
    given === undefined
      ? {
          ...unknown(
            { ...told, cause: "ask the customer for the tractor's PTO power" },
            undefined,
            'at-most',
          ),
          has,
        }
      : compared(told, { value: given, dimension: 'power' }, has, 'at-most'),
    compared(
      {
        ...told,
        id: 'power:pto-drive',
        sentence: 'PTO shaft and gear carry the power',
        source: 'rating of the catalogue',
      },
      { value: drive.pto.maxPower, dimension: 'power' },
      has,
      'at-most',
    ),
  ];
}

function speedPromises(context: WorkContext, drive: Drive): RigPromise[] {
  const pump = first(context.rig, 'pump');
  if (pump === undefined) return [];
  const slow = drive.pumpSpeed < pump.part.minSpeed;
  return [
    compared(
      {
        id: 'power:speed',
        kind: 'power',
        sentence: slow ? 'Pump turns fast enough' : 'Pump turns no faster than it may',
        cause:
          drive.by === 'engine'
            ? `engine at ${say(context, drive.engineSpeed, 'rotation')}`
            : drive.by === 'pto'
              ? `PTO at ${say(context, drive.ptoSpeed, 'rotation')}`
              : '',
        items: [pump.item.id, drive.item],
        method: 'speed through belt, gear or shaft',
        source: 'ratings of the catalogue; belt creep 1 % is common practice, no source',
      },
      { value: slow ? pump.part.minSpeed : pump.part.maxSpeed, dimension: 'rotation' },
      { value: drive.pumpSpeed, dimension: 'rotation' },
      slow ? 'at-least' : 'at-most',
    ),
  ];
}

/** A 12 V pump: the current it draws in its hardest duty against what the vehicle can give. */
function motorPromises(context: WorkContext): RigPromise[] {
  const motor = first(context.rig, 'motor-pump')!;
  const { current: most, duty } = hardestPumpCurrent(context);
  const told = {
    id: 'power:current',
    kind: 'power' as const,
    sentence: "The vehicle's 12 V supply is strong enough",
    cause: `hardest in "${duty}"`,
    items: [motor.item.id],
    method: 'current from the pump curve at its pressure',
    source: 'curve of the catalogue',
  };
  const has = { value: most, dimension: 'current' as const };
  const supply = context.rig.brief.carrier.supplyCurrent;
  if (supply === undefined)
    return [
      {
        ...unknown(
          { ...told, cause: 'ask the customer what current the 12 V socket gives' },
          undefined,
          'at-most',
        ),
        has,
      },
    ];
  return [compared(told, { value: supply, dimension: 'current' }, has, 'at-most')];
}

/** Most current that the 12 V pump of a rig draws in its duties, and the duty that asks it. */
export function hardestPumpCurrent(context: WorkContext): { current: number; duty: string } {
  const motor = first(context.rig, 'motor-pump');
  let hardest = { current: 0, duty: '' };
  for (const d of context.duties) {
    const p = d.open.pump;
    if (motor === undefined || p === undefined || p.outlet === null || p.inlet === null) continue;
    const current = pumpCurrentAt(motor.part.curve, Math.max(0, p.outlet - p.inlet));
    if (current > hardest.current) hardest = { current, duty: d.duty.name };
  }
  return hardest;
}
