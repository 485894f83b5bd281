import { display } from '../quantity/index.ts';
import type { DutyProof, Proof } from '../rig/index.ts';
import { arrowhead, asGiven, given, levelDimension, textWidth } from './dimension.ts';
import { drawGround, drawHose } from './ground.ts';
import { drawOperator, gripOf } from './operator.ts';
import type { Silhouette } from './rig-silhouette.ts';
import type { SceneScale } from './scene-scale.ts';
import { drawing, element, label, number, path, stroke } from './svg.ts';
import type { ThrowSceneOptions } from './scene-options.ts';
import { sprayLayout } from './spray-layout.ts';

/** Height of a boom over the ground where the brief gives none [m]; 20 in is the usual height of 80 degree tips, common practice. */
const BOOM_HEIGHT = 0.5;

/** A duty without a target for a gun: what leaves the rig, where, and how much. */
export function sprayScene(proof: Proof, duty: DutyProof, options: ThrowSceneOptions): string {
  const { width, palette } = options;
  const { scale, height, rig } = sprayLayout(proof, duty, options);
  const open = duty.duty.open[0]!;
  return drawing(
    width,
    height,
    `${duty.name}, from the side: ${outletWords(duty, options).join(', ')}`,
    ...drawGround(width, scale, palette),
    ...(open === 'boom' || open === 'bar'
      ? boom(duty, scale, options)
      : open === 'transfer'
        ? transfer(duty, rig.outlet, scale, options)
        : handGun(duty, rig.outlet, scale, options)),
    rig.draw(0, scale, palette, options.lit),
    label(14, 20, `Scale 1 : ${scale.n}${rig.exception}`, {
      size: 12,
      color: palette.ink2,
    }),
  );
}

