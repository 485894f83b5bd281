import {
  formatPath,
  identifier,
  integer,
  list,
  object,
  oneOf,
  optional,
  read,
  text,
  withDefault,
  type Problem,
  type Shape,
} from '../quantity/index.ts';
import type { Layout } from './layout.ts';
import { LAYOUTS, withOwnLayouts } from './layouts.ts';
import { curveFaults } from './pump-curve.ts';
import { KINDS, PART_SHAPES, type Kind, type Part, type PartOf } from './part.ts';
import { readLayout } from './read-layout.ts';

/** A part is read only once its kind is known. */
export const rawPart: Shape<unknown> = {
  read: (raw) => raw ?? null,
  describe: { type: 'part', expected: 'a part' },
};

/** One file of a catalogue: all parts of one kind. */
const fileShape = object({
  kind: oneOf(...KINDS),
  about: optional(text({ max: 2000 })),
  /** Who supplies the parts of this file that name nobody. */
  supplier: optional(text({ min: 2, max: 60 })),
  parts: list(rawPart, { max: 10_000 }),
});

/** A catalogue that has been read and checked: SI inside, found by id or kind. */
export interface Catalogue {
  readonly name: string;
  readonly version: number;
  /** Every part, retired ones too: a rig that has one is still read and proven. */
  readonly parts: ReadonlyMap<string, Part>;
  /** Ids of the parts that no new rig gets. */
  readonly retired: ReadonlySet<string>;
  /** The parts that may be chosen: without the retired ones. */
  readonly byKind: { readonly [K in Kind]: readonly PartOf<K>[] };
  /** The rig families that it can build: those of the program and the shop's own. */
  readonly layouts: readonly Layout[];
}

/** A problem in one file of a catalogue; the path leads to the field inside that file. */
export interface CatalogueProblem extends Problem {
  readonly file: string;
}

const headShape = object({
  name: text({ min: 1, max: 80 }),
  version: integer({ min: 1 }),
  /** Parts that stay for the rigs that have them, and go into no new one. */
  retired: withDefault(list(identifier(), { max: 10_000 }), []),
});

/** A file of a catalogue, parsed. */
interface RawFile {
  readonly file: string;
  readonly raw: unknown;
}

/**
 * Reads a catalogue from its files (already parsed as JSON): a head with name and version, any number of files of one
 * kind each, and layouts of the shop's own. All problems of all files are returned together.
 */
export function readCatalogue(
  head: RawFile,
  files: readonly RawFile[],
  layoutFiles: readonly RawFile[] = [],
): { ok: true; catalogue: Catalogue } | { ok: false; problems: CatalogueProblem[] } {
  const problems: CatalogueProblem[] = [];
  const headRead = read(headShape, head.raw);
  if (!headRead.ok) problems.push(...headRead.problems.map((p) => ({ ...p, file: head.file })));

  const parts = new Map<string, Part>();
  const firstAt = new Map<string, string>();
  for (const { file, raw } of files) {
    const fileRead = read(fileShape, raw);
    if (!fileRead.ok) {
      problems.push(...fileRead.problems.map((p) => ({ ...p, file })));
      continue;
    }
    const { kind, supplier, parts: rawParts } = fileRead.value;
    rawParts.forEach((rawPart, i) => {
      const found: Problem[] = [];
      const own = readPart(kind, rawPart, ['parts', i], found);
      const part =
        own === undefined || own.supplier !== undefined || supplier === undefined
          ? own
          : { ...own, supplier };
      if (part !== undefined) {
        const first = firstAt.get(part.id);
        if (first !== undefined)
          found.push({
            path: ['parts', i, 'id'],
            code: 'duplicate',
            message: `id '${part.id}' is already used in ${first}`,
          });
        else {
          firstAt.set(part.id, `${file}, ${formatPath(['parts', i])}`);
          parts.set(part.id, part);
        }
      }
      problems.push(...found.map((p) => ({ ...p, file })));
    });
  }
  const layouts = ownLayouts(layoutFiles, problems);
  if (headRead.ok)
    headRead.value.retired.forEach((id, i) => {
      if (!parts.has(id) && !problems.some((p) => p.file !== head.file))
        problems.push({
          file: head.file,
          path: ['retired', i],
          code: 'unknown-reference',
          message: `retired[${i}] is '${id}'; there is no such part`,
        });
    });
  if (problems.length > 0 || !headRead.ok) return { ok: false, problems };
  const { name, version, retired } = headRead.value;
  const own = { layouts: withOwnLayouts(layouts), retired: new Set(retired) };
  return { ok: true, catalogue: catalogueOf(name, version, parts.values(), own) };
}

