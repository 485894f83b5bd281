import type { PartOf } from '../../catalogue/index.ts';
import { display } from '../../quantity/index.ts';
import type { Plumbing, RigJoint } from '../plumbing/index.ts';
import type { Rig } from '../rig-document.ts';
import type { HardwareNeed } from './hardware.ts';

/** One piece of hose as it is cut, with what is pushed into its two ends. */
export interface HoseCut {
  readonly item: string;
  readonly part: string;
  readonly name: string;
  /** [m] */
  readonly length: number;
  /** How many are cut alike. */
  readonly count: number;
  /** Names of the fittings at its ends; what it is joined to where no fitting lies between. */
  readonly ends: readonly [string, string];
}

/** Every hose of the rig in its pieces, none longer than it is sold in one piece. */
export function cutList(rig: Rig, { joints }: Plumbing): HoseCut[] {
  return [...rig.items.values()].flatMap(({ item, part }) => {
    if (part.kind !== 'hose' || item.length === undefined || item.length <= 0) return [];
    const pieces = Math.ceil(item.length / part.longestPiece - 1e-6);
    const end = (port: string): string => {
      const joint = joints.find((j) => !withItself(j) && endsAt(j, item.id, port));
      return joint === undefined ? 'open' : endName(joint, item.id);
    };
    const [into, out] = [end('in'), end('out')] as const;
    const mender = joints.find((j) => withItself(j) && j.ends[0].of === item.id)?.pieces[0]?.name ?? 'open';
    return Array.from({ length: pieces }, (_, i) => ({
      item: item.id,
      part: part.id,
      name: part.name,
      length: Math.min(part.longestPiece, item.length! - i * part.longestPiece),
      count: item.count,
      ends: [i === 0 ? into : mender, i === pieces - 1 ? out : mender] as const,
    }));
  });
}

/** A clamp for each hose end on a barb, by the outside of the hose and the pressure there. */
export function clampNeeds(rig: Rig, { joints }: Plumbing): HardwareNeed[] {
  const needs: HardwareNeed[] = [];
  for (const joint of joints)
    for (const end of joint.ends) {
      const part = rig.items.get(end.of)?.part;
      if (part?.kind !== 'hose' || part.ports.find((p) => p.id === end.port)?.joint !== 'hose') continue;
      needs.push({
        words: () => clampWords(part, joint.pressure),
        quantity: joint.times,
        unit: 'each',
        fits: ({ purpose: p }) =>
          p.form === 'hose-clamp' &&
          p.smallest <= part.outsideDiameter + 1e-5 &&
          p.largest >= part.outsideDiameter - 1e-5 &&
          p.maxPressure >= joint.pressure,
      });
    }
  return needs;
}

function clampWords(hose: PartOf<'hose'>, pressure: number): string {
  return `hose clamp for ${display(hose.outsideDiameter, 'length', 'us', { as: 'bore' })} outside at ${display(pressure, 'pressure', 'us')}`;
}

function endsAt({ ends: [a, b] }: RigJoint, hose: string, port: string): boolean {
  return (a.of === hose && a.port === port) || (b.of === hose && b.port === port);
}

function withItself({ ends }: RigJoint): boolean {
  return ends[0].of === ends[1].of;
}

function endName({ ends, pieces, between }: RigJoint, hose: string): string {
  const first = ends[0].of === hose;
  return (first ? pieces[0] : pieces[pieces.length - 1])?.name ?? between[first ? 1 : 0];
}
