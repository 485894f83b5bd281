import { doseFromFlow, waterDensity } from '../../physics/index.ts';
import type { UnitSystem } from '../../quantity/index.ts';
import { treatedShare } from '../application.ts';
import type { Duty } from '../brief.ts';
import { dutySolver } from '../duty-state.ts';
import { liquidOf } from '../proof/liquid.ts';
import { speedsOf } from '../proof/pattern-dose.ts';
import type { Site } from '../proof/site.ts';
import { first, type Rig, type RigItem, type RigLine } from '../rig-document.ts';

/** One setting and what the rig gives at it. */
export interface CalibrationRow {
  /** What the regulator is set to [Pa], or the engine turns at [rad/s]; absent when nothing can be set. */
  readonly setting?: number;
  /** Gauge at the pump; null where nothing defines it [Pa]. */
  readonly pump: number | null;
  /** Gauge in front of the tip [Pa]. */
  readonly tip: number;
  /** Of the whole line, and of one tip [m3/s]. */
  readonly flow: number;
  readonly each: number;
  /** Clean water from one tip at the same gauge in front of it [m3/s]. */
  readonly water: number;
  /** Dose at each of the speeds, in the order of the table [m3/m2]; empty where no width is told. */
  readonly doses: readonly number[];
}

/** What one outlet gives in one duty at several settings: the table by which it is set and checked. */
export interface Calibration {
  readonly duty: string;
  readonly name: string;
  readonly line: string;
  readonly liquid: string;
  readonly tips: number;
  /** Whether liquid leaves through a tip that makes a pattern and wears; a transfer hose has none. */
  readonly tipped: boolean;
  /** What is turned: a regulator's pressure or an engine's speed, with the item that is set. */
  readonly by: { readonly means: 'pressure' | 'speed'; readonly item: string } | undefined;
  /** Hose let out [m], where the duty tells. */
  readonly hoseOut?: number;
  /** Speeds of the dose columns [m/s] and the width driven [m]. */
  readonly speeds: readonly number[];
  readonly width?: number;
  readonly basis?: 'treated' | 'field';
  readonly rows: readonly CalibrationRow[];
  /** Why there are no rows. */
  readonly reason?: string;
  /** Least pressure at which the tip makes its pattern [Pa]; settings below it are left out. */
  readonly leastPressure?: number;
}

/** Shares of the proven setting that the table shows; none is above it, so that nothing is asked that was not proven. */
const SHARES = [0.5, 0.6, 0.7, 0.8, 0.9, 1] as const;
const PSI = 6894.757293168361;
/** Settings fall on marks that a gauge has [Pa]. */
const MARK: Readonly<Record<UnitSystem, number>> = { us: 5 * PSI, metric: 0.25e5 };
/** An engine is set by its tachometer: 50 turns in a minute [rad/s]. */
const TURNS = (50 * 2 * Math.PI) / 60;

/**
 * What every outlet of a rig gives at several settings, each solved with the whole rig as the proof solves it, with the
 * duty's own liquid and hose.
 */
export function calibrationsOf(rig: Rig, site: Site, units: UnitSystem): Calibration[] {
  return rig.brief.duties.flatMap((duty) =>
    rig.lines
      .filter((line) => line.to === 'air' && duty.open.some((o) => o === line.opens))
      .map((line) => calibration(rig, site, duty, line, units)),
  );
}

