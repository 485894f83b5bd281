/** Pixels of a metre at 1 : 1, with 96 pixels to the inch. */
const PIXELS_PER_METRE = 96 / 0.0254;

/** Scales that a scene may be drawn at, as 1 : n. */
const ROUND = [
  10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 175, 200, 250, 300, 350, 400, 500, 600, 750, 1000, 2000,
];

/** The ground plane of a scene: metres from the operator's feet to pixels of the drawing. */
export interface SceneScale {
  /** The scale is 1 : n. */
  readonly n: number;
  /** Pixels a metre. */
  readonly k: number;
  readonly ground: number;
  readonly x: (metres: number) => number;
  readonly y: (metres: number) => number;
}

/** The largest round scale at which a width and a height in metres fit into so many pixels. */
export function roundScale(width: number, height: number, pixels: { width: number; height: number }): number {
  const fits = (n: number) =>
    (width * PIXELS_PER_METRE) / n <= pixels.width && (height * PIXELS_PER_METRE) / n <= pixels.height;
  return ROUND.find(fits) ?? ROUND[ROUND.length - 1]!;
}

export function sceneScale(n: number, originX: number, ground: number): SceneScale {
  const k = PIXELS_PER_METRE / n;
  return { n, k, ground, x: (m) => originX + m * k, y: (m) => ground - m * k };
}
