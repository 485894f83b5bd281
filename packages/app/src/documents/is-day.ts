/** True for a day of the calendar, such as 2026-04-01; the 31st of February is none. */
export function isDay(text: string): boolean {
  const moment = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().slice(0, 10) === text;
}
