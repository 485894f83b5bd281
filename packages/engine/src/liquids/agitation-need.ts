import { AGITATION_CONFLICT, AGITATION_SHARES } from './handling.data.ts';
import { liquidOf } from './liquid-of.ts';
import type { AgitationClass } from './liquid.ts';
import type { SourceId } from './sources.data.ts';

/** How a tank must be stirred. */
export interface AgitationNeed {
  readonly class: AgitationClass;
  /** Share of the tank to be moved in a second [1/s]. */
  readonly share: number;
  /** Liquids that ask for it. */
  readonly liquids: readonly string[];
  readonly notes: readonly string[];
  readonly source: SourceId;
}

const CLASSES: readonly AgitationClass[] = ['none', 'solution', 'emulsion', 'suspension'];

/**
 * How strongly a tank must be stirred: the most demanding liquid decides.
 *
 * @param liquids liquids with a flag for those mixed as a suspension.
 * @throws RangeError for an unknown liquid or an empty list.
 */
export function agitationNeed(
  liquids: readonly { readonly liquid: string; readonly suspension?: boolean | undefined }[],
): AgitationNeed {
  if (liquids.length === 0) throw new RangeError('liquids is empty; name at least one liquid');
  const needs = liquids.map((l) => {
    const liquid = liquidOf(l.liquid);
    return { liquid, class: l.suspension === true ? ('suspension' as const) : liquid.agitation };
  });
  const rank = Math.max(...needs.map((n) => CLASSES.indexOf(n.class)));
  const worst = CLASSES[rank] ?? 'suspension';
  const { perMinute, source } = AGITATION_SHARES[worst];
  const notes = needs
    .filter((n) => n.liquid.agitationNote !== '')
    .map((n) => `${n.liquid.name}: ${n.liquid.agitationNote}`);
  return {
    class: worst,
    share: perMinute / 60,
    liquids: needs.filter((n) => n.class === worst).map((n) => n.liquid.id),
    notes: worst === 'none' ? notes : [...notes, AGITATION_CONFLICT],
    source,
  };
}
