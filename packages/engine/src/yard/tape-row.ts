import type { PartOf } from '../catalogue/index.ts';
import { outletHeightOf, siteOf, type Duty, type Rig } from '../rig/index.ts';
import type { YardRow } from './yard-row.ts';
import { throwNear } from './throw-near.ts';
import type { WaterRun } from './water-run.ts';

/** The throw over level ground of the gun at the end of a line; undefined where the line has no gun with a tip that throws. */
export function tapeRow(
  rig: Rig,
  duty: Duty,
  line: string,
  run: WaterRun,
  waterDensity: number,
): YardRow | undefined {
  const found = rig.lines.find((l) => l.id === line);
  const parts = (found?.run ?? []).map((id) => rig.items.get(id)!);
  const gun = parts.find((p) => p.part.kind === 'gun');
  const tip = parts.find((p) => p.part.kind === 'tip');
  const outlet = run.outlets.find((o) => o.line === line);
  if (duty.target === undefined || gun === undefined || tip === undefined || found === undefined)
    return undefined;
  if (outlet === undefined) return undefined;
  const tipPart = tip.part as PartOf<'tip'>;
  const far = throwNear(
    {
      gun: gun.part as PartOf<'gun'>,
      tip: tipPart,
      density: waterDensity,
      airDensity: siteOf(rig.brief).airDensity,
      tipHeight: Math.max(0, outletHeightOf(found, duty)),
    },
    outlet.tipPressure,
  );
  if (far === undefined) return undefined;
  return {
    id: `tape-farthest:${duty.id}:${line}`,
    instrument: 'tape-farthest',
    duty,
    line,
    needed: false,
    read: (w) => {
      const now = w.runs.get(duty.id)?.outlets.find((o) => o.line === line);
      const tipNow = w.rig.items.get(tip.item.id)!.part as PartOf<'tip'>;
      return now === undefined ? NaN : far(now.tipPressure, tipNow) * w.factor(`throw:${gun.item.id}`);
    },
  };
}
