import { display } from '../quantity/index.ts';
import type { DutyReach, Proof, Target } from '../rig/index.ts';
import { asGiven, levelDimension } from './dimension.ts';
import { detailView } from './detail-view.ts';
import { drawGround, drawHose } from './ground.ts';
import { drawHouse, drawWall } from './house.ts';
import { angleMark, drawOperator, gripOf } from './operator.ts';
import type { Palette } from './palette.ts';
import { distanceRows } from './reach-rows.ts';
import { heightRuler } from './reach-ruler.ts';
import type { SceneScale } from './scene-scale.ts';
import { drawing, element, label, path, stroke } from './svg.ts';
import type { ThrowSceneOptions } from './scene-options.ts';
import { throwLayout, type Thrown } from './throw-layout.ts';
import { drawTree, type Tree } from './tree.ts';

type Arc = DutyReach['arcBulk'];

/** The throw of a gun against its target, with the figures of reach kept apart. */
export function throwDrawing(proof: Proof, duty: Thrown, target: Target, options: ThrowSceneOptions): string {
  const { width, palette, units } = options;
  const { reach } = duty;
  const { scale, height, rulerRoom, rig, rigRight, detail, tree } = throwLayout(proof, duty, target, options);
  const { k, n, ground } = scale;
  const origin = scale.x(0);
  const upright = target.aim === 'height';
  const hoseOut = duty.duty.hoseOut;
  const free = hoseOut === undefined ? Infinity : hoseOut * k;
  const cutHose = origin - rigRight < free * 0.98;
  const tip = tipOf(reach);
  const say = (value: number) => display(value, 'length', units);
  const toMetres = (x: number) => (x - origin) / k;
  return drawing(
    width,
    height,
    sentence(duty, target, options),
    ...drawGround(width, scale, palette),
    drawHose(
      { x: rigRight - rig.outlet.from * k, y: scale.y(rig.outlet.z) },
      gripPoint(tip, scale),
      { edge: rigRight, cut: cutHose, lit: options.lit === 'hose' },
      scale,
      palette,
    ),
    rig.draw(toMetres(rigRight), scale, palette, options.lit),
    ...(detail === undefined ? [] : detailView(rig, detail, scale, toMetres(rigRight), palette, options.lit)),
    ...band(reach, scale, palette),
    ...targetOf(target, reach, tree, scale, palette),
    ...bulkArc(reach, scale, palette, options.lit),
    ...farthestArc(reach, scale, palette),
    drawOperator(tip, scale, palette),
    ...angle(tip, (leftOf(target, reach, tree) - tip.x) * k < 44, scale, palette),
    ...(upright
      ? heightRuler(
          reach,
          { scale, x: width - rulerRoom + 16, crown: crownRight(tree, reach, scale) },
          options,
        )
      : distanceRows(reach, reach.meaning, target, scale, options)),
    ...(hoseOut === undefined
      ? []
      : [
          levelDimension(
            {
              from: rigRight,
              to: origin - 4,
              y: ground + 30,
              above: ground + 4,
              text: asGiven(say(hoseOut)),
              boxed: true,
              ...(origin - rigRight > 150 ? { words: 'of hose out' } : {}),
            },
            palette,
          ),
        ]),
    ...(upright
      ? [
          levelDimension(
            {
              from: origin + 2,
              to: scale.x(reach.standoff),
              y: ground + 30,
              above: ground + 4,
              text: asGiven(say(target.standoff)),
              boxed: true,
            },
            palette,
          ),
        ]
      : []),
    label(14, 20, `Scale 1 : ${n}${rig.exception}`, {
      size: 12,
      color: palette.ink2,
    }),
  );
}

/** Where the target begins [m]. */
function leftOf(target: Target, reach: DutyReach, tree: Tree | undefined): number {
  return target.aim === 'height'
    ? reach.standoff - (tree === undefined ? 0 : tree.spread / 2)
    : target.distance;
}

interface Tip {
  readonly x: number;
  readonly z: number;
  readonly elevation: number;
}

/** The gun's tip is where the arc begins. */
function tipOf(reach: DutyReach): Tip {
  const [x, z] = reach.arcBulk[0] ?? reach.arcFarthest[0] ?? [0, reach.gunHeight];
  return { x, z, elevation: reach.elevation };
}

function gripPoint(tip: Tip, scale: SceneScale): { x: number; y: number } {
  const grip = gripOf(tip);
  return { x: scale.x(grip.x), y: scale.y(grip.z) };
}