/** Flow and pressure of each open outlet; those that read alike are counted. */
function outletWords(duty: DutyProof, { units }: ThrowSceneOptions): string[] {
  const counts = new Map<string, number>();
  for (const { flow, tipPressure } of duty.open.outlets) {
    const at = tipPressure > 0 ? ` at ${display(tipPressure, 'pressure', units)}` : '';
    const words = `${display(flow, 'flow', units)}${at}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts].map(([words, count]) => (count === 1 ? words : `${count} × ${words}`));
}

function figures(x: number, y: number, duty: DutyProof, options: ThrowSceneOptions): string[] {
  return outletWords(duty, options).map((text, i) =>
    label(x, y + i * 17, text, {
      size: 14.5,
      weight: 640,
      color: options.palette.liquid,
      halo: options.palette.paper,
    }),
  );
}

/** A boom or bar seen along its length: one fan stands for all, the wetted ground lies behind. */
function boom(duty: DutyProof, scale: SceneScale, options: ThrowSceneOptions): string[] {
  const { palette, units, width } = options;
  const height = duty.duty.outletHeight ?? BOOM_HEIGHT;
  const [x, y] = [scale.x(0.35), scale.y(height)];
  const half = 0.12 * scale.k;
  const rate = duty.duty.application;
  const out = [
    element('path', {
      d: path(
        [
          [x, y + 2],
          [x - half, scale.ground],
          [x + half, scale.ground],
        ],
        true,
      ),
      fill: palette.liquidTint,
    }),
    element('path', {
      d: path([
        [x - half, scale.ground],
        [x, y + 2],
        [x + half, scale.ground],
      ]),
      ...stroke('farthest', palette.liquid, palette),
    }),
    element('path', {
      d: `M${number(x)} ${number(y)}V${number(scale.ground)}`,
      ...stroke('liquid', palette.liquid, palette),
    }),
    element(
      'g',
      { 'data-item': 'boom' },
      element('path', {
        d: `M${number(scale.x(0))} ${number(scale.y(height + 0.25))}H${number(x)}V${number(y)}`,
        ...stroke('outline', palette.ink, palette),
      }),
      element('rect', {
        x: x - 4,
        y: y - 5,
        width: 8,
        height: 8,
        ...stroke('outline', palette.ink, palette),
        fill: palette.paper,
      }),
    ),
    element('path', {
      d: `M${number(x)} ${number(scale.ground - 2.5)}H${number(width)}`,
      ...stroke('liquid', palette.liquid, palette),
      'stroke-width': 3 * palette.weight,
      'stroke-linecap': 'butt',
    }),
    ...figures(x + 20, scale.ground - 66, duty, options),
  ];
  if (rate === undefined) return out;
  const texts: [string, string][] = [
    [asGiven(display(rate.rate, 'dose', units)), 'on the ground'],
    [asGiven(display(rate.width, 'length', units)), 'wide'],
  ];
  texts.forEach(([text, words], i) => {
    const y1 = scale.ground - 24 - (texts.length - 1 - i) * 23;
    const box = textWidth(text, 13.5) + 13;
    out.push(
      given(x + 20 + box / 2, y1, text, palette),
      label(x + 26 + box, y1 + 4.4, words, { size: 12, color: palette.ink2, halo: palette.paper }),
    );
  });
  const speed = asGiven(display(rate.speed, 'speed', units));
  const y1 = scale.ground + 28;
  const from = scale.x(0);
  out.push(
    element('path', {
      d: `M${number(from)} ${number(y1)}H${number(from - 90)}`,
      ...stroke('thin', palette.ink, palette),
    }),
    arrowhead(from - 90, y1, -1, 0, palette.ink),
    given(from + 12 + textWidth(speed, 13.5) / 2, y1, speed, palette),
    label(from + 30 + textWidth(speed, 13.5), y1 + 4.4, 'drives that way', { size: 12, color: palette.ink2 }),
  );
  return out;
}

/** A hose to another vessel, which is drawn as a neighbour. */
function transfer(
  duty: DutyProof,
  outlet: Silhouette['outlet'],
  scale: SceneScale,
  options: ThrowSceneOptions,
): string[] {
  const { palette, units } = options;
  const height = duty.duty.outletHeight ?? 1;
  const left = scale.x(2.1);
  const right = scale.x(3.9);
  const y = scale.y(height);
  const inlet = left + 0.3 * scale.k;
  return [
    element('path', {
      d: `M${number(left)} ${number(scale.ground)}V${number(y + 8)}H${number(right)}V${number(scale.ground)}`,
      ...stroke('neighbour', palette.ink2, palette),
    }),
    element('path', {
      d:
        `M${number(scale.x(0))} ${number(scale.y(outlet.z))}C${number(scale.x(0.7))} ${number(scale.y(outlet.z))} ${number(scale.x(0.5))} ${number(scale.ground - 3)} ${number(scale.x(1))} ${number(scale.ground - 3)}` +
        `C${number(scale.x(1.8))} ${number(scale.ground - 3)} ${number(left - 14)} ${number(y - 16)} ${number(inlet - 6)} ${number(y - 12)}Q${number(inlet)} ${number(y - 12)} ${number(inlet)} ${number(y + 6)}`,
      'data-item': 'transfer-hose',
      ...stroke('liquid', palette.liquid, palette),
    }),
    ...figures(inlet + 14, y - 14, duty, options),
    element('path', {
      d: `M${number(right + 14)} ${number(y)}V${number(scale.ground)}`,
      ...stroke('thin', palette.ink, palette),
    }),
    arrowhead(right + 14, y, 0, -1, palette.ink),
    arrowhead(right + 14, scale.ground - 1.5, 0, 1, palette.ink),
    given(right + 40, (y + scale.ground) / 2, asGiven(display(height, 'length', units)), palette),
  ];
}

/** A gun in the hand without a target: it is drawn held low, and no reach is shown. */
function handGun(
  duty: DutyProof,
  outlet: Silhouette['outlet'],
  scale: SceneScale,
  options: ThrowSceneOptions,
): string[] {
  const { palette, units } = options;
  const feet = 2;
  const tip = { x: 0.62, z: 0.78, elevation: -0.5 };
  const own = { ...scale, x: (m: number) => scale.x(m + feet) };
  const [x, y] = [own.x(tip.x), own.y(tip.z)];
  const grip = gripOf(tip);
  const end = { x: own.x(grip.x), y: own.y(grip.z) };
  const spray = [
    [x, y],
    [own.x(tip.x + 1.05), scale.ground - 2],
    [own.x(tip.x + 1.6), scale.ground - 2],
  ] as [number, number][];
  const hoseOut = duty.duty.hoseOut;
  const from = { x: scale.x(-outlet.from), y: scale.y(outlet.z) };
  return [
    drawHose(
      from,
      end,
      { edge: scale.x(0), cut: (hoseOut ?? 0) > feet * 1.1, lit: options.lit === 'hose' },
      scale,
      palette,
    ),
    element('path', { d: path(spray, true), fill: palette.liquidTint }),
    element('path', {
      d: path([spray[1]!, spray[0]!, spray[2]!]),
      ...stroke('farthest', palette.liquid, palette),
    }),
    drawOperator(tip, own, palette),
    ...figures(x + 16, y - 10, duty, options),
    label(x + 16, y + 8, 'no reach was asked', { size: 12, color: palette.ink2, halo: palette.paper }),
    ...(hoseOut === undefined
      ? []
      : [
          levelDimension(
            {
              from: scale.x(0),
              to: own.x(0),
              y: scale.ground + 28,
              above: scale.ground + 4,
              text: asGiven(display(hoseOut, 'length', units)),
              boxed: true,
            },
            palette,
          ),
        ]),
  ];
}