function calibration(rig: Rig, site: Site, duty: Duty, line: RigLine, units: UnitSystem): Calibration {
  const liquid = liquidOf(rig.brief, duty.liquid, site);
  const end = rig.items.get(line.run[line.run.length - 1] ?? '');
  const boom = line.run.map((id) => rig.items.get(id)!.part).find((p) => p.kind === 'boom');
  const tips = boom?.nozzles ?? end?.item.count ?? 1;
  const tipped = end !== undefined && end.part.kind !== 'hose';
  // A hose has a least pressure too, but that is where it collapses, not where a pattern fails.
  const least = tipped && 'minPressure' in end.part ? end.part.minPressure : undefined;
  const by = setting(rig, duty, units);
  const { application } = duty;
  const speeds = application === undefined ? [] : speedMarks(application);
  const told = {
    duty: duty.id,
    name: duty.name,
    line: line.id,
    liquid: liquid.name,
    tips,
    tipped,
    by: by === undefined ? undefined : { means: by.means, item: by.item },
    speeds,
    ...(duty.hoseOut === undefined ? {} : { hoseOut: duty.hoseOut }),
    ...(application === undefined ? {} : { width: application.width, basis: application.basis }),
    ...(least === undefined ? {} : { leastPressure: least }),
  };
  // Through one orifice at one pressure the flow goes with the root of the density.
  const heavier = Math.sqrt(
    liquid.density / waterDensity(Math.min(40, Math.max(0, site.temperature - 273.15))),
  );
  const solved = (by?.values ?? [undefined]).flatMap((value): CalibrationRow[] => {
    const changed = by === undefined || value === undefined ? rig : by.at(value);
    const { open } = dutySolver(changed, false)(duty, liquid);
    const outlet = open.outlets.find((o) => o.line === line.id);
    if (outlet === undefined || !(outlet.flow > 0)) return [];
    const dose = (speed: number) => {
      const ground = doseFromFlow(Math.min(1, outlet.flow), speed, application!.width);
      return application!.basis === 'treated' ? ground / treatedShare(application!) : ground;
    };
    return [
      {
        ...(value === undefined ? {} : { setting: value }),
        pump: open.pump?.outlet ?? null,
        tip: outlet.tipPressure,
        flow: outlet.flow,
        each: outlet.flow / tips,
        water: (outlet.flow / tips) * heavier,
        doses: speeds.map(dose),
      },
    ];
  });
  const rows = solved.filter((row) => row.tip >= (least ?? 0));
  if (rows.length > 0) return { ...told, rows };
  return {
    ...told,
    rows,
    reason: solved.length === 0 ? 'no steady state is known' : 'the tip lies under its least pressure',
  };
}

interface Setting {
  readonly means: 'pressure' | 'speed';
  readonly item: string;
  /** Falling from the proven one. */
  readonly values: readonly number[];
  readonly at: (value: number) => Rig;
}

/** What an operator turns: the regulator's pressure, else the engine's speed. */
function setting(rig: Rig, duty: Duty, units: UnitSystem): Setting | undefined {
  const regulator = first(rig, 'regulator');
  if (regulator !== undefined) {
    const { item, part } = regulator;
    const proven = item.setByDuty?.[duty.id] ?? item.set ?? part.setMax;
    return {
      means: 'pressure',
      item: item.id,
      values: marks(proven, part.setMin, MARK[units]),
      at: (set) => withItem(rig, { ...item, set, setByDuty: { ...item.setByDuty, [duty.id]: set } }),
    };
  }
  const engine = first(rig, 'engine');
  if (engine === undefined) return undefined;
  const { item, part } = engine;
  return {
    means: 'speed',
    item: item.id,
    values: marks(item.speed ?? part.ratedSpeed, part.minSpeed, TURNS),
    at: (speed) => withItem(rig, { ...item, speed }),
  };
}

function marks(proven: number, least: number, mark: number): number[] {
  const rounded = SHARES.map((share) => (share === 1 ? proven : Math.round((share * proven) / mark) * mark));
  return [...new Set(rounded)].filter((v) => v >= least - 1e-6 && v <= proven).sort((a, b) => b - a);
}

function withItem(rig: Rig, item: RigItem): Rig {
  const items = new Map(rig.items);
  items.set(item.id, { item, part: rig.items.get(item.id)!.part });
  return { ...rig, items };
}

/** The slowest, the asked and the fastest speed, and what lies between them. */
function speedMarks(application: NonNullable<Duty['application']>): number[] {
  const { slowest, fastest } = speedsOf(application);
  const { speed } = application;
  return [...new Set([slowest, (slowest + speed) / 2, speed, (speed + fastest) / 2, fastest])];
}
