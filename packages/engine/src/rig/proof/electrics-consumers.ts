import { first } from '../rig-document.ts';
import type { ProofContext } from './context.ts';
import { hardestPumpCurrent } from './power.ts';

/** Speed at which a reel brings hose in: common practice, no source (2 ft/s) [m/s]. */
const REWIND_SPEED = 0.61;

/** Something that draws current. */
export interface Consumer {
  readonly item: string;
  readonly name: string;
  readonly use: 'reel' | 'starter' | 'pump';
  /** [A] */
  readonly current: number;
  /** Of one use: a rewind of all the hose [s]; 0 where it does not matter. */
  readonly time: number;
}

/** Electric reels, starters and pumps of a rig. */
export function consumersOf(context: ProofContext): Consumer[] {
  const { rig } = context;
  const out: Consumer[] = [];
  for (const { item, part } of rig.items.values()) {
    if (part.kind === 'reel' && part.rewind === 'electric')
      out.push({
        item: item.id,
        name: part.name,
        use: 'reel',
        current: part.rewindCurrent,
        time: hoseOn(context, item.id) / REWIND_SPEED,
      });
    if (part.kind === 'engine' && part.start === 'electric')
      out.push({
        item: item.id,
        name: `starter of ${part.name}`,
        use: 'starter',
        current: part.startingCurrent,
        time: 0,
      });
  }
  const motor = first(rig, 'motor-pump');
  if (motor !== undefined)
    out.push({
      item: motor.item.id,
      name: motor.part.name,
      use: 'pump',
      current: hardestPumpCurrent(context).current,
      time: 0,
    });
  return out.filter((c) => c.current > 0);
}

/** Hose wound on a reel: the hoses of its line [m]. */
function hoseOn({ rig }: ProofContext, reel: string): number {
  const line = rig.lines.find((l) => l.run.includes(reel));
  return (line?.run ?? []).reduce((sum, id) => sum + (rig.items.get(id)?.item.length ?? 0), 0);
}
