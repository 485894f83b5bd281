import { display } from '../../quantity/index.ts';
import { judge, type Placement, type PromiseState, type SupportLoads } from '../../rig/index.ts';
import { asGiven, textWidth } from '../dimension.ts';
import { stateColor, stateMark } from '../marks.ts';
import type { Palette } from '../palette.ts';
import { element, label, number, stroke } from '../svg.ts';
import type { ViewOptions } from './view-options.ts';

/** Longest arrow, and its width [px]. */
const LONGEST = 54;
const WIDE = 12;
const HEAD = 9;
/** From an arrow to its figures; lines of these below the first [px]. */
const BESIDE = 18;
const LINES = [15, 29] as const;
/** How much deeper figures stand that have no room between two arrows [px]. */
export const DEEPER = LONGEST - 4;

/** One place where something rests: what it bears now, when full, and at most [kg]. */
export interface Bearing {
  readonly x: number;
  readonly name: string;
  readonly now: number;
  readonly most: number;
  /** When it is full, for the bar. */
  readonly full: number;
  readonly rating?: number;
  /** Side of the arrow on which its figures stand; none where another arrow tells the same. */
  readonly figures: 'left' | 'right' | 'none';
}

/** What a support bears in a duty; `most` is the worst of all fills. */
function bearingOf(
  support: SupportLoads,
  duty: string,
  told: Pick<Bearing, 'x' | 'name' | 'figures'>,
): Bearing {
  const { full, half, empty, byDuty, rating } = support;
  return {
    ...told,
    now: byDuty[duty] ?? full,
    full,
    most: Math.max(full, half, empty, ...Object.values(byDuty)),
    ...(rating === undefined ? {} : { rating }),
  };
}

/** What a rig rests on from its side; equal axles of one group are told once. */
export function sideBearings({ supports }: Placement, x: (metre: number) => number, duty: string): Bearing[] {
  const group = supports.some((s) => s.id === 'coupler') ? supports.length - 1 : 1;
  const bearings = supports.map((s, i) => {
    const axle = group > 1 && s.id !== 'coupler';
    return bearingOf(s, duty, {
      x: x(s.x),
      name: axle ? `Each of ${group} axles` : s.name,
      figures: axle && i < supports.length - 1 ? 'none' : 'right',
    });
  });
  return bearings.sort((a, b) => a.x - b.x);
}

/** Whether figures to the right of an arrow would run into the arrow that comes next: then they stand below the arrows. */
export function standsDeeper(b: Bearing, next: Bearing | undefined, units: ViewOptions['units']): boolean {
  if (b.figures !== 'right' || next === undefined) return false;
  const [now, name, limit] = textsOf(b, units);
  const widest = Math.max(textWidth(now, 14.5) + 28, textWidth(name, 12), textWidth(limit, 12));
  return b.x + BESIDE + widest > next.x - WIDE;
}

/** How a bearing stands against its rating. */
function bearingState({ most, now, rating }: Bearing): PromiseState {
  if (now < 0) return 'broken';
  return rating === undefined ? 'unknown' : judge(rating, most, 'at-most').state;
}

/**
 * Arrows up to the ground: the hollow one is the rating, the filled one the load now, tinted up to the load when full. All are to one
 * scale, and their figures stand beside them.
 */
export function supportArrows(bearings: readonly Bearing[], ground: number, options: ViewOptions): string[] {
  const { palette } = options;
  const sorted = [...bearings].sort((a, b) => a.x - b.x);
  const largest = Math.max(1, ...sorted.flatMap((b) => [b.rating ?? 0, b.most, b.now]));
  const size = (load: number) => (Math.max(0, load) / largest) * LONGEST;
  return sorted.flatMap((b, i) => {
    const y = ground + 18 + (standsDeeper(b, sorted[i + 1], options.units) ? DEEPER : 0);
    return [
      ...arrow(b, size, ground + 4, palette),
      ...(b.figures === 'none' ? [] : figures(b, b.figures === 'left', y, options)),
    ];
  });
}

function arrow(b: Bearing, size: (load: number) => number, top: number, palette: Palette): string[] {
  const state = bearingState(b);
  const color = stateColor(state, palette);
  const [left, right] = [b.x - WIDE / 2, b.x + WIDE / 2];
  const bar = (from: number, to: number, fill: string) =>
    element('rect', { x: left, y: top + from, width: WIDE, height: Math.max(0, to - from), fill });
  const now = size(b.now);
  const full = size(b.full);
  const rating = b.rating === undefined ? undefined : Math.max(size(b.rating), HEAD);
  const tint = state === 'broken' ? palette.brokenTint : state === 'thin' ? palette.thinTint : palette.paper2;
  return [
    ...(rating === undefined
      ? []
      : [
          element('path', {
            d: `M${number(left)} ${number(top + HEAD)}V${number(top + rating)}H${number(right)}V${number(top + HEAD)}`,
            ...stroke('thin', palette.ink, palette),
          }),
        ]),
    ...(full > now && full > HEAD ? [bar(Math.max(HEAD, now), full, tint)] : []),
    ...(now > HEAD ? [bar(HEAD, now, color)] : []),
    element('path', {
      d: `M${number(b.x)} ${number(top)}L${number(b.x + WIDE * 0.8)} ${number(top + HEAD)}H${number(b.x - WIDE * 0.8)}Z`,
      ...stroke('thin', palette.ink, palette),
      fill: b.now > 0 ? color : palette.paper,
    }),
    element('path', {
      d: `M${number(left - 4)} ${number(top + full)}h${WIDE + 8}`,
      ...stroke('outline', color, palette),
    }),
  ];
}

/** Now; its name; when full, and what it may bear. */
function textsOf(b: Bearing, units: ViewOptions['units']): [now: string, name: string, limit: string] {
  const say = (load: number) => massText(load, units);
  const limit = b.rating === undefined ? '≤ ?' : `≤ ${say(b.rating)}`;
  return [
    say(b.now),
    b.now < 0 ? `${b.name} lifts` : b.name,
    b.now === b.full ? limit : `${say(b.full)} full, ${limit}`,
  ];
}

function figures(b: Bearing, left: boolean, y: number, { palette, units }: ViewOptions): string[] {
  const state = bearingState(b);
  const anchor = left ? ('end' as const) : ('start' as const);
  const x = left ? b.x - BESIDE : b.x + BESIDE;
  const [now, name, limit] = textsOf(b, units);
  const mark = textWidth(now, 14.5) + 14;
  return [
    label(x, y, now, {
      size: 14.5,
      weight: 640,
      color: stateColor(state, palette),
      anchor,
      halo: palette.paper,
    }),
    stateMark(state, left ? x - mark : x + mark, y - 5, palette),
    label(x, y + LINES[0], name, {
      size: 12,
      color: palette.ink,
      anchor,
      halo: palette.paper,
    }),
    label(x, y + LINES[1], limit, {
      size: 12,
      color: palette.ink2,
      anchor,
      halo: palette.paper,
    }),
  ];
}

/** A mass without its decimals, as a weighbridge reads it. */
export function massText(mass: number, units: ViewOptions['units']): string {
  return asGiven(display(mass, 'mass', units, { unit: units === 'us' ? 'lb' : 'kg', decimals: 0 }));
}
