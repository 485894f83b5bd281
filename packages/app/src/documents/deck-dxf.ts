import { deckPlanOf } from '@spraywright/engine/drawings';
import type { Proof } from '@spraywright/engine/rig';

const MM = 1000;
const TEXT_HEIGHT = 40;

/**
 * The deck from above as DXF (R2007, in millimetres, to full size): x behind the front of the deck, y to the right
 * of its middle line, so that it is seen from above, each part as high above the deck as it stands; one layer each for deck, parts, numbers, supports and centres of gravity.
 *
 * @throws RangeError when the rig has no carrier
 */
export async function deckDxf(proof: Proof): Promise<string> {
  const plan = deckPlanOf(proof);
  if (plan === undefined) throw new RangeError('the rig has no carrier: there is no deck to draw');
  const { DxfWriter, point3d, Units } = await import('@tarikjabiri/dxf');
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  const at = ([x, y]: readonly [number, number]) => point3d(inMm(x), inMm(-y));
  for (const figure of plan.figures) {
    // Every part is there whole, at its true height: what is covered follows from that.
    if (figure.layer === 'covered') continue;
    const layerName = figure.layer;
    if (dxf.layer(layerName) === undefined) dxf.addLayer(layerName, WHITE, 'Continuous');
    if (figure.kind === 'circle') dxf.addCircle(at(figure.at), inMm(figure.radius), { layerName });
    else if (figure.kind === 'text') dxf.addText(at(figure.at), TEXT_HEIGHT, figure.text, { layerName });
    else
      dxf.addLWPolyline(
        figure.points.map((p) => ({ point: { x: inMm(p[0]), y: inMm(-p[1]) } })),
        { layerName, ...(figure.up === undefined ? {} : { elevation: inMm(figure.up) }) },
      );
  }
  return dxf.stringify();
}

/** Colour 7 of the DXF index: black on white, white on black. */
const WHITE = 7;

/** To a hundredth of a millimetre. */
const inMm = (metres: number) => Math.round(metres * MM * 100) / 100 + 0;
