/** A day or a moment as people here say it: "3 Mar 2026". */
export function dayText(moment: string): string {
  const day = new Date(moment.length === 10 ? `${moment}T12:00:00` : moment);
  return day.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}

/** How long something has waited, in whole days. */
export function waited(since: string, now: number): string {
  const days = Math.floor((now - Date.parse(since)) / 86_400_000);
  return days < 1 ? 'today' : days === 1 ? '1 day' : `${days} days`;
}
