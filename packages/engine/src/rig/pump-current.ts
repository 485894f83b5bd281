/** Current of a 12 V pump at a pressure rise [Pa], along its own curve [A]; held at the curve's ends beyond them. */
export function pumpCurrentAt(
  curve: readonly { readonly pressure: number; readonly current: number }[],
  pressure: number,
): number {
  const after = curve.findIndex((p) => p.pressure >= pressure);
  if (after === 0) return curve[0]!.current;
  if (after === -1) return curve[curve.length - 1]!.current;
  const [a, b] = [curve[after - 1]!, curve[after]!];
  return a.current + ((b.current - a.current) * (pressure - a.pressure)) / (b.pressure - a.pressure);
}
