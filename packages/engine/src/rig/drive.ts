import type { PartOf } from '../catalogue/index.ts';
import { first, type Rig } from './rig-document.ts';

/** What turns the pump, and how fast. */
export type Drive =
  | {
      readonly by: 'engine';
      readonly engine: PartOf<'engine'>;
      readonly reduction: PartOf<'reduction'> | undefined;
      readonly item: string;
      /** [rad/s] */
      readonly engineSpeed: number;
      readonly pumpSpeed: number;
      readonly efficiency: number;
    }
  | {
      readonly by: 'pto';
      readonly pto: PartOf<'pto-drive'>;
      readonly item: string;
      readonly ptoSpeed: number;
      readonly pumpSpeed: number;
      readonly efficiency: number;
    }
  | { readonly by: 'motor'; readonly item: string; readonly pumpSpeed: 0; readonly efficiency: 1 };

/** Creep of a V-belt under load: common practice, 0 to 2 %. Gears and couplings do not slip. */
const BELT_SLIP = 0.01;

/** Finds what drives the rig's pump; undefined when nothing does. */
export function driveOf(rig: Rig): Drive | undefined {
  const engine = first(rig, 'engine');
  if (engine !== undefined) {
    const reduction = first(rig, 'reduction');
    const engineSpeed = engine.item.speed ?? engine.part.ratedSpeed;
    const slip = reduction?.part.type === 'belt' ? BELT_SLIP : 0;
    return {
      by: 'engine',
      engine: engine.part,
      reduction: reduction?.part,
      item: engine.item.id,
      engineSpeed,
      pumpSpeed: engineSpeed * (reduction?.part.ratio ?? 1) * (1 - slip),
      efficiency: reduction?.part.efficiency ?? 1,
    };
  }
  const pto = first(rig, 'pto-drive');
  if (pto !== undefined) {
    const ptoSpeed = rig.brief.carrier.ptoSpeed ?? pto.part.ptoSpeed;
    return {
      by: 'pto',
      pto: pto.part,
      item: pto.item.id,
      ptoSpeed,
      pumpSpeed: ptoSpeed * pto.part.ratio,
      efficiency: pto.part.efficiency,
    };
  }
  const motor = first(rig, 'motor-pump');
  return motor === undefined ? undefined : { by: 'motor', item: motor.item.id, pumpSpeed: 0, efficiency: 1 };
}
