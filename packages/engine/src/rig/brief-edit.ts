import type { Outlet, Work } from '../catalogue/index.ts';
import { isLiquid, liquidOf } from '../liquids/index.ts';
import { changeBetween, type Change } from '../quantity/index.ts';
import type { Brief } from './brief.ts';
import type { RawRig } from './design/assemble.ts';
import { dutyStart } from './duty-starts.data.ts';
import { marksOf } from './starts.ts';

/** Duties and liquids put into a rig's brief and taken out of it: each a change of the rig's document. */

type LiquidUse = Brief['liquids'][number]['use'];

interface RawDuty {
  readonly id: string;
  readonly name: string;
  readonly liquid: string;
  readonly open: readonly Outlet[];
  readonly [field: string]: unknown;
}
interface RawLiquid {
  readonly id: string;
  readonly name: string;
  readonly use?: string;
}
interface RawBrief {
  readonly work: Work;
  readonly duties: readonly RawDuty[];
  readonly liquids: readonly RawLiquid[];
  readonly day?: { readonly duty?: string };
  readonly transfer?: { readonly duty?: string };
}

/** Of a duty like it these are not taken over: they were measured, or belong to that work alone. */
const ITS_OWN = ['id', 'name', 'liquid', 'open', 'cups', 'drench', 'trees', 'lane', 'starts'];

/**
 * One duty more, at one outlet. It begins as the last duty at that outlet is, else with start values of the kind of
 * work; every value is marked as a start value.
 *
 * @throws RangeError when the name is too short or long, or the brief has no such liquid
 */
export function addDuty(
  rig: RawRig,
  asked: { readonly name: string; readonly outlet: Outlet; readonly liquid: string },
): Change {
  const brief = rig.brief as RawBrief;
  const name = nameOf(asked.name, 'the duty', 80);
  if (!brief.liquids.some((l) => l.id === asked.liquid))
    throw new RangeError(
      `liquid is '${asked.liquid}'; the brief has ${brief.liquids.map((l) => `'${l.id}'`).join(', ')}`,
    );
  const alike = brief.duties.findLast((d) => d.open.length === 1 && d.open[0] === asked.outlet);
  const asks =
    alike === undefined
      ? dutyStart(brief.work, asked.outlet)
      : Object.fromEntries(Object.entries(alike).filter(([field]) => !ITS_OWN.includes(field)));
  const duty = {
    id: freeId(name, brief.duties, 'duty'),
    name,
    liquid: asked.liquid,
    open: [asked.outlet],
    ...asks,
    starts: marksOf(asks, ['target.aim']),
  };
  const set = alike === undefined ? rig : setLike(rig, alike.id, duty.id);
  return inBrief(set, { ...brief, duties: [...brief.duties, duty] }, `Add the duty "${name}"`, rig);
}

/**
 * The brief without a duty. A day that was filled with it goes by the first that is left; a promise to fill another
 * sprayer by it goes with it, and so does what was set for it alone.
 *
 * @throws RangeError when there is no such duty, or no other
 */
export function removeDuty(rig: RawRig, id: string): Change {
  const brief = rig.brief as RawBrief;
  const duty = brief.duties.find((d) => d.id === id);
  if (duty === undefined)
    throw new RangeError(`duty is '${id}'; the brief has ${brief.duties.map((d) => `'${d.id}'`).join(', ')}`);
  if (brief.duties.length === 1) throw new RangeError(`"${duty.name}" is the only duty: change it instead`);
  const { transfer, day, ...rest } = brief;
  const { duty: filled, ...dayLeft } = day ?? {};
  const next = {
    ...rest,
    ...(transfer === undefined || transfer.duty === id ? {} : { transfer }),
    ...(day === undefined ? {} : { day: filled === id ? dayLeft : day }),
    duties: brief.duties.filter((d) => d !== duty),
  };
  return inBrief(unset(rig, id), next, `Take away the duty "${duty.name}"`, rig);
}

/**
 * One liquid more: of the tables by its id, or another by its name alone, of which the proof then asks what it must
 * know. A strength without which nothing is known of it is begun within its usual range and marked as a start value.
 *
 * @throws RangeError when the name is too short or long
 */
export function addLiquid(
  rig: RawRig,
  asked: { readonly liquid: string; readonly name?: string; readonly use: LiquidUse },
): Change {
  const brief = rig.brief as RawBrief;
  const known = isLiquid(asked.liquid) ? liquidOf(asked.liquid) : undefined;
  const name = nameOf(asked.name ?? known?.name ?? '', 'the liquid', 60);
  const strength = known?.strength?.required === true ? known.strength : undefined;
  const start =
    strength === undefined
      ? {}
      : {
          strength: Number(Math.sqrt(strength.usual.min * strength.usual.max).toPrecision(2)),
          strengthUnit: strength.units[0],
        };
  const liquid = {
    id: freeId(name, brief.liquids, 'liquid'),
    name,
    liquid: known?.id ?? name.slice(0, 40),
    ...start,
    ...(known?.agitation === 'suspension' ? { suspension: true } : {}),
    ...(asked.use === 'spray' ? {} : { use: asked.use }),
    ...(strength === undefined ? {} : { starts: marksOf(start) }),
  };
  return inBrief(rig, { ...brief, liquids: [...brief.liquids, liquid] }, `Add the liquid "${name}"`);
}

