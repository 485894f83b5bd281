import { display } from '../../quantity/index.ts';
import type { DutyProof, Proof } from '../../rig/index.ts';
import { drawing, label } from '../svg.ts';
import { endView } from './end-view.ts';
import { sideView } from './side-view.ts';
import { massText } from './support-arrows.ts';
import { topView } from './top-view.ts';
import type { ViewOptions } from './view-options.ts';
import { viewsLayout } from './views-layout.ts';

/**
 * The rig alone from the side, from behind and from above, to one scale, with what its supports and wheels bear against their ratings,
 * its centre of mass and the slope at which it tips. Undefined for a rig whose parts have no places.
 */
export function rigViews(proof: Proof, duty: DutyProof, options: ViewOptions): string | undefined {
  const layout = viewsLayout(proof, duty, options);
  if (layout === undefined) return undefined;
  const { palette, width } = options;
  const { end, top, k } = layout;
  const name = (at: number, y: number, text: string, anchor: 'start' | 'middle' = 'start') =>
    label(at, y, text, { size: 12, color: palette.ink2, anchor, halo: palette.paper });
  return drawing(
    width,
    layout.height,
    sentence(proof, duty, options),
    ...sideView(layout, options),
    ...topView(layout, proof, duty, options),
    ...endView(layout, duty, options),
    name(14, 18, `Scale 1 : ${layout.n}${layout.rig.exception}`),
    name(14, top.middle - top.half * k - 12, 'From above, front at the left'),
    name(
      end.middle,
      width < 560 ? end.ground - 12 - k * layout.rig.height : 18,
      'From behind, tank full',
      'middle',
    ),
  );
}

function sentence({ placement }: Proof, duty: DutyProof, { units }: ViewOptions): string {
  const { supports, tip, centre } = placement!;
  const loads = supports.map(
    (s) =>
      `${s.name} ${massText(s.byDuty[duty.id] ?? s.full, units)} now, ${massText(s.full, units)} full${s.rating === undefined ? '' : `, at most ${massText(s.rating, units)}`}`,
  );
  return [
    `The rig from the side, from behind and from above: ${massText(centre.full.mass, units)} full`,
    ...loads,
    ...(tip === undefined ? [] : [`tips over at ${display(tip.angle, 'angle', units)}`]),
  ].join('; ');
}
