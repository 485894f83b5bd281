import type { Catalogue, Layout } from '../../catalogue/index.ts';
import type { Brief } from '../brief.ts';
import type { DutyLiquid } from '../proof/liquid.ts';
import type { Site } from '../proof/site.ts';

/** What the choice of outlet lines starts from. */
export interface LineContext {
  readonly catalogue: Catalogue;
  readonly layout: Layout;
  readonly brief: Brief;
  readonly site: Site;
  readonly liquids: ReadonlyMap<string, DutyLiquid>;
  /** What is asked is multiplied by this, so that the choice is not thin. */
  readonly spare: number;
  /** Tip pressures found so far, by duty, tip and stream: the throw behind them is the dear part. */
  readonly tipPressures: Map<string, number | undefined>;
}
