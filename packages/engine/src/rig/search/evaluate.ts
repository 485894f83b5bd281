import type { Shop } from '../../catalogue/index.ts';
import type { UnitSystem } from '../../quantity/index.ts';
import { assembleRig, type RawRig } from '../design/assemble.ts';
import { proveRig, type Proof } from '../proof/prove.ts';
import type { PromiseKind } from '../promise.ts';
import { readRig } from '../rig-document.ts';
import { figuresOf, type Figures } from './figures.ts';
import { settingsOf } from './settings.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** A set of parts as a whole rig, proven and billed like any other. */
export interface Proven {
  readonly rig: RawRig;
  readonly figures: Figures;
  /** Least margin of the promises of each kind, to all its digits. */
  readonly spares: ReadonlyMap<PromiseKind, number>;
  readonly counts: Proof['counts'];
  /** Promises that are broken. */
  readonly broken: readonly string[];
  /** Sum of the shares by which they are missed. */
  readonly missed: number;
  /** Promises that nobody can judge yet. */
  readonly unknown: readonly string[];
}

/** The one judge of a rig: assembled, read, proven whole. Undefined when the parts make no rig. */
export function prove(space: SearchSpace, shop: Shop, units: UnitSystem, partAt: PartAt): Proven | undefined {
  const { brief, rawBrief, catalogue, layout } = space;
  const chosen = settingsOf(space, partAt);
  if (chosen === undefined) return undefined;
  const rig = assembleRig(layout, { raw: rawBrief, id: brief.id, title: brief.title }, chosen);
  const read = readRig(rig, catalogue);
  if (!read.ok) return undefined;
  const proof = proveRig(read.rig, catalogue, shop, { units, notes: false });
  const broken = proof.promises.filter((p) => p.state === 'broken');
  return {
    rig,
    figures: figuresOf(proof),
    spares: sparesOf(proof),
    counts: proof.counts,
    broken: broken.map((p) => p.id),
    missed: broken.reduce((sum, p) => sum + Math.min(1, -(p.margin ?? -1)), 0),
    unknown: proof.promises.filter((p) => p.state === 'unknown').map((p) => p.id),
  };
}

function sparesOf({ promises }: Proof): ReadonlyMap<PromiseKind, number> {
  const spares = new Map<PromiseKind, number>();
  for (const { kind, margin } of promises)
    if (margin !== undefined) spares.set(kind, Math.min(margin, spares.get(kind) ?? Infinity));
  return spares;
}
