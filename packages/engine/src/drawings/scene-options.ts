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
}
