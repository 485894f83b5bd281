import type { UnitSystem } from '../../quantity/index.ts';
import type { Palette } from '../palette.ts';

/** How the views of a rig are to be drawn. */
export interface ViewOptions {
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
  readonly lit?: string | undefined;
}
