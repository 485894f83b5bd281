import type { Proof } from '@spraywright/engine/rig';
import {
  judgeReadings,
  matchReadings,
  readReadings,
  yardSheet,
  type TakenReadings,
  type YardSheet,
} from '@spraywright/engine/yard';
import type { ProvenMachine } from './proven-machine.ts';
import type { CautionRow, Questions, YardTold } from './protocol.ts';

/** The sheet of the machine that was asked about last, by the temperature of the water. */
let known: { readonly machine: ProvenMachine; readonly sheets: Map<string, YardSheet> } | undefined;

/** What the gauges, buckets, tapes and clocks of a machine must show, and what the readings of a test say. */
export function yardTold(machine: ProvenMachine, { readings, edition }: Questions['yard']['asks']): YardTold {
  const problems: string[] = [];
  const head = readReadings(readings);
  // A head that cannot be read is told; the sheet still shows what must be read.
  if (!head.ok) problems.push(...head.problems.map((p) => p.message));
  const sheet = sheetOf(machine, head.ok ? head.document.waterTemperature : undefined);
  const matched = head.ok ? matchReadings(head.document, sheet.rig, sheet.readings) : undefined;
  if (matched?.ok === false) problems.push(...matched.problems.map((p) => p.message));
  const taken = matched?.ok === true ? matched.taken : nothingTaken(sheet.rig);
  const judged = judgeReadings(machine.rig, sheet, taken, {
    units: machine.asked.units,
    ...(edition === undefined ? {} : { edition }),
  });
  return { sheet, judged, cautions: cautionsFor(machine.proof), problems };
}

function sheetOf(machine: ProvenMachine, waterTemperature: number | undefined): YardSheet {
  if (known?.machine !== machine) known = { machine, sheets: new Map() };
  const { rig, proof, asked } = machine;
  const key = `${waterTemperature ?? 'site'}`;
  const sheet =
    known.sheets.get(key) ??
    yardSheet(rig, proof, {
      units: asked.units,
      ...(waterTemperature === undefined ? {} : { waterTemperature }),
    });
  known.sheets.set(key, sheet);
  return sheet;
}

function nothingTaken(rig: string): TakenReadings {
  const head = readReadings({ format: 'spraywright-readings', rig, readings: [] });
  if (!head.ok) throw new Error(head.problems[0]!.message);
  return { document: head.document, values: new Map() };
}

/** Where the hands are while a rig is tested. */
const YARD_PLACES: ReadonlySet<string> = new Set(['spraying', 'plumbing', 'drive', 'electrics', 'lifting']);

function cautionsFor({ cautions }: Proof): CautionRow[] {
  return cautions
    .filter(({ caution }) => YARD_PLACES.has(caution.place))
    .map(({ caution, state, because }) => ({
      id: caution.id,
      danger: state === 'unknown' ? `${caution.danger} (Not ruled out: ${because}.)` : caution.danger,
      act: caution.act,
      source: caution.origin.source,
    }));
}
