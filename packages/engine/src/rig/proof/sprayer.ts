import type { Part, PartOf } from '../../catalogue/index.ts';
import { boomlessSwath } from '../../physics/index.ts';
import { groundDose } from '../application.ts';
import type { Duty } from '../brief.ts';
import type { OutletState } from '../duty-state.ts';
import type { ProofContext, ProvenDuty } from './context.ts';

/** What makes the spray at the end of an open line. */
export interface Sprayer {
  readonly outlet: OutletState;
  /** Item that makes it: nozzles of a boom, or a gun's tip. */
  readonly item: string;
  readonly end: PartOf<'nozzle'> | PartOf<'tip'>;
  readonly boom: PartOf<'boom'> | undefined;
  readonly count: number;
  /** Width covered in one pass with overlap taken off [m]; undefined for a hand gun. */
  readonly swath: number | undefined;
}

/** The nozzles and tips at the ends of a duty's open lines. */
export function sprayersOf(context: ProofContext, { open }: ProvenDuty): Sprayer[] {
  return open.outlets.flatMap((outlet) => {
    const line = context.rig.lines.find((l) => l.id === outlet.line);
    const parts = (line?.run ?? []).flatMap((id) => context.rig.items.get(id) ?? []);
    const last = parts[parts.length - 1];
    if (last?.part.kind !== 'nozzle' && last?.part.kind !== 'tip') return [];
    const boom = parts.map((p): Part => p.part).find((p) => p.kind === 'boom');
    const count = last.item.count;
    return [
      { outlet, item: last.item.id, end: last.part, boom, count, swath: swathOf(last.part, boom, count) },
    ];
  });
}

/** Width that an end of a line covers in one pass [m]; undefined for a hand gun, and where the catalogue has no width. */
export function swathOf(
  end: PartOf<'nozzle'> | PartOf<'tip'>,
  boom: PartOf<'boom'> | undefined,
  count: number,
): number | undefined {
  if (end.kind === 'tip') return undefined;
  if (end.pattern === 'boomless')
    return end.wettedWidth === undefined ? undefined : boomlessSwath(end.wettedWidth);
  return boom === undefined ? undefined : boom.spacing * count;
}

/** The water-side pressure at which nozzle or tip passes another flow, from its pressure and flow now [Pa]. */
export function pressureForFlow({ outlet }: Sprayer, flow: number): number {
  return outlet.tipPressure * (flow / outlet.flow) ** 2;
}

/**
 * Pressure a sprayer works at: turned down until the rate over ground is right, or as it is where there is none [Pa].
 *
 * @param flow flow of all sprayers that are open together [m3/s]
 */
export function workPressure(
  { application }: Pick<Duty, 'application'>,
  sprayer: Sprayer,
  flow: number,
): number {
  if (application === undefined || !(flow > 0)) return sprayer.outlet.tipPressure;
  const needed = groundDose(application) * application.speed * application.width;
  return Math.min(
    sprayer.outlet.tipPressure,
    pressureForFlow(sprayer, (sprayer.outlet.flow * needed) / flow),
  );
}

/** Flow of everything that sprays together [m3/s]. */
export function flowOf(sprayers: readonly Sprayer[]): number {
  return sprayers.reduce((sum, s) => sum + Math.max(0, s.outlet.flow), 0);
}
