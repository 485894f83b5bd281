import type { Kind } from './part.ts';

/** Kinds that liquid passes through: the only ones that may stand in a line. */
export const WET_KINDS: ReadonlySet<Kind> = new Set<Kind>([
  'pump',
  'motor-pump',
  'strainer',
  'valve',
  'regulator',
  'hose',
  'reel',
  'gun',
  'tip',
  'nozzle',
  'boom',
  'agitator',
  'eductor',
  'fitting',
]);
