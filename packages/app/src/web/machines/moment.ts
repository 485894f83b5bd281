/** Who and when, as a sheet says it: "Sam, 3 Mar 2026, 10:10". */
export function byWhom({ by, at }: { readonly by: string; readonly at: string }): string {
  const when = new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
  return by === '' ? `nobody named, ${when}` : `${by}, ${when}`;
}
