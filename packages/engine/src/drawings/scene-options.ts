import type { UnitSystem } from '../quantity/index.ts';
import type { Palette } from './palette.ts';

/** How a scene is to be drawn. */
export interface ThrowSceneOptions {
  readonly width: number;
  /** Most height it may take [px]; the drawing is as low as its scale lets it be. */
  readonly height?: number | undefined;
  readonly units: UnitSystem;
  readonly palette: Palette;
  /** Item that is hovered or focused. */
  readonly lit?: string | undefined;
  /** While something is dragged the scale and the ground stay where they were. */
  readonly hold?: SceneHold | undefined;
}

/** A scene's scale and ground as they were when a drag began. */
export interface SceneHold {
  /** The scale is 1 : n. */
  readonly n: number;
  readonly ground: number;
  readonly height: number;
  /** The operator's feet [px]. */
  readonly origin: number;
  /** Distance of the target then [m]. */
  readonly standoff: number;
  /** Which of the two stays in its place. */
  readonly keeps: 'operator' | 'target';
}
