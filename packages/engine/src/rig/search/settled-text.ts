/**
 * A share of the sets of parts that is settled, in percent; it never looks like all or nothing when it is not.
 *
 * @param share from 0 to 1
 */
export function settledText(share: number): string {
  if (share < 1e-4) return 'less than 0.01 %';
  return `${(Math.floor(share * 1e4) / 100).toFixed(2)} %`;
}

/**
 * What is known of rigs of which nothing is better by more than a share.
 *
 * @param within from 0 to 1
 */
export function withinText(within: number): string {
  const percent = Number((within * 100).toPrecision(3));
  const points = percent === 1 ? '1 point' : `${percent} points`;
  return `For every rig of the catalogue there is one here that costs and weighs at most ${percent} % more, is ready no later, and has a least margin at most ${points} lower.`;
}
