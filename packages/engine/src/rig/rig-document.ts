import {
  ownPartShape,
  OUTLETS,
  readOwnParts,
  rigPricingShape,
  WET_KINDS,
  type Catalogue,
  type Kind,
  type Layout,
  type OwnPart,
  type Part,
  type PartOf,
} from '../catalogue/index.ts';
import {
  flag,
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  quantity,
  read,
  record,
  text,
  withDefault,
  type Infer,
  type Problem,
} from '../quantity/index.ts';
import { briefProblems, briefShape, type Brief } from './brief.ts';
import type { LooseFactors } from './loose-inputs.ts';

/** One item of a rig: a part in its place with its settings. */
export const itemShape = object({
  id: identifier(),
  part: identifier(),
  count: withDefault(integer({ min: 1, max: 400 }), 1),
  /** Cut length of a hose. */
  length: optional(quantity('length', { min: '0 ft', max: '1000 ft' })),
  /** Set pressure of an unloader or regulator. */
  set: optional(quantity('pressure', { min: '0 psi', max: '1000 bar' })),
  /** Set pressure in single duties, where the operator turns it to another value. */
  setByDuty: optional(record(quantity('pressure', { min: '0 psi', max: '1000 bar' }), { max: 12 })),
  /** Stays as it is: no way out, no other choice and no new design of the rig touches it. */
  pinned: optional(flag()),
  /** Working speed of an engine or motor; its rated speed when absent. */
  speed: optional(quantity('rotation', { min: '0 rpm', max: '12000 rpm' })),
  /**
   * Where it stands, instead of the automatic place: its middle behind the front of the deck and to the left of the
   * middle line, its underside above the deck.
   */
  at: optional(
    object({
      x: optional(quantity('length', { min: '-5 m', max: '15 m' })),
      y: optional(quantity('length', { min: '-3 m', max: '3 m' })),
      z: optional(quantity('length', { min: '-2 m', max: '4 m' })),
    }),
  ),
});

const line = object({
  id: identifier(),
  name: text({ min: 1, max: 60 }),
  from: identifier(),
  to: identifier(),
  run: list(identifier(), { max: 40 }),
  elbows: withDefault(integer({ min: 0, max: 40 }), 0),
  teesRun: withDefault(integer({ min: 0, max: 40 }), 0),
  teesBranch: withDefault(integer({ min: 0, max: 40 }), 0),
  opens: oneOf(...OUTLETS, 'always', 'agitation'),
});

export const rigShape = object({
  format: oneOf('spraywright-rig'),
  id: identifier(),
  title: text({ min: 2, max: 80 }),
  layout: identifier(),
  brief: briefShape,
  items: list(itemShape, { min: 1, max: 200 }),
  /** Parts of this rig that are in no catalogue; items name them by id like any other. */
  ownParts: withDefault(list(ownPartShape, { max: 40 }), []),
  /** Where this rig is priced otherwise than the shop usually does. */
  pricing: optional(rigPricingShape),
  nodes: list(object({ id: identifier(), height: number({ min: -10, max: 10 }) }), { max: 60 }),
  lines: list(line, { min: 1, max: 60 }),
});

/** A rig as it is stored: every part chosen, every line an ordered run of items, and the brief it answers. */
export type RigDocument = Infer<typeof rigShape>;
export type RigItem = RigDocument['items'][number];
export type RigLine = RigDocument['lines'][number];

/** A rig whose items have found their parts. */
export interface Rig {
  readonly document: RigDocument;
  readonly brief: Brief;
  readonly items: ReadonlyMap<string, { readonly item: RigItem; readonly part: Part }>;
  readonly lines: readonly RigLine[];
  /** Parts that are in no catalogue, by id. */
  readonly ownParts: ReadonlyMap<string, OwnPart>;
  /** The family it is built by; absent when the catalogue has it no more. */
  readonly layout?: Layout;
  /** Factors on what no part decides, where this rig is one draw of many. */
  readonly loose?: LooseFactors;
}

/** Reads a rig and finds its parts; checks that lines are made of its items and lead somewhere. */
export function readRig(
  raw: unknown,
  catalogue: Catalogue,
): { ok: true; rig: Rig } | { ok: false; problems: Problem[] } {
  const result = read(rigShape, raw);
  if (!result.ok) return result;
  const problems: Problem[] = briefProblems(result.value.brief).map((p) => ({
    ...p,
    path: ['brief', ...p.path],
  }));
  const bound = bindRig(result.value, catalogue);
  if (!bound.ok) problems.push(...bound.problems);
  return problems.length === 0 && bound.ok ? bound : { ok: false, problems };
}

