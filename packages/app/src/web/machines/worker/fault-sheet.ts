import {
  diagnoseWith,
  dutyConditions,
  faultModel,
  LOOKS,
  matchReadings,
  readingTask,
  readReadings,
  yardSheet,
  type Diagnosis,
  type FaultModel,
  type LookId,
  type NextCheck,
  type Suspect,
  type TakenReadings,
  type YardSheet,
} from '@spraywright/engine/yard';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { ProvenMachine } from './proven-machine.ts';
import type { CheckRow, FaultSheet, Questions } from './protocol.ts';

/** Suspects and checks that are told. */
const TOLD = 6;
/** Suspects less likely than this are left out. */
const LEAST_TOLD = 0.005;
/** Above this a further check tells nothing that matters. */
const SURE = 0.99;

interface Known {
  readonly machine: ProvenMachine;
  readonly water: string | undefined;
  readonly sheet: YardSheet;
  readonly model: FaultModel;
}
let known: Known | undefined;

/** What is wrong with a machine by what was read and looked at, and what to check next. */
export function faultSheet(machine: ProvenMachine, asks: Questions['fault']['asks']): FaultSheet {
  const { units } = machine.asked;
  const problems: string[] = [];
  const taken = takenOf(machine, asks, problems);
  const { sheet, model } = modelOf(machine, taken.head, asks.waterTemperature);
  const matched = matchReadings(taken.head, sheet.rig, sheet.readings);
  if (!matched.ok) problems.push(...matched.problems.map((p) => p.message));
  const diagnosis = diagnoseWith(
    model,
    matched.ok ? matched.taken : { document: taken.head, values: new Map() },
  );
  const [first] = diagnosis.suspects;
  return {
    checks: checksOf(sheet, units),
    state: diagnosis.state,
    verdict: verdictOf(diagnosis),
    ...(diagnosis.state === 'found' ? remedyOf(machine, first!) : {}),
    suspects: diagnosis.suspects
      .filter((s) => s.probability >= LEAST_TOLD)
      .slice(0, TOLD)
      .map((s) => ({ name: s.name, chance: chance(s), probability: s.probability })),
    next:
      first!.probability > SURE
        ? []
        : diagnosis.next.slice(0, TOLD).flatMap((check) => checkOf(check, sheet, units) ?? []),
    source: diagnosis.source,
    problems,
  };
}

function takenOf(
  { rig }: ProvenMachine,
  { readings, looks, waterTemperature }: Questions['fault']['asks'],
  problems: string[],
): { head: TakenReadings['document'] } {
  const head = readReadings({
    format: 'spraywright-readings',
    rig: rig.document.id,
    readings,
    looks,
    ...(waterTemperature === undefined ? {} : { waterTemperature }),
  });
  if (head.ok) return { head: head.document };
  problems.push(...head.problems.map((p) => p.message));
  const bare = readReadings({ format: 'spraywright-readings', rig: rig.document.id, readings: [] });
  if (!bare.ok) throw new Error(bare.problems[0]!.message);
  return { head: bare.document };
}

/** The faults of this rig, each through its own network: made once for a machine and a temperature of the water. */
function modelOf(
  machine: ProvenMachine,
  { waterTemperature }: TakenReadings['document'],
  water: string | undefined,
): Known {
  if (known?.machine === machine && known.water === water) return known;
  const { rig, proof, asked } = machine;
  const options = { units: asked.units, ...(waterTemperature === undefined ? {} : { waterTemperature }) };
  known = { machine, water, sheet: yardSheet(rig, proof, options), model: faultModel(rig, options) };
  return known;
}

function checksOf(sheet: YardSheet, units: UnitSystem): CheckRow[] {
  return [
    ...sheet.readings
      .filter((row) => row.instrument !== 'scale')
      .map((row): CheckRow => ({
        id: row.id,
        kind: 'reading',
        text: `${readingTask(row, units)}${row.duty === undefined ? '' : ` (${sheet.duties.find((d) => d.id === row.duty)?.name ?? row.duty}: ${dutyConditions([row], units)})`}`,
        dimension: row.dimension,
      })),
    ...(Object.keys(LOOKS) as LookId[]).map((id): CheckRow => ({
      id,
      kind: 'look',
      text: LOOKS[id].question,
    })),
  ];
}

function checkOf(check: NextCheck, sheet: YardSheet, units: UnitSystem): CheckRow | undefined {
  const id = 'look' in check ? check.look : check.reading;
  const row = checksOf(sheet, units).find((c) => c.id === id);
  return row === undefined ? undefined : { ...row, bits: check.bits };
}

function verdictOf({ state, suspects }: Diagnosis): string {
  const [first, second] = suspects;
  switch (state) {
    case 'found':
      return `Most likely, ${chance(first!)}: ${first!.name}`;
    case 'nothing-wrong':
      return `Nothing wrong by what was read, ${chance(first!)}: it reads as a sound rig of these parts does`;
    case 'unknown-cause':
      return `No known fault reads so, ${chance(first!)}. Are the readings right, and are the parts those of the list?`;
    case 'cannot-tell':
      return `Cannot tell yet: what was read does not separate ${first!.name} (${chance(first!)}) from ${second!.name} (${chance(second!)})`;
  }
}

function remedyOf({ rig }: ProvenMachine, { item, send, mend }: Suspect) {
  const part = rig.items.get(item ?? '')?.part;
  return {
    ...(mend === undefined ? {} : { mend }),
    send: send === undefined || part === undefined ? 'nothing' : `${send}, for ${part.name}`,
    ...(send === undefined || part === undefined ? {} : { part: part.id }),
  };
}

function chance({ probability }: Suspect): string {
  if (probability > SURE) return 'more than 99 in 100';
  return probability < 0.01 ? 'under 1 in 100' : `${Math.floor(100 * probability)} in 100`;
}
