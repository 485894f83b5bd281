import type { Palette } from './palette.ts';
import type { SceneScale } from './scene-scale.ts';
import { seeded } from './seeded.ts';
import { element, number, stroke } from './svg.ts';

export interface Tree {
  /** Middle of the stem from the operator's feet [m]. */
  readonly at: number;
  readonly height: number;
  readonly spread: number;
  readonly clearStem: number;
}

interface Mass {
  readonly x: number;
  readonly z: number;
  readonly r: number;
}

/** Leaf masses a row of the crown, from its foot to its top, on a vase profile: 29 in all. */
const ROWS: readonly (readonly [height: number, half: number, count: number])[] = [
  [0.09, 0.34, 3],
  [0.24, 0.62, 5],
  [0.42, 0.78, 6],
  [0.6, 0.8, 6],
  [0.77, 0.64, 5],
  [0.91, 0.36, 3],
  [1, 0, 1],
];

/** A tree of this height, as wide as its stand allows: a brief gives no spread, so it is drawn as a usual one. */
export function usualTree(at: number, height: number): Tree {
  return {
    at,
    height,
    spread: Math.min(0.72 * height, Math.max(1.6 * at, 0.42 * height)),
    clearStem: 0.2 * height,
  };
}

/** The tree's crown and stem; wetted up to a height [m], with what is short of the asked height hatched. */
export function drawTree(tree: Tree, wetTo: number, scale: SceneScale, palette: Palette): string {
  const masses = massesOf(tree);
  const small = tree.height * scale.k < 60;
  const outline = masses.map((m) => bumpy(m, scale, small)).join('');
  const ink = stroke('outline', palette.ink, palette);
  return element(
    'g',
    {},
    stem(tree, scale, palette),
    // All masses are stroked first and filled after, so that ink stays on the outside only.
    element('path', { d: outline, ...ink, 'stroke-width': 2 * Number(ink['stroke-width']) }),
    element('path', { d: outline, fill: palette.liquidTint }),
    ...dryTop(tree, masses, wetTo, scale, palette),
    ...(small
      ? []
      : [element('path', { d: scallops(masses, scale), ...stroke('hatch', palette.leaf, palette) })]),
  );
}

function massesOf(tree: Tree): Mass[] {
  const random = seeded(29);
  const crown = tree.height - tree.clearStem;
  const half = tree.spread / 2;
  const r = Math.min(tree.spread * 0.155, crown * 0.17);
  return ROWS.flatMap(([level, share, count]) =>
    Array.from({ length: count }, (_, i): Mass => {
      const across = count === 1 ? 0 : (2 * i) / (count - 1) - 1;
      const own = r * (0.9 + 0.2 * random());
      return {
        x: tree.at + across * share * half + (count === 1 ? 0 : (random() - 0.5) * 0.3 * r),
        z: Math.min(
          tree.height - own * BUMP,
          tree.clearStem +
            r +
            level * (crown - r * (1 + BUMP)) -
            Math.abs(across) * 0.35 * r +
            (random() - 0.5) * 0.3 * r,
        ),
        r: own,
      };
    }),
  ).map((m, i, all) => (i === all.length - 1 ? { ...m, z: tree.height - m.r * BUMP } : m));
}

/** How far the bumps of a mass stand out of its circle. */
const BUMP = 1.08;

/** One leaf mass: a ring of small outward bows. */
function bumpy({ x, z, r }: Mass, scale: SceneScale, small: boolean): string {
  const [cx, cy, radius] = [scale.x(x), scale.y(z), r * scale.k];
  if (small)
    return `M${number(cx - radius)} ${number(cy)}a${number(radius)} ${number(radius)} 0 1 0 ${number(2 * radius)} 0a${number(radius)} ${number(radius)} 0 1 0 ${number(-2 * radius)} 0Z`;
  const bows = 9;
  const turn = x * 7 + z * 3;
  const bow = radius * 0.44;
  const point = (i: number): string => {
    const angle = turn + (i * 2 * Math.PI) / bows;
    return `${number(cx + radius * 0.97 * Math.cos(angle))} ${number(cy + radius * 0.97 * Math.sin(angle))}`;
  };
  return (
    `M${point(0)}` +
    Array.from({ length: bows }, (_, i) => `A${number(bow)} ${number(bow)} 0 0 1 ${point(i + 1)}`).join('') +
    'Z'
  );
}