/** Finds each item's part in the catalogue or among the rig's own. */
export function bindRig(
  document: RigDocument,
  catalogue: Catalogue,
): { ok: true; rig: Rig } | { ok: false; problems: Problem[] } {
  const own = readOwnParts(document.ownParts, catalogue, ['ownParts']);
  const problems: Problem[] = [...own.problems];
  const items = new Map<string, { item: RigItem; part: Part }>();
  document.items.forEach((entry, i) => {
    const part = catalogue.parts.get(entry.part) ?? own.parts.get(entry.part)?.part;
    if (items.has(entry.id))
      problems.push({
        path: ['items', i, 'id'],
        code: 'duplicate',
        message: `item id '${entry.id}' is used twice`,
      });
    if (part === undefined) {
      // What is wrong with an own part that could not be read has been said.
      if (document.ownParts.some(({ part: p }) => (p as { id?: unknown } | null)?.id === entry.part)) return;
      problems.push({
        path: ['items', i, 'part'],
        code: 'unknown-reference',
        message: `part '${entry.part}' is neither in the catalogue '${catalogue.name}' nor one of the rig's own parts`,
      });
      return;
    }
    if (part.kind === 'hose' && entry.length === undefined)
      problems.push({
        path: ['items', i, 'length'],
        code: 'missing',
        message: `length of hose '${entry.id}' is missing`,
      });
    items.set(entry.id, { item: entry, part });
  });
  if (![...items.values()].some(({ part }) => part.kind === 'tank'))
    problems.push({ path: ['items'], code: 'missing', message: 'the rig has no tank' });
  problems.push(...lineProblems(document, items));
  if (problems.length > 0) return { ok: false, problems };
  const layout = catalogue.layouts.find((l) => l.id === document.layout);
  const { brief, lines } = document;
  const rig: Rig = { document, brief, items, lines, ownParts: own.parts };
  return { ok: true, rig: layout === undefined ? rig : { ...rig, layout } };
}

/** The rig's first item of a kind, with its part. */
export function first<K extends Kind>(
  rig: Rig,
  kind: K,
): { readonly item: RigItem; readonly part: PartOf<K> } | undefined {
  for (const { item: found, part } of rig.items.values())
    if (part.kind === kind) return { item: found, part: part as PartOf<K> };
  return undefined;
}

function lineProblems(document: RigDocument, items: ReadonlyMap<string, { part: Part }>): Problem[] {
  const problems: Problem[] = [];
  const nodes = new Set(['tank', 'air', ...document.nodes.map((n) => n.id)]);
  const placed = new Map<string, string>();
  const lineIds = new Set<string>();
  document.lines.forEach((l, i) => {
    if (lineIds.has(l.id))
      problems.push({
        path: ['lines', i, 'id'],
        code: 'duplicate',
        message: `line id '${l.id}' is used twice`,
      });
    lineIds.add(l.id);
    for (const end of ['from', 'to'] as const)
      if (!nodes.has(l[end]))
        problems.push({
          path: ['lines', i, end],
          code: 'unknown-reference',
          message: `node '${l[end]}' is neither tank, air nor a node of the rig`,
        });
    if (l.from === l.to)
      problems.push({
        path: ['lines', i, 'to'],
        code: 'contradiction',
        message: `line '${l.id}' leads from ${l.from} to itself`,
      });
    if (l.from === 'air')
      problems.push({
        path: ['lines', i, 'from'],
        code: 'contradiction',
        message: `line '${l.id}' would draw from the air`,
      });
    l.run.forEach((id, k) => {
      const found = items.get(id);
      const path = ['lines', i, 'run', k];
      if (found === undefined) {
        if (!document.items.some((entry) => entry.id === id))
          problems.push({
            path,
            code: 'unknown-reference',
            message: `item '${id}' is not one of the rig's items`,
          });
        return;
      }
      if (!WET_KINDS.has(found.part.kind))
        problems.push({
          path,
          code: 'contradiction',
          message: `a ${found.part.kind} ('${id}') carries no liquid and cannot stand in a line`,
        });
      const before = placed.get(id);
      if (before !== undefined)
        problems.push({
          path,
          code: 'duplicate',
          message: `item '${id}' already stands in line '${before}'`,
        });
      placed.set(id, l.id);
    });
  });
  return problems;
}
