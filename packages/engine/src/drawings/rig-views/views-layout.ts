import type { DutyProof, Placement, Proof } from '../../rig/index.ts';
import { rigSilhouette, type Silhouette } from '../rig-silhouette.ts';
import { roundScale, sceneScale, type SceneScale } from '../scene-scale.ts';
import { DEEPER, sideBearings, standsDeeper, type Bearing } from './support-arrows.ts';
import type { ViewOptions } from './view-options.ts';

/** Where the three views of a rig lie on their sheet [px]. */
export interface ViewsLayout {
  readonly placement: Placement;
  readonly height: number;
  readonly n: number;
  readonly k: number;
  readonly rig: Silhouette;
  /** Seen from the left, front at the left: x from the metre behind the front of the deck, y from the height over the ground. */
  readonly side: {
    readonly scale: SceneScale;
    readonly right: number;
    readonly bearings: readonly Bearing[];
  };
  /** Seen from behind: its middle line, and the ground. */
  readonly end: { readonly middle: number; readonly ground: number };
  /** Seen from above: the middle line of the deck. */
  readonly top: { readonly middle: number; readonly half: number };
  readonly x: (behindFront: number) => number;
}

const EDGE = 16;
const SKY = 30;
/** Under a ground line: arrows with their figures. */
const ARROWS = 78;
/** Largest height of the rig [px]. */
const HIGHEST = 210;
/** Room on both sides of the end view for the figures of its wheels [px]. */
const BESIDE = 128;
const NARROW = 560;

/** The rig to one round scale: side view, end view beside or under it, plan under the side view. Undefined without places. */
export function viewsLayout(proof: Proof, duty: DutyProof, options: ViewOptions): ViewsLayout | undefined {
  const { placement } = proof;
  if (placement === undefined) return undefined;
  const { carrier } = placement;
  const narrow = options.width < NARROW;
  const rig = rigSilhouette(proof, duty);
  const [first, last] = alongOf(placement);
  const half = halfWidthOf(placement);
  const afield = narrow ? 92 : 0;
  const endWidth = narrow ? 0 : 2 * half;
  const room = {
    width: options.width - 2 * EDGE - (narrow ? afield : 20 + 2 * BESIDE),
    height: HIGHEST,
  };
  const tall = Math.max(rig.height, placement.tip?.height ?? 0);
  const n = roundScale(last - first + endWidth, tall, room);
  const k = sceneScale(n, 0, 0).k;
  const x0 = EDGE + (narrow ? 18 : 40);
  const x = (behindFront: number) => x0 + (behindFront - first) * k;
  const ground = SKY + tall * k;
  const scale = sceneScale(n, x(0), ground);
  const bearings = sideBearings(placement, x, duty.id);
  const deeper = bearings.some((b, i) => standsDeeper(b, bearings[i + 1], options.units));
  const middle = ground + ARROWS + (deeper ? DEEPER - 16 : 0) + 22 + half * k;
  const foot = middle + half * k + 28;
  const endGround = narrow ? foot + 26 + tall * k : ground;
  return {
    placement,
    n,
    k,
    rig,
    height: Math.ceil(narrow ? endGround + ARROWS : foot + 8),
    side: { scale, right: carrier.deckLength, bearings },
    end: {
      middle: narrow ? options.width / 2 : options.width - BESIDE - half * k + 8,
      ground: endGround,
    },
    top: { middle, half },
    x,
  };
}

/** From the foremost to the hindmost of deck, parts and supports [m behind the front of the deck]. */
function alongOf({ carrier, parts, supports }: Placement): [number, number] {
  const ends = parts
    .filter((p) => p.on === undefined)
    .flatMap((p) => [p.x - p.length / 2, p.x + p.length / 2]);
  const rests = supports.flatMap((s) => {
    const r = (s.wheels?.diameter ?? 0.5) / 2;
    return s.id === 'coupler' ? [s.x - 0.1] : [s.x - r, s.x + r];
  });
  const ahead = carrier.form === 'skid' ? 0 : -0.3;
  return [Math.min(ahead, ...ends, ...rests), Math.max(carrier.deckLength, ...ends, ...rests)];
}

function halfWidthOf({ carrier, parts, supports, tip }: Placement): number {
  return Math.max(
    carrier.deckWidth / 2,
    (tip?.track ?? 0) / 2 + 0.12,
    ...supports.map((s) => (s.wheels?.track ?? 0) / 2 + 0.12),
    // A boom is told by its width, not drawn out.
    ...parts.filter((p) => p.on === undefined && p.kind !== 'boom').map((p) => Math.abs(p.y) + p.width / 2),
  );
}
