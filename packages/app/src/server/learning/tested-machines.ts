import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import {
  asBuilt,
  buildRecord,
  proveRig,
  type Proof,
  type PutInstead,
  type Rig,
} from '@spraywright/engine/rig';
import {
  matchReadings,
  readingsOfTest,
  readReadings,
  SCALE_WHOLE,
  yardSheet,
  yardTests,
  type BuiltRig,
  type SheetTest,
  type TakenReadings,
  type YardSheet,
  type YardTest,
} from '@spraywright/engine/yard';
import type { MachineEntry, WrittenMachine } from '../../store/index.ts';
import { YARD_KINDS } from '../yard-record.ts';
import { partVersions } from './part-versions.ts';

const BUILD_STEP = 'build-step';

/** Entries that decide what a machine was when it was tested, and what the tests said. */
export const TEACHING_KINDS: readonly string[] = [...YARD_KINDS, 'substitution', BUILD_STEP];

/** What the records have to learn from. */
export interface Tested {
  readonly machines: readonly BuiltRig[];
  readonly tests: readonly SheetTest[];
  /** Tests that were begun and not finished: they teach nothing yet. */
  readonly unfinished: readonly string[];
  /** Finished tests that cannot be read, and why. */
  readonly unfit: readonly { readonly serial: string; readonly day: string; readonly why: string }[];
}

/** A rig as it stood, made once for all machines that were the same. */
interface Standing {
  readonly rig: Rig;
  readonly proof: Proof;
  readonly sheetAt: (waterTemperature: number | undefined) => YardSheet;
  readonly versions: ReadonlyMap<string, string>;
  readonly massVersions: ReadonlyMap<string, string>;
}

/**
 * Every finished yard test of the records, joined with the machine as it stood when the test was begun. A machine into
 * which another part was put between two tests counts as two: the readings before say nothing of the part that came. The
 * weight by the scale ticket of its build counts as one more test, unless a test has that row.
 */
export function testedMachines(written: readonly WrittenMachine[], catalogue: Catalogue, shop: Shop): Tested {
  const known = new Map<string, Standing | string>();
  const found = { machines: [] as BuiltRig[], tests: [] as SheetTest[] };
  const unfinished: string[] = [];
  const unfit: { serial: string; day: string; why: string }[] = [];
  for (const { serial, document, entries } of written) {
    const instead = entries.filter((e) => e.kind === 'substitution');
    const groups = new Map<number, { standing: Standing; tests: TakenReadings[] }>();
    const { tests } = yardTests(entries);
    for (const test of [...tests, ...ticketOf(entries, tests)]) {
      if (test.values.size === 0) continue;
      if (test.finished === undefined) {
        unfinished.push(serial);
        continue;
      }
      const begun = firstEntryOf(entries, test);
      const before = instead.filter((e) => e.number < begun);
      const parts = before.map((e) => e.document as unknown as PutInstead);
      const key = JSON.stringify([document.rig, document.parts, parts]);
      const standing = known.get(key) ?? standingOf(document, parts, catalogue, shop);
      known.set(key, standing);
      const read = typeof standing === 'string' ? standing : takenOf(test, serial, standing);
      if (typeof standing === 'string' || typeof read === 'string') {
        unfit.push({ serial, day: test.begun.slice(0, 10), why: typeof read === 'string' ? read : '' });
        continue;
      }
      found.tests.push(read);
      const group = groups.get(before.length) ?? { standing, tests: [] };
      group.tests.push(read.taken);
      groups.set(before.length, group);
    }
    for (const [before, { standing, tests }] of groups) {
      const name = before === instead.length ? serial : `${serial} before`;
      const { rig, proof, versions, massVersions } = standing;
      found.machines.push({ rig, proof, serial: name.slice(0, 40), tests, versions, massVersions });
    }
  }
  return { ...found, unfinished: [...new Set(unfinished)], unfit };
}

function firstEntryOf(entries: readonly MachineEntry[], { id }: YardTest): number {
  if (id === TICKET) return weighings(entries).at(-1)?.number ?? Infinity;
  return entries.find((e) => YARD_KINDS.includes(e.kind) && e.document.test === id)?.number ?? Infinity;
}

/** Name of what a scale ticket says, as a test; no tablet gives one without a day. */
const TICKET = 'scale ticket';
const WEIGH_STEP = 'weigh';

function weighings(entries: readonly MachineEntry[]): MachineEntry[] {
  return entries.filter((e) => e.kind === BUILD_STEP && e.document.step === WEIGH_STEP);
}

/** The empty weight that was written down while it was built; nothing where a yard test has read the whole weight. */
function ticketOf(entries: readonly MachineEntry[], tests: readonly YardTest[]): YardTest[] {
  const step = buildRecord(weighings(entries)).steps.get(WEIGH_STEP);
  if (step?.done !== true || step.value === undefined) return [];
  if (tests.some((t) => t.finished !== undefined && t.values.has(SCALE_WHOLE))) return [];
  const { value, at, by } = step;
  return [
    {
      id: TICKET,
      begun: at,
      by: by === '' ? [] : [by],
      values: new Map([[SCALE_WHOLE, value]]),
      cannot: new Map(),
      finished: { state: 'pass', at, by },
    },
  ];
}

/** The rig with its sheets; a text where it cannot be read. */
function standingOf(
  document: WrittenMachine['document'],
  instead: readonly PutInstead[],
  today: Catalogue,
  shop: Shop,
): Standing | string {
  const built = asBuilt(document, instead, today);
  if (!built.ok) return built.problems[0]!.message;
  const { rig, catalogue } = built;
  const proof = proveRig(rig, catalogue, shop, { notes: false });
  const sheets = new Map<number | undefined, YardSheet>();
  const sheetAt = (waterTemperature: number | undefined) => {
    const sheet =
      sheets.get(waterTemperature) ??
      yardSheet(rig, proof, waterTemperature === undefined ? {} : { waterTemperature });
    sheets.set(waterTemperature, sheet);
    return sheet;
  };
  const [versions, massVersions] = [partVersions(rig, today, 'work'), partVersions(rig, today, 'mass')];
  return { rig, proof, sheetAt, versions, massVersions };
}

/** The readings with the sheet they were taken by; a text where they do not fit it. */
function takenOf(test: YardTest, serial: string, { rig, sheetAt }: Standing): SheetTest | string {
  const head = readReadings(readingsOfTest(test, serial, rig.document.id));
  if (!head.ok) return head.problems[0]!.message;
  const sheet = sheetAt(head.document.waterTemperature);
  const matched = matchReadings(head.document, sheet.rig, sheet.readings);
  return matched.ok ? { sheet, taken: matched.taken } : matched.problems[0]!.message;
}
