/** Kinds of work, each with its own start values. */
export const WORKS = [
  'roof-wash',
  'tractor-spot-and-boom',
  'spot-and-drench',
  'tall-trees',
  'nurse-and-batch',
  'road-and-dust',
  'utility-spot',
] as const;

/** What a duty may have open: the line of the rig that leads there carries the same name. */
export const OUTLETS = ['gun', 'second-gun', 'boom', 'bar', 'transfer'] as const;

export type Outlet = (typeof OUTLETS)[number];
export type Work = (typeof WORKS)[number];
