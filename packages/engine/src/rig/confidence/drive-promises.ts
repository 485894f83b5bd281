import { driveOf, type Drive } from '../drive.ts';
import { pumpCurrentAt } from '../pump-current.ts';
import { shaftPower, speedShareOf } from '../proof/power.ts';
import { first } from '../rig-document.ts';
import type { Contender, DrawnPromise, DrawSheet } from './draw-sheet.ts';
import { pumpReadings } from './pump-readings.ts';

/** Promises of what turns the pump: engine, belt or gear, PTO, or a 12 V supply. */
export function drivePromises(sheet: DrawSheet): DrawnPromise[] {
  const drive = driveOf(sheet.context.rig);
  if (drive === undefined) return [];
  if (drive.by === 'motor') return [{ id: 'power:current', as: 'figure', contenders: currents(sheet) }];
  const turning = turns(sheet, drive);
  const needed = { as: 'figure', contenders: powers(sheet, drive.efficiency) } as const;
  if (drive.by === 'pto')
    return [{ id: 'power:pto', ...needed }, { id: 'power:pto-drive', ...needed }, turning];
  const power = sheet.factor('engine-power', drive.item);
  const speed = sheet.factor('drive-speed', drive.item);
  const nominal = speedShareOf(drive, drive.engineSpeed);
  return [
    {
      id: 'power:engine',
      ...needed,
      askedFactor: power.map((f, i) => (f * speedShareOf(drive, drive.engineSpeed * speed[i]!)) / nominal),
    },
    { id: 'power:reduction', ...needed },
    turning,
  ];
}

/** How fast the pump turns [rad/s]. */
function turns(sheet: DrawSheet, { item, pumpSpeed }: Drive): DrawnPromise {
  const speed = sheet.factor('drive-speed', item);
  return {
    id: 'power:speed',
    as: 'figure',
    contenders: [{ readings: [], value: (draw) => pumpSpeed * speed[draw]! }],
  };
}

/** Power asked of the drive in every duty, with the outlets open and shut [W]. */
function powers(sheet: DrawSheet, efficiency: number): Contender[] {
  const pump = first(sheet.context.rig, 'pump');
  if (pump === undefined) return [];
  const better = sheet.factor('pump-efficiency', pump.item.id);
  return sheet.context.duties.flatMap((proven) =>
    (['open', 'shut'] as const).flatMap((condition): Contender[] => {
      const network = sheet.network(proven, condition);
      const r = network === undefined ? undefined : pumpReadings(network, pump.item.id);
      if (r === undefined) return [];
      return [
        {
          readings: [r.inlet, r.outlet, r.flow],
          value: (draw) => {
            const rise = Math.max(0, r.outlet.values[draw]! - r.inlet.values[draw]!);
            const shaft = shaftPower(pump.part, Math.max(0, r.flow.values[draw]!), rise);
            return shaft / efficiency / better[draw]!;
          },
        },
      ];
    }),
  );
}

/** Current of a 12 V pump in every duty [A]. */
function currents(sheet: DrawSheet): Contender[] {
  const motor = first(sheet.context.rig, 'motor-pump')!;
  const more = sheet.factor('current', motor.item.id);
  return sheet.context.duties.flatMap((proven): Contender[] => {
    const network = sheet.network(proven, 'open');
    const r = network === undefined ? undefined : pumpReadings(network, motor.item.id);
    if (r === undefined) return [];
    return [
      {
        readings: [r.inlet, r.outlet],
        value: (draw) =>
          more[draw]! *
          pumpCurrentAt(motor.part.curve, Math.max(0, r.outlet.values[draw]! - r.inlet.values[draw]!)),
      },
    ];
  });
}
