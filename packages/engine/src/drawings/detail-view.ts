import type { Palette } from './palette.ts';
import type { Silhouette } from './rig-silhouette.ts';
import { sceneScale, type SceneScale } from './scene-scale.ts';
import { element, hatch, label, number, stroke } from './svg.ts';

/** How many times the scene a detail may be drawn. */
const TIMES = [6, 5, 4, 3, 2.5, 2];
const TIMES_WORDS: Readonly<Record<number, string>> = {
  2: 'twice',
  2.5: '2.5 times',
  3: 'three times',
  4: 'four times',
  5: 'five times',
  6: 'six times',
};
const ROW = 15;
/** Room over the rig for the names, and right of it for the last of them [px]. */
const NAMES = 50;
const ASIDE = 60;

/** Where a detail lies on the sheet, and how many times the scene it is drawn. */
export interface DetailPlace {
  readonly times: number;
  readonly left: number;
  /** Hose end of the rig [px]. */
  readonly end: number;
  readonly scale: SceneScale;
}

/** A place for the rig again, larger, in the empty sky; undefined where there is no room for at least twice the scene. */
export function detailPlace(
  rig: Silhouette,
  ahead: number,
  space: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
  scene: SceneScale,
): DetailPlace | undefined {
  const fits = (times: number) =>
    (rig.length + ahead) * scene.k * times <= space.right - space.left - ASIDE &&
    rig.height * scene.k * times + NAMES + 36 <= space.bottom - space.top;
  const times = TIMES.find(fits);
  if (times === undefined) return undefined;
  const end = space.left + (rig.length + ahead) * scene.k * times + 6;
  return {
    times,
    left: space.left,
    end,
    scale: sceneScale(scene.n / times, end, space.bottom - 24),
  };
}

/** The rig again at its place, its parts named in words, tied to the rig in the scene by a letter. */
export function detailView(
  rig: Silhouette,
  { times, left, end, scale }: DetailPlace,
  scene: SceneScale,
  rigRight: number,
  palette: Palette,
  lit: string | undefined,
): string[] {
  const { ground } = scale;
  const [cx, cy] = [scene.x(rigRight - rig.length / 2), scene.y(rig.height / 2)];
  const [rx, ry] = [(rig.length / 2 + 0.5) * scene.k, (rig.height / 2) * scene.k + 7];
  return [
    rig.draw(0, scale, palette, lit),
    element('path', {
      d: `M${number(left)} ${number(ground)}H${number(end + 8)}`,
      ...stroke('outline', palette.ink, palette),
    }),
    hatch(left, ground + 1, end + 8 - left, 6, 8, palette.ink, palette),
    ...names(rig, scale, palette),
    label(left, ground + 22, 'A', { size: 14, weight: 640, color: palette.ink }),
    label(left + 14, ground + 22, `rig, ${TIMES_WORDS[times]!} the scene`, {
      size: 12,
      color: palette.ink2,
    }),
    element('ellipse', { cx, cy, rx, ry, ...stroke('thin', palette.ink, palette) }),
    element('path', {
      d: `M${number(cx + rx * 0.7)} ${number(cy - ry * 0.7)}l8 -8`,
      ...stroke('thin', palette.ink, palette),
    }),
    label(cx + rx * 0.7 + 10, cy - ry * 0.7 - 9, 'A', { size: 14, weight: 640, color: palette.ink }),
  ];
}

/**
 * Names over the parts, each tied to its part: the part farthest left has the highest row and every name begins at its leader, so that no
 * leader crosses a name.
 */
function names(rig: Silhouette, scale: SceneScale, palette: Palette): string[] {
  const places = [...rig.places].sort((a, b) => b.from + b.length / 2 - (a.from + a.length / 2));
  const top = scale.y(rig.height) - 12;
  let free = -Infinity;
  return places.flatMap((p, i) => {
    const text = p.name.split(', ').slice(0, 2).join(', ');
    // Of two parts one over the other the lower is met at its side.
    const under = places.some((q) => q !== p && q.z > p.z && Math.abs(q.from - p.from) < p.length);
    const x = Math.max(free, scale.x(-p.from - p.length * (under ? 0.85 : 0.5)));
    free = x + 10;
    const y = top - (places.length - 1 - i) * ROW;
    const dot = scale.y(p.z + p.height * 0.6);
    return [
      element('path', {
        d: `M${number(x)} ${number(y - 3)}V${number(dot)}`,
        ...stroke('thin', palette.ink, palette),
      }),
      element('circle', { cx: x, cy: dot, r: 2, fill: palette.ink }),
      label(x + 4, y, text, { size: 12.5, color: palette.ink, halo: palette.paper }),
    ];
  });
}
