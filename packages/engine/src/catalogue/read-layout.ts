import { closestName, read, type Path, type Problem, type ShapeDescription } from '../quantity/index.ts';
import { layoutShape, type Layout, type LayoutLine, type Slot } from './layout.ts';
import { PART_SHAPES, type Kind } from './part.ts';
import { numberOf, roleOf, slotIn } from './slot-role.ts';
import { WET_KINDS } from './wet-kinds.ts';

/** Slots that every rig of the selection has, and what fills each. */
const NEEDED: readonly (readonly [string, readonly Kind[]])[] = [
  ['carrier', ['carrier']],
  ['tank', ['tank']],
  ['pump', ['pump', 'motor-pump']],
];
/** Slots that an outlet line has besides what a shop adds: by what it opens. */
const OUTLET_SLOTS: Readonly<Record<string, readonly string[]>> = {
  gun: ['hose', 'gun', 'tip'],
  'second-gun': ['hose', 'gun', 'tip'],
  boom: ['boom-valve', 'boom-hose', 'boom', 'nozzle'],
  bar: ['boom-valve', 'boom-hose', 'boom', 'nozzle'],
  transfer: ['transfer-valve', 'transfer-hose'],
};
/** Slots beside the outlet lines that the selection has a rule for. */
const MACHINE_SLOTS: ReadonlySet<string> = new Set([
  ...NEEDED.map(([id]) => id),
  'engine',
  'reduction',
  'pto',
  'tank-valve',
  'suction-hose',
  'strainer',
  'regulator',
  'return-hose',
  'agitation-valve',
  'agitator',
  'eductor-valve',
  'eductor',
  'gauge',
  'battery',
]);
/** Kinds that the selection can put into a slot that it has no rule for, by flow and pressure alone. */
const FILLED_BY_SIZE: ReadonlySet<Kind> = new Set<Kind>(['strainer', 'valve', 'fitting']);
/** Slots of an outlet line that may stand empty. */
const MAY_BE_EMPTY: ReadonlySet<string> = new Set(['reel']);

type Complaint = (path: Path, code: string, message: string) => void;

/** Reads a layout and checks that its lines join and that the selection can make a rig of it. */
export function readLayout(raw: unknown): { ok: true; layout: Layout } | { ok: false; problems: Problem[] } {
  const result = read(layoutShape, raw);
  if (!result.ok) return result;
  const problems: Problem[] = [];
  const complain: Complaint = (path, code, message) => problems.push({ path, code, message });
  const layout = result.value;
  checkSlots(layout, complain);
  checkLines(layout, complain);
  checkNodes(layout, complain);
  return problems.length === 0 ? { ok: true, layout } : { ok: false, problems };
}

function checkSlots({ slots, lines }: Layout, complain: Complaint): void {
  const seen = new Set<string>();
  const inLines = new Set(lines.flatMap((l) => l.run));
  const outletSlots = new Set(lines.filter((l) => l.to === 'air').flatMap((l) => l.run));
  slots.forEach((slot, i) => {
    if (seen.has(slot.id)) complain(['slots', i, 'id'], 'duplicate', `slot id '${slot.id}' is used twice`);
    seen.add(slot.id);
    checkOnly(slot, ['slots', i, 'only'], complain);
    const strange = slot.kinds.find((kind) => kind !== 'hose' && !FILLED_BY_SIZE.has(kind));
    const elsewhere = !MACHINE_SLOTS.has(slot.id) && !outletSlots.has(slot.id);
    if (slot.optional !== true && elsewhere && strange !== undefined)
      complain(
        ['slots', i, 'id'],
        'contradiction',
        `nothing says how large the ${strange} of slot '${slot.id}' must be: make it optional, or give it the id of a slot with a rule: ${[...MACHINE_SLOTS].join(', ')}`,
      );
    if (slot.optional !== true && !inLines.has(slot.id) && slot.kinds.some((k) => WET_KINDS.has(k)))
      complain(
        ['slots', i, 'id'],
        'contradiction',
        `slot '${slot.id}' takes a ${slot.kinds.join(' or ')}, which carries liquid, but stands in no line`,
      );
  });
  const has = (id: string, kinds: readonly Kind[]) =>
    slots.some((s) => s.id === id && s.kinds.every((k) => kinds.includes(k)) && s.optional !== true);
  for (const [id, kinds] of NEEDED)
    if (!has(id, kinds))
      complain(
        ['slots'],
        'missing',
        `slots have no '${id}' of kind ${kinds.join(' or ')} that is always there`,
      );
  const pump = slots.find((s) => s.id === 'pump');
  const driven = (has('engine', ['engine']) && has('reduction', ['reduction'])) || has('pto', ['pto-drive']);
  if (pump?.kinds.includes('pump') === true && !driven)
    complain(
      ['slots'],
      'missing',
      `slots have nothing that drives the pump: 'engine' and 'reduction', or 'pto'; only a motor-pump turns by itself`,
    );
}

/** Every condition on a part must name a field that its kind has, and values that the field can have. */
function checkOnly({ kinds, only }: Slot, path: Path, complain: Complaint): void {
  for (const [field, values] of Object.entries(only ?? {}))
    for (const kind of kinds) {
      const choices = choicesOf(PART_SHAPES[kind].describe, field.split('.'));
      if (choices === undefined) {
        complain(
          [...path, field],
          'unknown-field',
          `a ${kind} has no field '${field}' with words to choose from`,
        );
        continue;
      }
      values.forEach((value, i) => {
        if (choices.includes(value)) return;
        const near = closestName(value, choices);
        complain(
          [...path, field, i],
          'not-a-choice',
          `${field} of a ${kind} is never '${value}'; it is one of ${choices.join(', ')}${near === undefined ? '' : `; did you mean '${near}'?`}`,
        );
      });
    }
}

