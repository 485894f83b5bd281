/** The day of a moment where the reader is, in words that are the same everywhere: "3 Mar 2026". */
export function dayText(at: string): string {
  // A day without a time is that day everywhere.
  const moment = new Date(at.length === 10 ? `${at}T12:00:00` : at);
  return moment.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}

/** The time of day where the reader is, as clocks are read there: "10:10" or "10:10 AM". */
export function clockText(at: string): string {
  return new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
}

/** "3 Mar 2026, 10:10". */
export function momentText(at: string): string {
  return `${dayText(at)}, ${clockText(at)}`;
}

/** Who and when: "Sam, 3 Mar 2026, 10:10". */
export function byWhom({ by, at }: { readonly by: string; readonly at: string }): string {
  return `${by === '' ? 'nobody named' : by}, ${momentText(at)}`;
}

/** The day that it is where the reader is, as records write it: "2026-03-03". */
export function today(): string {
  const now = new Date();
  const [month, day] = [now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0'));
  return `${now.getFullYear()}-${month}-${day}`;
}

/** How long something has waited, in whole days. */
export function waited(since: string, now: number): string {
  const days = Math.floor((now - Date.parse(since)) / 86_400_000);
  return days < 1 ? 'today' : days === 1 ? '1 day' : `${days} days`;
}
