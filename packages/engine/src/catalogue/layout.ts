import {
  flag,
  identifier,
  integer,
  list,
  object,
  oneOf,
  optional,
  quantity,
  record,
  text,
  type Infer,
} from '../quantity/index.ts';
import { KINDS } from './part.ts';
import { OUTLETS, WORKS } from './works.ts';

const count = () => optional(integer({ min: 0, max: 40 }));

/** One place in a layout where a part goes. The item of a rig that fills it carries the slot's id. */
const slotShape = object({
  id: identifier(),
  /** What the slot is for, as a builder says it. */
  name: text({ min: 2, max: 60 }),
  kinds: list(oneOf(...KINDS), { min: 1, max: 4 }),
  /** A rig may leave an optional slot empty. */
  optional: optional(flag()),
  /** Only parts that pass are offered here: the use of a hose, the form of a valve. */
  only: optional(record(list(text({ min: 1, max: 40 }), { min: 1, max: 20 }), { max: 6 })),
});

/** A run of slots from one node to another; liquid flows from `from` to `to`. */
const lineShape = object({
  id: identifier(),
  name: text({ min: 2, max: 60 }),
  /** `tank`, `air` or a node of the layout. */
  from: identifier(),
  to: identifier(),
  run: list(identifier(), { min: 1, max: 40 }),
  /** Bends and branches that plumbing of this kind has besides its parts, counted at the line's bore. */
  elbows: count(),
  teesRun: count(),
  teesBranch: count(),
  /** Open when a duty opens this outlet, when it asks for agitation, or always. */
  opens: oneOf(...OUTLETS, 'always', 'agitation'),
});

/** How the lines of one rig family join: a document, so that a shop adds its own. */
export const layoutShape = object({
  format: oneOf('spraywright-layout'),
  id: identifier(),
  name: text({ min: 2, max: 80 }),
  about: optional(text({ max: 2000 })),
  /** The works it serves. */
  works: list(oneOf(...WORKS), { min: 1, max: WORKS.length }),
  /** Nodes and their height above the deck. */
  nodes: record(quantity('length', { min: '-3 m', max: '5 m' }), { min: 1, max: 20 }),
  slots: list(slotShape, { min: 3, max: 60 }),
  lines: list(lineShape, { min: 2, max: 30 }),
});

export type Layout = Infer<typeof layoutShape>;
export type Slot = Layout['slots'][number];
export type LayoutLine = Layout['lines'][number];