/** Words that a field of a shape can have; undefined when there is no such field. */
function choicesOf(shape: ShapeDescription, steps: readonly string[]): readonly string[] | undefined {
  const [step, ...rest] = steps;
  if (step === undefined) return shape.choices;
  if (shape.type === 'tagged' && shape.tag === step) return rest.length === 0 ? shape.choices : undefined;
  const field = shape.fields?.find((f) => f.name === step);
  return field === undefined ? undefined : choicesOf(field.shape, rest);
}

function checkLines(layout: Layout, complain: Complaint): void {
  const nodes = ['tank', 'air', ...Object.keys(layout.nodes)];
  const slots = new Map(layout.slots.map((s) => [s.id, s]));
  const ids = new Set<string>();
  const placed = new Map<string, string>();
  layout.lines.forEach((line, i) => {
    const at = (...rest: (string | number)[]): Path => ['lines', i, ...rest];
    if (ids.has(line.id)) complain(at('id'), 'duplicate', `line id '${line.id}' is used twice`);
    ids.add(line.id);
    for (const end of ['from', 'to'] as const)
      if (!nodes.includes(line[end]))
        complain(
          at(end),
          'unknown-reference',
          `node '${line[end]}' is none of the layout's: ${nodes.join(', ')}`,
        );
    if (line.from === 'air')
      complain(at('from'), 'contradiction', `line '${line.id}' would draw from the air`);
    if (line.from === line.to)
      complain(at('to'), 'contradiction', `line '${line.id}' leads from ${line.from} to itself`);
    line.run.forEach((id, k) => {
      const slot = slots.get(id);
      const dry = slot?.kinds.find((kind) => !WET_KINDS.has(kind));
      const before = placed.get(id);
      if (slot === undefined)
        complain(at('run', k), 'unknown-reference', `slot '${id}' is none of the layout's slots`);
      else if (dry !== undefined)
        complain(
          at('run', k),
          'contradiction',
          `a ${dry} ('${id}') carries no liquid and cannot stand in a line`,
        );
      if (before !== undefined)
        complain(at('run', k), 'duplicate', `slot '${id}' already stands in line '${before}'`);
      placed.set(id, line.id);
    });
    checkOutlet(line, i, slots, complain);
  });
  if (!layout.lines.some((l) => l.to === 'air'))
    complain(['lines'], 'missing', 'no line leads to the air: nothing would come out of the rig');
}

/** A line to the air has what the selection sizes it by, and no slot that nothing would ever fill. */
function checkOutlet(
  line: LayoutLine,
  i: number,
  slots: ReadonlyMap<string, Slot>,
  complain: Complaint,
): void {
  const needed = OUTLET_SLOTS[line.opens];
  if ((line.to === 'air') !== (needed !== undefined))
    complain(
      ['lines', i, 'opens'],
      'contradiction',
      line.to === 'air'
        ? `line '${line.id}' leads to the air; it opens an outlet (${Object.keys(OUTLET_SLOTS).join(', ')}), not '${line.opens}'`
        : `line '${line.id}' leads to ${line.to}; it opens 'always' or with 'agitation', not with an outlet`,
    );
  if (line.to !== 'air' || needed === undefined) return;
  for (const role of needed)
    if (slotIn(line.run, role) === undefined)
      complain(
        ['lines', i, 'run'],
        'missing',
        `run of line '${line.id}' has no '${role}': a line that opens '${line.opens}' has ${needed.join(', ')}`,
      );
  const numbers = new Set(
    line.run.filter((id) => needed.includes(roleOf(id)) || MAY_BE_EMPTY.has(roleOf(id))).map(numberOf),
  );
  if (numbers.size > 1 || (line.opens !== 'second-gun' && !numbers.has('')))
    complain(
      ['lines', i, 'run'],
      'contradiction',
      `run of line '${line.id}': slots of a second gun line carry one number, such as 'gun-2', and no other line has one`,
    );
  line.run.forEach((id, k) => {
    const slot = slots.get(id);
    const strange = slot?.kinds.find((kind) => !FILLED_BY_SIZE.has(kind));
    const known = needed.includes(roleOf(id)) || MAY_BE_EMPTY.has(roleOf(id));
    if (!known && strange !== undefined)
      complain(
        ['lines', i, 'run', k],
        'contradiction',
        `nothing says how large the ${strange} of slot '${id}' must be: a line that opens '${line.opens}' may have, besides ${needed.join(', ')}, only ${[...FILLED_BY_SIZE].join(', ')}`,
      );
    if (slot?.optional === true && !MAY_BE_EMPTY.has(roleOf(id)))
      complain(
        ['lines', i, 'run', k],
        'contradiction',
        `slot '${id}' is optional, but only ${[...MAY_BE_EMPTY].join(', ')} may be left out of a line to the air`,
      );
  });
}

/** What flows into a node must be able to leave it. */
function checkNodes({ nodes, lines }: Layout, complain: Complaint): void {
  for (const node of Object.keys(nodes)) {
    if (!lines.some((l) => l.to === node))
      complain(['nodes', node], 'contradiction', `no line leads to node '${node}'`);
    if (!lines.some((l) => l.from === node))
      complain(['nodes', node], 'contradiction', `no line leads on from node '${node}'`);
  }
}
