import type { UnitSystem } from '../quantity/index.ts';
import { driveOf, first, pumpCurrentAt, type Duty, type Rig } from '../rig/index.ts';
import { bucketFor } from './bucket.ts';
import { tapeRow } from './tape-row.ts';
import type { WaterRun } from './water-run.ts';
import type { WateredRig, YardRow } from './yard-row.ts';

/** Share of the tank that is drained against the clock. */
const DRAINED = 0.1;

/** The readings that a yard can take of a rig, in the order of the work: drive, gauges, buckets, tape. */
export function yardRows(nominal: WateredRig, waterDensity: number, units: UnitSystem): YardRow[] {
  return [
    ...driveRows(nominal.rig),
    ...nominal.rig.brief.duties.flatMap((duty) => {
      const run = nominal.runs.get(duty.id);
      return run === undefined ? [] : dutyRows(nominal.rig, duty, run, waterDensity, units);
    }),
  ];
}

function driveRows(rig: Rig): YardRow[] {
  const drive = driveOf(rig);
  if (drive === undefined || drive.by === 'motor') return [];
  const speed = drive.by === 'engine' ? drive.engineSpeed : drive.ptoSpeed;
  const turns = ({ factor }: WateredRig) => factor(`drive-speed:${drive.item}`);
  const rows: YardRow[] = [
    { id: 'drive-speed', instrument: 'drive-speed', needed: true, read: (w) => speed * turns(w) },
  ];
  // A belt may slip: the pump's shaft then tells what the engine does not.
  if (drive.by === 'engine' && drive.reduction?.type === 'belt')
    rows.push({
      id: 'pump-speed',
      instrument: 'pump-speed',
      needed: false,
      read: (w) => driveOf(w.rig)?.pumpSpeed ?? NaN,
    });
  return rows;
}

function dutyRows(rig: Rig, duty: Duty, run: WaterRun, waterDensity: number, units: UnitSystem): YardRow[] {
  const at = (w: WateredRig) => w.runs.get(duty.id);
  const rows: YardRow[] = [];
  if (!run.cycling && run.pumpOutlet !== null)
    rows.push({
      id: `pump-gauge:${duty.id}`,
      instrument: 'pump-gauge',
      duty,
      needed: true,
      read: (w) => at(w)?.pumpOutlet ?? NaN,
    });
  if (run.pumpInlet !== null)
    rows.push({
      id: `suction-gauge:${duty.id}`,
      instrument: 'suction-gauge',
      duty,
      needed: false,
      read: (w) => at(w)?.pumpInlet ?? NaN,
    });
  if (run.shut !== null && first(rig, 'regulator') !== undefined)
    rows.push({
      id: `shut-gauge:${duty.id}`,
      instrument: 'shut-gauge',
      duty,
      needed: true,
      read: (w) => at(w)?.shut ?? NaN,
    });
  if (first(rig, 'motor-pump') !== undefined && !run.cycling)
    rows.push({
      id: `current:${duty.id}`,
      instrument: 'current',
      duty,
      needed: true,
      read: (w) => pumpCurrent(w.rig, at(w)),
    });
  for (const { line, flow } of run.outlets) {
    if (!(flow > 0)) continue;
    rows.push(...outletRows(rig, duty, line, flow, units));
    const tape = tapeRow(rig, duty, line, run, waterDensity);
    if (tape !== undefined) rows.push(tape);
  }
  const total = run.outlets.reduce((sum, o) => sum + Math.max(0, o.flow), 0);
  const volume = DRAINED * first(rig, 'tank')!.part.volume;
  if (total > 0)
    rows.push({
      id: `drain:${duty.id}`,
      instrument: 'drain',
      duty,
      volume,
      needed: false,
      read: (w) => volume / (at(w)?.outlets.reduce((sum, o) => sum + Math.max(0, o.flow), 0) ?? NaN),
    });
  return rows;
}

function outletRows(rig: Rig, duty: Duty, line: string, flow: number, units: UnitSystem): YardRow[] {
  const found = (w: WateredRig) => w.runs.get(duty.id)?.outlets.find((o) => o.line === line);
  const tips = tipsOf(rig, line);
  const volume = bucketFor(flow / tips, units);
  return [
    {
      id: `tip-gauge:${duty.id}:${line}`,
      instrument: 'tip-gauge',
      duty,
      line,
      needed: true,
      read: (w) => found(w)?.tipPressure ?? NaN,
    },
    {
      id: `bucket:${duty.id}:${line}`,
      instrument: 'bucket',
      duty,
      line,
      volume,
      tips,
      needed: true,
      read: (w) => (volume * tips) / (found(w)?.flow ?? NaN),
    },
  ];
}

/** Tips at the end of a line: the nozzles of a boom, else one. */
function tipsOf(rig: Rig, line: string): number {
  const run = rig.lines.find((l) => l.id === line)?.run ?? [];
  const last = rig.items.get(run[run.length - 1] ?? '');
  if (last?.part.kind !== 'nozzle') return 1;
  return first(rig, 'boom')?.part.nozzles ?? last.item.count;
}

/** Current of a 12 V pump at the pressure it makes, along its own curve [A]. */
function pumpCurrent(rig: Rig, run: WaterRun | undefined): number {
  const curve = first(rig, 'motor-pump')?.part.curve;
  if (curve === undefined || run === undefined || run.pumpInlet === null || run.pumpOutlet === null)
    return NaN;
  return pumpCurrentAt(curve, Math.max(0, run.pumpOutlet - run.pumpInlet));
}
