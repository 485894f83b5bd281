import type { Layout, Part } from '../../catalogue/index.ts';

const FOOT = 0.3048;
const PSI = 6894.757293168361;

/** A rig as it is written to a file: quantities as text, the brief as it was typed. */
export interface RawRig {
  format: 'spraywright-rig';
  id: string;
  title: string;
  layout: string;
  brief: unknown;
  items: RawItem[];
  /** Parts that are in no catalogue. */
  ownParts?: unknown[];
  /** Where it is priced otherwise than usual. */
  pricing?: unknown;
  nodes: { id: string; height: number }[];
  lines: RawLine[];
}

interface RawItem {
  id: string;
  part: string;
  count?: number;
  length?: string;
  set?: string;
  setByDuty?: Record<string, string>;
  speed?: string;
  pinned?: boolean;
  /** A place given by hand, as lengths. */
  at?: { x?: string; y?: string; z?: string };
}

interface RawLine {
  id: string;
  name: string;
  from: string;
  to: string;
  run: string[];
  elbows?: number;
  teesRun?: number;
  teesBranch?: number;
  opens: string;
}

/** What is chosen for one slot. */
export interface Chosen {
  readonly part: Part;
  readonly count?: number;
  /** [m] */
  readonly length?: number;
  /** [Pa] */
  readonly set?: number;
  /** Per duty id [Pa] */
  readonly setByDuty?: ReadonlyMap<string, number>;
  /** [rad/s] */
  readonly speed?: number;
}

/** Puts chosen parts into a layout. Slots left empty drop out of their lines; a line without parts drops out. */
export function assembleRig(
  layout: Layout,
  brief: { readonly raw: unknown; readonly id: string; readonly title: string },
  chosen: ReadonlyMap<string, Chosen>,
): RawRig {
  const items = layout.slots.flatMap((slot): RawItem[] => {
    const c = chosen.get(slot.id);
    if (c === undefined) return [];
    return [
      {
        id: slot.id,
        part: c.part.id,
        ...(c.count === undefined || c.count === 1 ? {} : { count: c.count }),
        ...(c.length === undefined ? {} : { length: `${wholeFeet(c.length)} ft` }),
        ...(c.set === undefined ? {} : { set: wholePsi(c.set) }),
        ...(c.setByDuty === undefined
          ? {}
          : {
              setByDuty: Object.fromEntries([...c.setByDuty].map(([duty, set]) => [duty, wholePsi(set)])),
            }),
        ...(c.speed === undefined ? {} : { speed: wholeRpm(c.speed) }),
      },
    ];
  });
  const present = new Set(items.map((i) => i.id));
  return {
    format: 'spraywright-rig',
    id: brief.id,
    title: brief.title,
    layout: layout.id,
    brief: brief.raw,
    items,
    nodes: Object.entries(layout.nodes).map(([id, height]) => ({ id, height })),
    lines: layout.lines.flatMap((line): RawLine[] => {
      const run = line.run.filter((id) => present.has(id));
      return run.length === 0 ? [] : [{ ...line, run: [...run] }];
    }),
  };
}

/** Hose is cut to whole feet. */
function wholeFeet(length: number): number {
  return Math.ceil(length / FOOT - 1e-6);
}

/** A regulator is set to whole psi, as its gauge reads. */
export function wholePsi(pressure: number, round = Math.round): string {
  return `${round(pressure / PSI)} psi`;
}

/** An engine is held to tens of turns, rounded down so that the pump is not driven past its speed. */
export function wholeRpm(speed: number): string {
  return `${Math.floor((speed * 60) / (2 * Math.PI) / 10 + 1e-6) * 10} rpm`;
}
