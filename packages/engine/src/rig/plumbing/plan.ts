import type { Part, PartOf, Port } from '../../catalogue/index.ts';
import type { Rig } from '../rig-document.ts';
import type { Supply } from './supply.ts';

/** One port of an item, of a fitting that the plumbing adds, or of what is coupled on from `outside`. */
export interface PlumbingEnd {
  readonly of: string;
  readonly port: string;
}

/** Two ports of a rig that must be joined, and what joins them. */
export interface RigJoint {
  /** "tank outlet", "hose end": the two sides in words. */
  readonly between: readonly [string, string];
  readonly ends: readonly [PlumbingEnd, PlumbingEnd];
  /** Line of the rig it belongs to; `drive` for shafts. */
  readonly line: string;
  /** How often it is made: once for each nozzle of a boom. */
  readonly times: number;
  /** Gauge pressure it must stand [Pa]. */
  readonly pressure: number;
  /** From the first end to the second. */
  readonly pieces: readonly PartOf<'fitting'>[];
  /** Set when nothing in the catalogue joins the two sides. */
  readonly gap?: string;
}

/** A tee, manifold, bulkhead fitting, cap or drain valve that no slot of the layout has and the plumbing needs. */
export interface AddedFitting {
  readonly id: string;
  readonly part: Part;
  /** Line or node where it stands. */
  readonly at: string;
  readonly words: string;
  /** Gauge pressure where it stands; 0 where only the liquid in the tank stands over it [Pa]. */
  readonly pressure: number;
}

/** A port that is left open because that is its purpose. */
export interface OpenPort extends PlumbingEnd {
  readonly why: string;
}

/** How all ports of a rig are joined, closed or left open. */
export interface Plumbing {
  readonly joints: readonly RigJoint[];
  readonly added: readonly AddedFitting[];
  readonly open: readonly OpenPort[];
  /** What nothing in the catalogue makes, named. */
  readonly gaps: readonly string[];
}

/** A port while the plumbing is laid out, with its name for people and the highest pressure known there. */
export interface Side extends PlumbingEnd {
  readonly words: string;
  readonly at: Port | undefined;
  /** [Pa]; infinite where nothing but the other side decides. */
  readonly pressure: number;
  readonly count: number;
}

/** Two sides that are to be joined. */
export interface Meeting {
  readonly a: Side;
  readonly b: Side;
  readonly line: string;
  readonly times: number;
}

/** The plumbing of one rig while it is laid out. */
export class Plan {
  readonly rig: Rig;
  readonly supply: Supply;
  readonly meetings: Meeting[] = [];
  readonly added: AddedFitting[] = [];
  readonly open: OpenPort[] = [];
  readonly gaps: string[] = [];
  readonly #pressureAt: (item: string) => number;
  /** Ports that are joined or left open, by what they are of. */
  readonly #taken = new Map<string, Set<string>>();

  constructor(rig: Rig, supply: Supply, pressureAt: (item: string) => number) {
    this.rig = rig;
    this.supply = supply;
    this.#pressureAt = pressureAt;
  }

  /** A port of an item of the rig: "tank valve out". */
  side(item: string, port: string, words = `${item.replaceAll('-', ' ')} ${port}`): Side {
    const { part, item: entry } = this.rig.items.get(item)!;
    return {
      of: item,
      port,
      words,
      at: part.ports.find((p) => p.id === port),
      pressure: part.kind === 'tank' || part.kind === 'gauge' ? Infinity : this.#pressureAt(item),
      count: entry.count,
    };
  }

  /** Adds a fitting that no slot has; gives its ports as sides. */
  add(id: string, part: Part, at: string, words: string, pressure: number): Side[] {
    this.added.push({ id, part, at, words, pressure: Number.isFinite(pressure) ? pressure : 0 });
    return part.ports.map((port) => ({ of: id, port: port.id, words, at: port, pressure, count: 1 }));
  }

  join(a: Side, b: Side, line: string, times = Math.max(a.count, b.count)): void {
    this.#take(a);
    this.#take(b);
    this.meetings.push({ a, b, line, times });
  }

  /** Puts an added fitting into a joint that was to be made already. */
  split(meeting: Meeting, into: Side, out: Side): void {
    this.meetings.splice(this.meetings.indexOf(meeting), 1, { ...meeting, b: into }, { ...meeting, a: out });
    this.#take(into);
    this.#take(out);
  }

  leaveOpen(end: PlumbingEnd, why: string): void {
    this.#take(end);
    this.open.push({ of: end.of, port: end.port, why });
  }

  isTaken(of: string, port: string): boolean {
    return this.#taken.get(of)?.has(port) === true;
  }

  #take({ of, port }: PlumbingEnd): void {
    const ports = this.#taken.get(of);
    if (ports === undefined) this.#taken.set(of, new Set([port]));
    else ports.add(port);
  }
}

/** Pressure that a joint of two sides must stand: it cannot exceed what is known on either [Pa]. */
export function pressureBetween(a: Side, b: Side): number {
  const pressure = Math.min(a.pressure, b.pressure);
  return Number.isFinite(pressure) ? Math.max(0, pressure) : 0;
}
