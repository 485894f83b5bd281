import {
  chanceText,
  diagnoseWith,
  dutyConditions,
  FAULT_SOURCE,
  faultModel,
  LOOKS,
  matchReadings,
  questionOf,
  readingTask,
  readReadings,
  remedyOf,
  toldChecks,
  toldFirst,
  toldSuspects,
  verdictText,
  worthText,
  yardSheet,
  type Check,
  type FaultModel,
  type LookId,
  type TakenReadings,
  type YardSheet,
} from '@spraywright/engine/yard';
import type { Rig } from '@spraywright/engine/rig';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { ProvenMachine } from './proven-machine.ts';
import type { CheckRow, FaultSheet, Questions } from './protocol.ts';

/** Suspects and checks that are told. */
const TOLD = 6;

interface Known {
  readonly machine: ProvenMachine;
  readonly water: string | undefined;
  readonly sheet: YardSheet;
  readonly model: FaultModel;
}
let known: Known | undefined;

/** What is wrong with a machine by what was read and looked at, and what to check next. */
export function faultSheet(machine: ProvenMachine, asks: Questions['fault']['asks']): FaultSheet {
  const { rig } = machine;
  const { units } = machine.asked;
  const problems: string[] = [];
  const taken = takenOf(machine, asks, problems);
  const { sheet, model } = modelOf(machine, taken.head, asks.waterTemperature);
  const matched = matchReadings(taken.head, sheet.rig, sheet.readings);
  if (!matched.ok) problems.push(...matched.problems.map((p) => p.message));
  const head = { checks: checksOf(sheet, rig, units), problems };
  if (!matched.ok || problems.length > 0)
    return {
      ...head,
      state: 'cannot-tell',
      verdict: 'What was read cannot be weighed: it does not fit this machine',
      suspects: [],
      first: [],
      next: [],
      source: FAULT_SOURCE,
    };
  const diagnosis = diagnoseWith(model, matched.taken);
  return {
    ...head,
    state: diagnosis.state,
    verdict: verdictText(diagnosis),
    ...remedyOf(rig, diagnosis),
    suspects: toldSuspects(diagnosis, TOLD).map((s) => ({
      name: s.name,
      chance: chanceText(s),
      probability: s.probability,
    })),
    first: toldFirst(diagnosis).flatMap((check) => checkOf(check, sheet, rig, units) ?? []),
    next: toldChecks(diagnosis, TOLD).flatMap((check) => {
      const row = checkOf(check, sheet, rig, units);
      return row === undefined ? [] : { ...row, settles: worthText(check) };
    }),
    source: diagnosis.source,
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

function checksOf(sheet: YardSheet, rig: Rig, units: UnitSystem): CheckRow[] {
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
      text: questionOf(id, rig),
    })),
  ];
}

function checkOf(check: Check, sheet: YardSheet, rig: Rig, units: UnitSystem): CheckRow | undefined {
  const id = 'look' in check ? check.look : check.reading;
  return checksOf(sheet, rig, units).find((c) => c.id === id);
}
