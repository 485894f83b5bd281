/**
 * A share of the sets of parts that is settled, in percent; it never looks like all or nothing when it is not.
 *
 * @param share from 0 to 1
 */
export function settledText(share: number): string {
  if (share < 1e-4) return 'less than 0.01 %';
  return `${(Math.floor(share * 1e4) / 100).toFixed(2)} %`;
}
