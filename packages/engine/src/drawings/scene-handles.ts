import type { DutyProof, Proof, Target } from '../rig/index.ts';
import { HOUSE_DEPTH } from './house.ts';
import type { SceneHold, ThrowSceneOptions } from './scene-options.ts';
import type { SceneScale } from './scene-scale.ts';
import type { Silhouette } from './rig-silhouette.ts';
import { sprayLayout } from './spray-layout.ts';
import { throwLayout } from './throw-layout.ts';

/** What a handle moves: a value of the duty, or a part along the deck or across it. */
type HandleId =
  | 'tankLevel'
  | 'hoseOut'
  | 'target.height'
  | 'target.distance'
  | 'target.standoff'
  | 'operator'
  | 'place'
  | 'across';

/** Something in a scene that can be dragged, with the way from pixels to its value. */
export interface SceneHandle {
  readonly id: HandleId;
  /** Item whose place it is. */
  readonly item?: string;
  /** Its middle on the sheet, and the room it takes [px]. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly axis: 'x' | 'y';
  /** Change of the value with each pixel right, or down [SI per px]. */
  readonly perPixel: number;
  /** [SI] */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** Where a pointer moves it along the deck as well: that value, and its change with each pixel right. */
  readonly along?: Readonly<Record<'perPixel' | 'value' | 'min' | 'max', number>>;
}

export interface SceneHandles {
  readonly handles: readonly SceneHandle[];
  /** Hand this back while something is dragged; absent where the scene never changes its scale. */
  readonly hold?: Omit<SceneHold, 'keeps'>;
}

const SIZE = 26;
/** A rig drawn lower than this has no room for handles of its own [px]. */
const LEAST_RIG = 60;
/** Pixels that a metre of hose is dragged, since the hose is not drawn to its length. */
const HOSE_PIXELS = 6;
/** Farthest that a hose is dragged out, where the rig does not tell its length [m]. */
const LONGEST_HOSE = 150;

/** The handles of a duty's scene, in the order in which the keyboard meets them. */
export function sceneHandles(proof: Proof, duty: DutyProof, options: ThrowSceneOptions): SceneHandles {
  const { reach } = duty;
  const { target } = duty.duty;
  if (duty.open.status === 'failed') return { handles: [] };
  if (reach === undefined || target === undefined) {
    const { scale, rig } = sprayLayout(proof, duty, options);
    return { handles: rigHandles(proof, duty, rig, scale, 0) };
  }
  const layout = throwLayout(proof, { ...duty, reach }, target, options);
  const { scale, rig, rigRight, detail } = layout;
  const origin = scale.x(0);
  const hose = hoseLength(proof);
  return {
    hold: { n: scale.n, ground: scale.ground, height: layout.height, origin, standoff: reach.standoff },
    handles: [
      ...(detail === undefined
        ? rigHandles(proof, duty, rig, scale, (rigRight - origin) / scale.k)
        : rigHandles(proof, duty, rig, detail.scale, 0)),
      ...(duty.duty.hoseOut === undefined
        ? []
        : [
            {
              id: 'hoseOut' as const,
              x: rigRight + (origin - rigRight) * 0.72,
              y: scale.ground - 6,
              width: SIZE,
              height: SIZE,
              axis: 'x' as const,
              perPixel: 1 / HOSE_PIXELS,
              value: duty.duty.hoseOut,
              min: 0,
              max: hose ?? LONGEST_HOSE,
            },
          ]),
      ...targetHandles(target, scale),
    ],
  };
}

function hoseLength(proof: Proof): number | undefined {
  return proof.parts.find((p) => p.item === 'hose')?.length;
}

/** The operator, and the target by its distance and its height. */
function targetHandles(target: Target, scale: SceneScale): SceneHandle[] {
  const off = target.aim === 'height' ? target.standoff : target.distance;
  const along = { axis: 'x', min: 0.5, max: 60, value: off, width: SIZE, height: SIZE } as const;
  const far = target.aim === 'height' ? 'target.standoff' : 'target.distance';
  return [
    { ...along, id: 'operator', x: scale.x(0) - 22, y: scale.ground - 14, perPixel: -1 / scale.k },
    { ...along, id: far, x: scale.x(off), y: scale.ground - 12, perPixel: 1 / scale.k },
    ...(target.aim === 'distance'
      ? []
      : [
          {
            id: 'target.height' as const,
            x: target.aim === 'height' ? scale.x(off) : scale.x(off + HOUSE_DEPTH * 0.4),
            y: scale.y(target.height),
            width: SIZE,
            height: SIZE,
            axis: 'y' as const,
            perPixel: -1 / scale.k,
            value: target.height,
            min: 0.5,
            max: 60,
          },
        ]),
  ];
}

/** The level in the tank, and the parts that stand on the deck in their own places; none where the rig is drawn too small. */
export function rigHandles(
  proof: Proof,
  duty: DutyProof,
  rig: Silhouette,
  scale: SceneScale,
  right: number,
): SceneHandle[] {
  const { placement } = proof;
  if (rig.height * scale.k < LEAST_RIG) return [];
  const tank = rig.places.find((p) => p.kind === 'tank');
  const level = duty.duty.tankLevel;
  const middle = (p: Silhouette['places'][number]) => scale.x(right - p.from - p.length / 2);
  return [
    ...(tank === undefined
      ? []
      : [
          {
            id: 'tankLevel' as const,
            x: middle(tank),
            y: scale.y(tank.z + level * tank.height),
            width: Math.max(SIZE, tank.length * scale.k * 0.5),
            height: SIZE,
            axis: 'y' as const,
            perPixel: -1 / (tank.height * scale.k),
            value: level,
            min: 0,
            max: 1,
          },
        ]),
    ...rig.places.flatMap((p): SceneHandle[] => {
      const placed = placement?.parts.find((part) => part.item === p.item && part.on === undefined);
      if (placement === undefined || placed === undefined) return [];
      return [
        {
          id: 'place',
          item: p.item,
          x: middle(p),
          y: scale.y(p.z) - 7,
          width: Math.max(SIZE, p.length * scale.k * 0.6),
          height: 16,
          axis: 'x',
          perPixel: 1 / scale.k,
          value: placed.x,
          min: placed.length / 2,
          max: Math.max(placed.length, placement.carrier.deckLength) - placed.length / 2,
        },
      ];
    }),
  ];
}
