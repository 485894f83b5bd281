import type { Part } from '../../catalogue/index.ts';
import { write } from '../../quantity/index.ts';
import type { Layout } from '../layout.ts';

/** A rig as it is written to a file: quantities as text, the brief as it was typed. */
export interface RawRig {
  format: 'spraywright-rig';
  id: string;
  title: string;
  layout: string;
  brief: unknown;
  items: RawItem[];
  nodes: { id: string; height: number }[];
  lines: RawLine[];
}

export interface RawItem {
  id: string;
  part: string;
  count?: number;
  length?: string;
  set?: string;
  setByDuty?: Record<string, string>;
  speed?: string;
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
        ...(c.length === undefined ? {} : { length: write(roundFeet(c.length), 'ft', 'length') }),
        ...(c.set === undefined ? {} : { set: write(c.set, 'psi', 'pressure') }),
        ...(c.setByDuty === undefined
          ? {}
          : {
              setByDuty: Object.fromEntries(
                [...c.setByDuty].map(([duty, set]) => [duty, write(set, 'psi', 'pressure')]),
              ),
            }),
        ...(c.speed === undefined ? {} : { speed: write(c.speed, 'rpm', 'rotation') }),
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
function roundFeet(length: number): number {
  return Math.ceil(length / 0.3048 - 1e-6) * 0.3048;
}