/** Points of an arc on the sheet, cut where it comes to the ground. */
function onSheet(arc: Arc, scale: SceneScale): [number, number][] {
  return arc
    .filter(([, z]) => z >= -0.01)
    .map(([x, z]): [number, number] => [scale.x(x), scale.y(Math.max(0, z))]);
}

function band(reach: DutyReach, scale: SceneScale, palette: Palette): string[] {
  const edge = [...onSheet(reach.arcHigh, scale), ...onSheet(reach.arcLow, scale).reverse()];
  return edge.length < 4 ? [] : [element('path', { d: path(edge, true), fill: palette.liquidTint })];
}

function farthestArc(reach: DutyReach, scale: SceneScale, palette: Palette): string[] {
  const farthest = onSheet(reach.arcFarthest, scale);
  return farthest.length < 2
    ? []
    : [element('path', { d: path(farthest), ...stroke('farthest', palette.liquid, palette) })];
}

function bulkArc(reach: DutyReach, scale: SceneScale, palette: Palette, lit: string | undefined): string[] {
  const bulk = onSheet(reach.arcBulk, scale);
  const liquid = stroke('liquid', palette.liquid, palette);
  return bulk.length < 2
    ? []
    : [
        element('path', {
          'data-item': 'tip',
          d: path(bulk),
          ...liquid,
          'stroke-width': Number(liquid['stroke-width']) + (lit === 'tip' ? 1 : 0),
        }),
      ];
}

function targetOf(
  target: Target,
  reach: DutyReach,
  tree: Tree | undefined,
  scale: SceneScale,
  palette: Palette,
): string[] {
  switch (target.aim) {
    case 'height':
      return [
        tree === undefined
          ? drawWall({ at: reach.standoff, height: target.height }, reach.promised, scale, palette)
          : drawTree(tree, reach.promised, scale, palette),
      ];
    case 'roof':
      return [drawHouse({ at: target.distance, height: target.height }, scale, palette)];
    case 'distance':
      return [tufts(target.distance, scale, palette)];
  }
}

/** Weeds at the asked distance. */
function tufts(distance: number, scale: SceneScale, palette: Palette): string {
  const leaf = (x: number, dx: number, h: number) =>
    `M${x.toFixed(2)} ${scale.ground.toFixed(2)}q${(dx * 0.2).toFixed(2)} ${(-h * 0.7).toFixed(2)} ${dx.toFixed(2)} ${(-h).toFixed(2)}`;
  const h = Math.max(7, 0.35 * scale.k);
  const d = [-0.5, 0, 0.5]
    .flatMap((step) => {
      const x = scale.x(distance) + step * h * 1.3;
      return [leaf(x, -h * 0.55, h * 0.7), leaf(x, 0, h), leaf(x, h * 0.55, h * 0.75)];
    })
    .join('');
  return element('path', {
    d,
    ...stroke('thin', palette.ink, palette),
    'stroke-width': 1.2 * palette.weight,
  });
}

function crownRight(
  tree: Tree | undefined,
  reach: DutyReach,
  scale: SceneScale,
): { left: number; right: number } {
  const half = tree === undefined ? 1.2 : tree.spread * 0.3;
  return {
    left: scale.x(reach.standoff - (tree === undefined ? 0 : half)),
    right: scale.x(reach.standoff + half),
  };
}

function angle(tip: Tip, near: boolean, scale: SceneScale, palette: Palette): string[] {
  const [x, y] = [scale.x(tip.x), scale.y(tip.z)];
  const radius = 24;
  const text = `${Math.round((tip.elevation * 180) / Math.PI)}°`;
  // Against a near target the figure alone, on the free side.
  if (near)
    return [label(x - 9, y - 16, text, { size: 12, color: palette.ink, anchor: 'end', halo: palette.paper })];
  return [
    element('path', { d: angleMark(x, y, tip.elevation, radius), ...stroke('thin', palette.ink, palette) }),
    label(x + radius + 6, y - 6, text, {
      size: 12,
      color: palette.ink,
      halo: palette.paper,
    }),
  ];
}

function sentence(duty: Thrown, target: Target, { units }: ThrowSceneOptions): string {
  const { reach } = duty;
  const say = (value: number) => display(value, 'length', units);
  const what = target.aim === 'height' ? 'high' : 'far';
  return `${duty.name}, from the side: farthest drops ${say(reach.farthest)} ${what}, half the water ${say(reach.bulk)}, promised 9 in 10 ${say(reach.promised)}, asked ${say(reach.asked)}`;
}
