import type { Part } from '../../catalogue/index.ts';
import { first, type Rig } from '../rig-document.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { say, type WorkContext, type ProvenDuty } from './context.ts';

interface Peak {
  readonly item: string;
  readonly pressure: number;
  /** What a slammed trigger puts on top of the steady pressure, as a factor. */
  readonly peak: number;
  readonly limit: number;
  readonly duty: string;
}

/** Every part on the pressure side stands the highest pressure it can see: working, and with the trigger slammed shut. */
export function ratingPromises(context: WorkContext): RigPromise[] {
  const peaks = highestPressures(context.rig, context.duties);
  const pumpKinds = new Set(['pump', 'motor-pump']);
  const isPump = (p: Peak) => pumpKinds.has(context.rig.items.get(p.item)!.part.kind);
  return [
    worst(context, 'pump', 'Pump stays below its highest pressure', peaks.filter(isPump)),
    worst(
      context,
      'delivery',
      'Hoses and fittings outlast a slammed trigger',
      peaks.filter((p) => !isPump(p)),
    ),
  ];
}

/** Pressure of a slammed trigger over the steady one with the outlets shut [-]. */
export function shutPeak(rig: Rig): number {
  return 1 + (first(rig, 'regulator')?.part.shutPeak ?? 0);
}

/** What a part feels of it. A pump feels the peak less than the line: its rating is judged on the steady pressure. */
export function peakAt(part: Part, peak: number): number {
  return part.kind === 'pump' ? 1 : peak;
}

/** Highest gauge pressure at each rated part over all duties and conditions, peak of a slammed trigger included. */
function highestPressures(rig: Rig, duties: readonly ProvenDuty[]): Peak[] {
  const peak = shutPeak(rig);
  const highest = new Map<string, Peak>();
  for (const { duty, open, shut } of duties)
    for (const state of [open, shut])
      state.pressureAt.forEach((pressure, item) => {
        const part = rig.items.get(item)!.part;
        if (!('maxPressure' in part) || pressure <= 0) return;
        const times = state === shut ? peakAt(part, peak) : 1;
        const seen = pressure * times;
        const known = highest.get(item);
        if (known === undefined || seen > known.pressure)
          highest.set(item, { item, pressure: seen, peak: times, limit: part.maxPressure, duty: duty.name });
      });
  return [...highest.values()].sort((a, b) => b.pressure / b.limit - a.pressure / a.limit);
}

function worst(context: WorkContext, what: string, sentence: string, peaks: readonly Peak[]): RigPromise {
  const told = {
    id: `rating:${what}`,
    kind: 'rating' as const,
    sentence,
    method: 'highest pressure over all duties, outlets open and shut',
    source: "ratings of the catalogue; peak over the set pressure is the regulator's own figure",
  };
  const first = peaks[0];
  if (first === undefined)
    return unknown({ ...told, cause: 'no duty could be solved' }, undefined, 'at-most');
  const name = context.rig.items.get(first.item)!.part.name;
  const working = peaks.map((p): Step => {
    const text = `${context.rig.items.get(p.item)!.part.name}, rated ${say(context, p.limit, 'pressure')}`;
    const figure = is(p.pressure, 'pressure');
    if (p.peak === 1) return { text, figure };
    return worked(text, figure, '{outlets shut} × {slammed trigger}', {
      'outlets shut': is(p.pressure / p.peak, 'pressure'),
      'slammed trigger': is(p.peak, 'ratio'),
    });
  });
  return compared(
    {
      ...told,
      cause: `${name} has the least room, in "${first.duty}"`,
      items: peaks.map((p) => p.item),
      working,
    },
    { value: first.limit, dimension: 'pressure' },
    { value: first.pressure, dimension: 'pressure' },
    'at-most',
  );
}
