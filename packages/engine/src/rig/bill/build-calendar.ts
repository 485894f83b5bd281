import { mondayOf, workingDaysAfter } from './working-days.ts';

/** One rig that is to be built. */
export interface PlannedBuild {
  readonly id: string;
  /** Hours of work that are left [h]. */
  readonly hours: number;
  /** Day from which work can begin: its parts are there. */
  readonly partsOn: string;
  /** Working days that it takes in the shop at the least: paint dries and tests wait however many hands there are. */
  readonly leastDays: number;
}

/** When a rig is built and ready. */
export interface BuildPlan {
  readonly id: string;
  /** Week by week, each named by its Monday, the hours that go into it [h]. */
  readonly weeks: readonly { readonly monday: string; readonly hours: number }[];
  /** Day on which it is tested and ready. */
  readonly ready: string;
}

/** How full a week is. */
export interface WeekOfBuilds {
  readonly monday: string;
  readonly hours: number;
  readonly capacity: number;
}

/** Weeks that are looked ahead; a shop that is full for longer has other worries. */
const MOST_WEEKS = 520;
const DAYS = 5;

/**
 * Lays builds into the weeks of a shop: each takes the hours that the ones before it leave, from the week on in which its
 * parts are there. The week of today counts for the working days that are left of it.
 *
 * @param builds in the order in which they are promised: an earlier one never gives way to a later one
 * @param hoursPerWeek hours that the shop builds in a whole week [h]
 * @param today a day such as 2026-03-03
 * @returns the plan of each build, and every week that has work, with its capacity
 * @throws RangeError when hoursPerWeek is not above 0, or a day is not one of the calendar
 */
export function buildCalendar(
  builds: readonly PlannedBuild[],
  hoursPerWeek: number,
  today: string,
): { readonly plans: readonly BuildPlan[]; readonly weeks: readonly WeekOfBuilds[] } {
  if (!(hoursPerWeek > 0)) throw new RangeError(`hoursPerWeek is ${hoursPerWeek}; it must be above 0`);
  const now = workingDaysAfter(today, 0);
  const first = mondayOf(now);
  const used = new Map<string, number>();
  const capacityOf = (monday: string) =>
    monday === first ? (hoursPerWeek * (DAYS - dayInWeek(now))) / DAYS : hoursPerWeek;
  const plans = builds.map((build) => placed(build, now, used, capacityOf, hoursPerWeek));
  const weeks = [...used]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([monday, hours]) => ({ monday, hours, capacity: capacityOf(monday) }));
  return { plans, weeks };
}

function placed(
  { id, hours, partsOn, leastDays }: PlannedBuild,
  now: string,
  used: Map<string, number>,
  capacityOf: (monday: string) => number,
  hoursPerWeek: number,
): BuildPlan {
  const begin = partsOn > now ? workingDaysAfter(partsOn, 0) : now;
  const soonest = workingDaysAfter(begin, leastDays);
  const weeks: { monday: string; hours: number }[] = [];
  let left = hours;
  let monday = mondayOf(begin);
  let done = begin;
  for (let week = 0; left > 1e-9; week++) {
    if (week === MOST_WEEKS)
      throw new RangeError(`build '${id}' does not fit into ${MOST_WEEKS} weeks of ${hoursPerWeek} h`);
    // Parts that come within a week leave the days after them.
    const lost = week === 0 ? (hoursPerWeek * dayInWeek(begin)) / DAYS : 0;
    const whole = capacityOf(monday);
    const before = Math.max(used.get(monday) ?? 0, lost - (hoursPerWeek - whole));
    const taken = Math.min(left, Math.max(0, whole - before));
    if (taken > 1e-9) {
      used.set(monday, (used.get(monday) ?? 0) + taken);
      weeks.push({ monday, hours: taken });
      left -= taken;
      // The week's hours run out evenly over its days.
      const spent = Math.max(used.get(monday)!, before + taken) + (hoursPerWeek - whole);
      done = workingDaysAfter(monday, Math.min(DAYS, Math.ceil((spent / hoursPerWeek) * DAYS - 1e-9)) - 1);
    }
    monday = workingDaysAfter(monday, DAYS);
  }
  return { id, weeks, ready: done > soonest ? done : soonest };
}

/** Working days of the week before a working day: 0 for a Monday. */
function dayInWeek(day: string): number {
  let days = 0;
  for (let at = mondayOf(day); at < day; at = workingDaysAfter(at, 1)) days++;
  return days;
}