function ownLayouts(files: readonly RawFile[], problems: CatalogueProblem[]): Layout[] {
  const firstAt = new Map<string, string>();
  return files.flatMap(({ file, raw }) => {
    const result = readLayout(raw);
    if (!result.ok) {
      problems.push(...result.problems.map((p) => ({ ...p, file })));
      return [];
    }
    const { id } = result.layout;
    const first = firstAt.get(id);
    firstAt.set(id, file);
    if (first === undefined) return [result.layout];
    problems.push({
      file,
      path: ['id'],
      code: 'duplicate',
      message: `id '${id}' is already used in ${first}`,
    });
    return [];
  });
}

/** One part of a kind; undefined when a field is missing or out of range, with the problems added to `found`. */
export function readPart(
  kind: Kind,
  raw: unknown,
  path: readonly (string | number)[],
  found: Problem[],
): Part | undefined {
  const before = found.length;
  const value = PART_SHAPES[kind].read(raw, path, found) as Omit<Part, 'kind'> | undefined;
  if (value === undefined || found.length > before) return undefined;
  const part = { kind, ...value } as Part;
  found.push(...contradictions(part, path));
  return part;
}

export function partOf<K extends Kind>(catalogue: Catalogue, id: string, kind: K): PartOf<K> | undefined {
  const part = catalogue.parts.get(id);
  return part?.kind === kind ? (part as PartOf<K>) : undefined;
}

/** A catalogue of parts that have been read: a cut-down one, or one with a one-off part laid in. */
export function catalogueOf(
  name: string,
  version: number,
  list: Iterable<Part>,
  { layouts = LAYOUTS, retired = new Set() }: Partial<Pick<Catalogue, 'layouts' | 'retired'>> = {},
): Catalogue {
  const parts = new Map<string, Part>();
  const byKind = Object.fromEntries(KINDS.map((k) => [k, [] as Part[]])) as Record<Kind, Part[]>;
  for (const part of list) {
    parts.set(part.id, part);
    if (!retired.has(part.id)) byKind[part.kind].push(part);
  }
  return { name, version, parts, retired, byKind: byKind as unknown as Catalogue['byKind'], layouts };
}

/** Fields that are each in range and yet contradict one another. */
function contradictions(part: Part, path: readonly (string | number)[]): Problem[] {
  const out: Problem[] = [];
  const bad = (field: string, message: string) =>
    out.push({
      path: [...path, ...field.split('.')],
      code: 'contradiction',
      message: `${field}: ${message}`,
    });
  if (part.priceCents < part.costCents)
    bad('priceCents', `the price is below the cost of ${part.costCents} cents`);
  switch (part.kind) {
    case 'pump':
      if (part.minSpeed > part.maxSpeed) bad('minSpeed', 'it is above maxSpeed');
      if (part.law.action === 'centrifugal') {
        for (const { place, field, message } of curveFaults(part.law.curve))
          bad(`law.curve.${place}.${field}`, message);
      }
      break;
    case 'motor-pump':
      part.curve.forEach((p, i) => {
        const before = part.curve[i - 1];
        if (before === undefined) return;
        if (p.pressure <= before.pressure) bad(`curve.${i}.pressure`, 'pressures must rise along the curve');
        if (p.flow >= before.flow) bad(`curve.${i}.flow`, 'flow must fall as pressure rises');
      });
      if (part.switchOn >= part.switchOff) bad('switchOn', 'it must be below switchOff');
      break;
    case 'engine':
      if (part.minSpeed > part.ratedSpeed) bad('minSpeed', 'it is above ratedSpeed');
      break;
    case 'regulator':
      if (part.setMin > part.setMax) bad('setMin', 'it is above setMax');
      if (part.setMax > part.maxPressure) bad('setMax', 'it is above maxPressure');
      break;
    case 'hose':
      if (part.outsideDiameter <= part.bore) bad('outsideDiameter', 'it must be larger than the bore');
      break;
    case 'reel':
      if (part.flangeDiameter <= part.hubDiameter) bad('flangeDiameter', 'it must be larger than the hub');
      break;
    case 'tip':
    case 'nozzle':
      if (part.minPressure > part.maxPressure) bad('minPressure', 'it is above maxPressure');
      break;
    default:
  }
  return out;
}
