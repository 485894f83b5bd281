import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCalendar, type PlannedBuild } from './build-calendar.ts';
import { mondayOf, workingDaysAfter, workingDaysBefore } from './working-days.ts';

// 2026-03-02 is a Monday (ISO 8601 calendar, checked with the Date of the language below).
const MONDAY = '2026-03-02';
const build = (id: string, hours: number, more: Partial<PlannedBuild> = {}): PlannedBuild => ({
  id,
  hours,
  partsOn: MONDAY,
  leastDays: 0,
  ...more,
});

describe('Working days', () => {
  it('agree with the calendar of the language, and undo each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 60 }), (n, days) => {
        const day = new Date(n * 86_400_000).toISOString().slice(0, 10);
        const weekday = (text: string) => new Date(`${text}T00:00:00Z`).getUTCDay();
        expect(weekday(mondayOf(day))).toBe(1);
        expect(mondayOf(day) <= day).toBe(true);
        const later = workingDaysAfter(day, days);
        expect([1, 2, 3, 4, 5]).toContain(weekday(later));
        expect(workingDaysBefore(later, days)).toBe(workingDaysAfter(day, 0));
      }),
    );
  });
});

describe('The calendar of builds', () => {
  it('fills weeks one after the other', () => {
    const { plans, weeks } = buildCalendar([build('a', 45), build('b', 20)], 30, MONDAY);
    // By hand: 30 h this week and 15 the next, half a week, so by Wednesday; b has the other 15 and 5 more.
    expect(plans[0]).toEqual({
      id: 'a',
      weeks: [
        { monday: '2026-03-02', hours: 30 },
        { monday: '2026-03-09', hours: 15 },
      ],
      ready: '2026-03-11',
    });
    expect(plans[1]).toEqual({
      id: 'b',
      weeks: [
        { monday: '2026-03-09', hours: 15 },
        { monday: '2026-03-16', hours: 5 },
      ],
      ready: '2026-03-16',
    });
    expect(weeks.map((w) => w.hours)).toEqual([30, 30, 5]);
  });

  it('waits for parts, and leaves the weeks before to others', () => {
    const late = build('late', 10, { partsOn: '2026-03-18' });
    const { plans } = buildCalendar([late, build('soon', 30)], 30, MONDAY);
    // A Wednesday: two fifths of the week are gone, 12 of 30 h; 10 more are 22, the fourth day.
    expect(plans[0]).toMatchObject({ weeks: [{ monday: '2026-03-16', hours: 10 }], ready: '2026-03-19' });
    expect(plans[1]).toMatchObject({ weeks: [{ monday: MONDAY, hours: 30 }], ready: '2026-03-06' });
  });

  it('is never ready before the days that a rig takes at the least', () => {
    const { plans } = buildCalendar([build('a', 3, { leastDays: 8 })], 30, MONDAY);
    expect(plans[0]!.ready).toBe('2026-03-12');
  });

  it('counts of the week of today what is left of it', () => {
    const { plans, weeks } = buildCalendar([build('a', 15)], 30, '2026-03-05');
    expect(weeks[0]).toEqual({ monday: MONDAY, hours: 12, capacity: 12 });
    expect(plans[0]!.ready).toBe('2026-03-09');
  });

  it('refuses a shop without hours', () => {
    expect(() => buildCalendar([], 0, MONDAY)).toThrow('hoursPerWeek is 0; it must be above 0');
  });

  it('neither loses nor invents an hour, and no week holds more than it can', () => {
    const one = fc.record({
      hours: fc.double({ min: 0, max: 120, noNaN: true }),
      wait: fc.integer({ min: 0, max: 60 }),
      leastDays: fc.integer({ min: 0, max: 20 }),
    });
    fc.assert(
      fc.property(
        fc.array(one, { maxLength: 12 }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        (list, perWeek) => {
          const builds = list.map(({ hours, wait, leastDays }, i) =>
            build(String(i), hours, { partsOn: workingDaysAfter(MONDAY, wait), leastDays }),
          );
          const { plans, weeks } = buildCalendar(builds, perWeek, '2026-03-04');
          plans.forEach((plan, i) => {
            const { hours, partsOn, leastDays } = builds[i]!;
            expect(plan.weeks.reduce((sum, w) => sum + w.hours, 0)).toBeCloseTo(hours, 6);
            expect(plan.weeks.every((w) => w.monday >= mondayOf(partsOn))).toBe(true);
            expect(plan.ready >= workingDaysAfter(partsOn, leastDays)).toBe(true);
          });
          for (const week of weeks) expect(week.hours).toBeLessThanOrEqual(week.capacity + 1e-6);
        },
      ),
    );
  });
});
