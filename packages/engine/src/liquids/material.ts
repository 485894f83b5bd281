import type { SourceId } from './sources.data.ts';

export type MaterialFamily = 'plastic' | 'metal' | 'ceramic' | 'elastomer';

/** Where a metal stands in the galvanic series of flowing sea water. */
export interface GalvanicPotential {
  /** Volt against the saturated calomel electrode; undefined when none was found. */
  readonly potential: number | undefined;
  /** The lower value a stainless steel falls to in crevices, under deposits and in stagnant chloride. */
  readonly activePotential?: number;
  readonly remark: string;
  readonly sources: readonly SourceId[];
  readonly seen: boolean;
}

/** A material that the liquid touches. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly family: MaterialFamily;
  readonly wettedParts: string;
  readonly note: string;
  /** Only of metals. */
  readonly galvanic: GalvanicPotential | undefined;
}