/** Short bows inside the crown, on the sunny side of each mass. */
function scallops(masses: readonly Mass[], scale: SceneScale): string {
  const random = seeded(7);
  return masses
    .map(({ x, z, r }) => {
      const [cx, cy, radius] = [scale.x(x), scale.y(z), r * scale.k * 0.62];
      const start = Math.PI * (1.02 + 0.2 * random());
      const bow = number(radius * 0.36);
      const point = (i: number) => {
        const angle = start + i * 0.62;
        return `${number(cx + radius * Math.cos(angle))} ${number(cy + radius * Math.sin(angle))}`;
      };
      return `M${point(0)}${[1, 2, 3].map((i) => `A${bow} ${bow} 0 0 1 ${point(i)}`).join('')}`;
    })
    .join('');
}

function stem(tree: Tree, scale: SceneScale, palette: Palette): string {
  const x = scale.x(tree.at);
  const wide = Math.max(2.2, tree.height * 0.022 * scale.k);
  const y0 = scale.y(0);
  const y1 = scale.y(tree.clearStem * 0.75);
  const y2 = scale.y(tree.clearStem + 0.3 * (tree.height - tree.clearStem));
  const reach = tree.spread * 0.2 * scale.k;
  const at = (dx: number, y: number) => `${number(x + dx)} ${number(y)}`;
  return element('path', {
    d:
      `M${at(-wide * 1.5, y0)}C${at(-wide, y0 - 6)} ${at(-wide * 0.8, y1 + 6)} ${at(-wide, y1)}L${at(-reach, y2)}` +
      `L${at(-reach + wide, y2)}L${at(-wide * 0.15, y1 - wide)}L${at(-wide * 0.3, y2)}L${at(wide * 0.4, y2)}` +
      `L${at(wide * 0.25, y1 - wide)}L${at(reach - wide, y2)}L${at(reach, y2)}L${at(wide, y1)}` +
      `C${at(wide * 0.8, y1 + 6)} ${at(wide, y0 - 6)} ${at(wide * 1.5, y0)}Z`,
    ...stroke('outline', palette.ink, palette),
    'stroke-width': 1.3 * palette.weight,
    fill: palette.paper,
  });
}

/** What stays dry of a crown: paper with hatching in the colour of a broken promise, its edge at the promised height. */
function dryTop(
  tree: Tree,
  masses: readonly Mass[],
  wetTo: number,
  scale: SceneScale,
  palette: Palette,
): string[] {
  if (wetTo >= tree.height) return [];
  const bottom = Math.max(wetTo, tree.clearStem);
  const steps = 40;
  const edge = (z: number): readonly [number, number] | undefined => {
    let span: readonly [number, number] | undefined;
    for (const m of masses) {
      const rest = m.r * m.r - (z - m.z) ** 2;
      if (rest <= 0) continue;
      const half = Math.sqrt(rest);
      span = [Math.min(span?.[0] ?? Infinity, m.x - half), Math.max(span?.[1] ?? -Infinity, m.x + half)];
    }
    return span;
  };
  const left: string[] = [];
  const right: string[] = [];
  for (let i = 0; i <= steps; i++) {
    const z = bottom + ((tree.height - bottom) * i) / steps;
    const span = edge(z);
    if (span === undefined) continue;
    left.push(`${number(scale.x(span[0]))} ${number(scale.y(z))}`);
    right.unshift(`${number(scale.x(span[1]))} ${number(scale.y(z))}`);
  }
  if (left.length < 2) return [];
  return [
    element('path', { d: `M${[...left, ...right].join('L')}Z`, fill: palette.brokenTint }),
    element('path', { d: hatching(tree, bottom, edge, scale), ...stroke('hatch', palette.broken, palette) }),
  ];
}

/** Lines at 45° where a height of the crown has leaves. */
function hatching(
  tree: Tree,
  bottom: number,
  edge: (z: number) => readonly [number, number] | undefined,
  scale: SceneScale,
): string {
  const pitch = 7;
  const y0 = scale.y(bottom);
  const y1 = scale.y(tree.height);
  const x0 = scale.x(tree.at - tree.spread);
  const x1 = scale.x(tree.at + tree.spread);
  let d = '';
  for (let c = x0 - (y0 - y1); c < x1; c += pitch) {
    let open: string | undefined;
    let last = '';
    for (let t = 0; t <= y0 - y1 + 1e-9; t += 1.5) {
      const [x, y] = [c + t, y0 - t];
      const span = edge((scale.ground - y) / scale.k);
      const inside = span !== undefined && x > scale.x(span[0]) && x < scale.x(span[1]);
      const here = `${number(x)} ${number(y)}`;
      if (inside) open ??= here;
      else if (open !== undefined) {
        if (open !== last) d += `M${open}L${last}`;
        open = undefined;
      }
      last = here;
    }
    if (open !== undefined && open !== last) d += `M${open}L${last}`;
  }
  return d;
}