/**
 * The brief without a liquid.
 *
 * @throws RangeError when there is no such liquid, when a duty sprays it, or when there is no other
 */
export function removeLiquid(rig: RawRig, id: string): Change {
  const brief = rig.brief as RawBrief;
  const liquid = brief.liquids.find((l) => l.id === id);
  if (liquid === undefined)
    throw new RangeError(
      `liquid is '${id}'; the brief has ${brief.liquids.map((l) => `'${l.id}'`).join(', ')}`,
    );
  const sprayed = brief.duties.filter((d) => d.liquid === id).map((d) => `"${d.name}"`);
  if (sprayed.length > 0)
    throw new RangeError(
      `"${liquid.name}" is sprayed in ${sprayed.join(' and ')}: choose another there first`,
    );
  const next = { ...brief, liquids: brief.liquids.filter((l) => l !== liquid) };
  return inBrief(rig, next, `Take away the liquid "${liquid.name}"`);
}

/** Start values of what can be aimed at: common practice, no source. */
const AIMS = {
  height: { height: '30 ft', standoff: '12 ft' },
  distance: { distance: '20 ft' },
  roof: { height: '16 ft', distance: '10 ft' },
} as const;

export type Aim = keyof typeof AIMS;

/**
 * Aims a duty at something else, or at nothing. A height or distance that was said before stays; the rest begins with
 * start values and is marked.
 *
 * @throws RangeError when there is no such duty
 */
export function aimDuty(rig: RawRig, id: string, aim: Aim | undefined): Change {
  const { duties } = rig.brief as RawBrief;
  const at = duties.findIndex((d) => d.id === id);
  const duty = duties[at];
  if (duty === undefined)
    throw new RangeError(`duty is '${id}'; the brief has ${duties.map((d) => `'${d.id}'`).join(', ')}`);
  const { target: before = {}, starts = {}, ...rest } = duty as { target?: object; starts?: object };
  const marks = Object.fromEntries(Object.entries(starts).filter(([path]) => !path.startsWith('target.')));
  const told = (path: string): unknown => (before as Record<string, unknown>)[path];
  const start = aim === undefined ? {} : AIMS[aim];
  for (const path of Object.keys(start))
    if (told(path) === undefined || (starts as Record<string, unknown>)[`target.${path}`] === true)
      marks[`target.${path}`] = true;
  const kept = Object.fromEntries(Object.entries(start).map(([path, value]) => [path, told(path) ?? value]));
  const next = {
    ...rest,
    ...(aim === undefined ? {} : { target: { aim, ...kept } }),
    ...(Object.keys(marks).length === 0 ? {} : { starts: marks }),
  };
  const about = aim === undefined ? `Aim "${duty.name}" at nothing` : `What "${duty.name}" aims at`;
  return { about, puts: [{ path: ['brief', 'duties', at], value: next }] };
}

function inBrief(rig: RawRig, brief: unknown, about: string, before = rig): Change {
  return changeBetween(before, { ...rig, brief }, about);
}

/** The rig with one duty set as another is. */
function setLike(rig: RawRig, like: string, duty: string): RawRig {
  const items = rig.items.map((item) => {
    const set = item.setByDuty?.[like];
    return set === undefined ? item : { ...item, setByDuty: { ...item.setByDuty, [duty]: set } };
  });
  return { ...rig, items };
}

/** The rig without what is set for one duty alone. */
function unset(rig: RawRig, duty: string): RawRig {
  const items = rig.items.map((item) => {
    const { setByDuty, ...rest } = item;
    if (setByDuty?.[duty] === undefined) return item;
    const left = Object.entries(setByDuty).filter(([id]) => id !== duty);
    return left.length === 0 ? rest : { ...rest, setByDuty: Object.fromEntries(left) };
  });
  return { ...rig, items };
}

function nameOf(text: string, what: string, max: number): string {
  const name = text.trim();
  if (name.length < 2 || name.length > max)
    throw new RangeError(`the name of ${what} is '${name}'; 2 to ${max} characters are needed`);
  return name;
}

/** An id made of a name that none of the list has. */
function freeId(name: string, taken: readonly { readonly id: string }[], otherwise: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-+$/, '');
  const stem = plain === '' ? otherwise : plain;
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.some((t) => t.id === id)) return id;
  }
}
