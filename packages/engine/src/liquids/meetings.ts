import { isLiquid, isMaterial, liquidOf, materialOf } from './liquid-of.ts';
import { MEETINGS, type Meeting, type OtherSubstance, type Side } from './meetings.data.ts';

/** Two named things of a rig that must not meet. */
export interface ForbiddenMeeting {
  readonly a: string;
  readonly b: string;
  readonly severity: 'never' | 'avoid';
  readonly result: string;
  /** Where they would meet: in the tank now, from what it held last, with what comes next, or at a wetted part. */
  readonly where: 'together' | 'last' | 'next' | 'part';
  readonly rule: Meeting;
}

/**
 * Whether two liquids, or a liquid and a material, must not meet.
 *
 * @param wetted other materials that are wetted where they meet.
 * @throws RangeError for a name that is no liquid, material or other substance of the rules.
 */
export function mustNotMeet(a: string, b: string, wetted: readonly string[] = []): readonly Meeting[] {
  checkName(a);
  checkName(b);
  wetted.forEach(materialOf);
  return meetingsOf(a, b).filter(
    (m) => m.inMaterials === undefined || m.inMaterials.some((id) => wetted.includes(id)),
  );
}

/** By both names: there are no more of them than liquids, materials and other substances of the rules. */
const known = new Map<string, readonly Meeting[]>();

function meetingsOf(a: string, b: string): readonly Meeting[] {
  const key = `${a}|${b}`;
  let found = known.get(key);
  if (found === undefined) {
    found = MEETINGS.filter((m) => (fits(m.a, a) && fits(m.b, b)) || (fits(m.a, b) && fits(m.b, a)));
    known.set(key, found);
  }
  return found;
}

/**
 * Every forbidden meeting of a rig: what it carries together, what it carried last, what it carries next, and what
 * its wetted parts are made of.
 *
 * @throws RangeError for an unknown liquid or material.
 */
export function forbiddenMeetings(q: {
  readonly carries: readonly string[];
  readonly last?: string | undefined;
  readonly next?: string | undefined;
  readonly materials?: readonly string[] | undefined;
}): readonly ForbiddenMeeting[] {
  const found: ForbiddenMeeting[] = [];
  const materials = [...new Set(q.materials ?? [])];
  const add = (a: string, b: string, where: ForbiddenMeeting['where']) => {
    for (const rule of mustNotMeet(a, b, materials))
      found.push({ a, b, severity: rule.severity, result: rule.result, where, rule });
  };
  const carries = [...new Set(q.carries)];
  carries.forEach((a, i) => {
    liquidOf(a);
    for (const b of carries.slice(i + 1)) add(a, b, 'together');
    if (q.last !== undefined && q.last !== a) add(a, q.last, 'last');
    if (q.next !== undefined && q.next !== a) add(a, q.next, 'next');
    for (const material of materials) add(a, material, 'part');
  });
  return found;
}

const OTHERS: readonly OtherSubstance[] = [
  'ammonium sulfate',
  'ammonia cleaner',
  'calcium nitrate',
  'hard water',
  'sulfate solution',
  'zinc',
  'galvanised steel',
  'acid',
];

const isOther = (name: string): name is OtherSubstance => (OTHERS as readonly string[]).includes(name);

function checkName(name: string): void {
  if (!isLiquid(name) && !isMaterial(name) && !isOther(name))
    throw new RangeError(
      `'${name}' is no liquid, material or other substance that the rules know (${OTHERS.join(', ')})`,
    );
}

function fits(side: Side, name: string): boolean {
  if (isLiquid(name))
    return (
      (side.liquids?.includes(name) ?? false) ||
      (side.groups?.some((g) => liquidOf(name).groups.includes(g)) ?? false)
    );
  if (isMaterial(name)) return side.materials?.includes(name) ?? false;
  return isOther(name) && (side.others?.includes(name) ?? false);
}
