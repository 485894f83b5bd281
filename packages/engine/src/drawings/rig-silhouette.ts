import type { DutyProof, Proof } from '../rig/index.ts';
import type { Palette } from './palette.ts';
import { drawEngine, drawReel, drawTank, drawWheel } from './rig-parts.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, number, stroke } from './svg.ts';

/** Length, deck height and wheels of a usual carrier, for rigs whose proof does not carry sizes [m]. */
interface Usual {
  readonly length: number;
  readonly deck: number;
  readonly wheel: number;
  /** Wheel centres as shares of the deck's length, from the hose end. */
  readonly wheels: readonly number[];
  /** Axles of the vehicle that carries it, from the hose end [m]; undefined where the brief does not tell them. */
  readonly vehicle?: readonly number[];
}

const USUAL: Readonly<Record<string, Usual>> = {
  skid: { length: 1.6, deck: 0.15, wheel: 0, wheels: [] },
  'three-point': { length: 1.1, deck: 0.45, wheel: 0, wheels: [] },
  cart: { length: 2, deck: 0.62, wheel: 0.62, wheels: [0.46] },
  wagon: { length: 1.7, deck: 0.5, wheel: 0.44, wheels: [0.2, 0.8] },
  'tandem-trailer': { length: 4.9, deck: 0.78, wheel: 0.72, wheels: [0.34, 0.52] },
  'utility-bed': { length: 1.2, deck: 0.85, wheel: 0.6, wheels: [0.2] },
};

/** A part of the silhouette: from the hose end forward, its underside over the ground, its length and height [m]. */
interface Place {
  readonly kind: 'tank' | 'drive' | 'reel';
  readonly item: string;
  readonly name: string;
  readonly from: number;
  readonly z: number;
  readonly length: number;
  readonly height: number;
}

/** Height of the bed of a usual utility vehicle, over which its rig's sizes count [m]. */
const BED = 0.77;

export interface Silhouette {
  /** From the hose end to the far end [m]. */
  readonly length: number;
  readonly height: number;
  /** Height of the bed that it stands on, over which its own heights count [m]. */
  readonly lift: number;
  /** What of it is not drawn to scale, in words. */
  readonly exception: string;
  /** Where the hose leaves, from the hose end forward and over the ground [m]. */
  readonly outlet: { readonly from: number; readonly z: number };
  readonly places: readonly Place[];
  /** Draws it with its hose end at `right` [m]. */
  readonly draw: (right: number, scale: SceneScale, palette: Palette, lit?: string) => string;
}

/** The rig of a scene: tank with its level, engine, reel, and wheels by the carrier's form. */
export function rigSilhouette(proof: Proof, duty: DutyProof): Silhouette {
  const { placement } = proof;
  const carrier = proof.parts.find((p) => p.kind === 'carrier');
  const form = placement?.carrier.form ?? formByName(carrier?.name);
  const typical = USUAL[form] ?? USUAL['skid']!;
  const lift = form === 'utility-bed' ? BED : 0;
  const length = placement?.carrier.deckLength ?? typical.length;
  const deckZ = placement === undefined ? typical.deck : placement.carrier.deckHeight + lift;
  const axles = placement?.supports.filter((s) => s.id.startsWith('axle')) ?? [];
  const vehicle =
    placement?.supports.filter((s) => s.id.startsWith('vehicle')).map((s) => length - s.x) ?? [];
  const usual: Usual = {
    ...typical,
    ...(vehicle.length === 0 ? {} : { vehicle }),
    length,
    deck: deckZ,
    wheels: axles.length === 0 ? typical.wheels : axles.map((s) => (length - s.x) / length),
  };
  const places = placement === undefined ? usualPlaces(proof, length, deckZ) : placedParts(placement, lift);
  const reel = places.find((p) => p.kind === 'reel');
  return {
    length,
    lift,
    height: Math.max(deckZ + 0.3, ...places.map((p) => p.z + p.height)),
    exception:
      placement === undefined
        ? '; rig not to scale'
        : form === 'skid'
          ? ''
          : form === 'three-point' || form === 'utility-bed'
            ? ', but for the vehicle'
            : ', but for wheels and drawbar',
    outlet:
      reel === undefined
        ? { from: 0, z: deckZ + 0.15 }
        : { from: reel.from + reel.length / 2, z: reel.z + reel.height * 0.12 },
    places,
    draw: (right, scale, palette, lit) => {
      const box = (p: Place) => ({
        x: scale.x(right - p.from - p.length),
        foot: scale.y(p.z),
        width: p.length * scale.k,
        height: p.height * scale.k,
      });
      return element(
        'g',
        {},
        ...wheels(form, usual, length, right, scale, palette),
        deck(length, right, deckZ, scale, palette),
        ...places.map((p) =>
          p.kind === 'tank'
            ? drawTank(box(p), duty.duty.tankLevel, palette, p.item === lit)
            : p.kind === 'drive'
              ? drawEngine(box(p), p.item, palette, p.item === lit)
              : drawReel(box(p), p.item, palette, p.item === lit),
        ),
      );
    },
  };
}

/** Parts where the proof places them; the drive is the engine, else the pump. */
function placedParts(placement: NonNullable<Proof['placement']>, lift: number): Place[] {
  const { parts, carrier } = placement;
  const drive = ['engine', 'motor-pump', 'pump'].flatMap((kind) => parts.filter((p) => p.kind === kind))[0];
  return parts.flatMap((p): Place[] => {
    const kind = p.kind === 'tank' || p.kind === 'reel' ? p.kind : p === drive ? 'drive' : undefined;
    if (kind === undefined) return [];
    return [
      {
        kind,
        item: p.item,
        name: p.name,
        from: carrier.deckLength - p.x - p.length / 2,
        z: p.z + lift,
        length: p.length,
        height: p.height,
      },
    ];
  });
}

/** Without places: tank at the far end, reel at the hose end, the drive between them, in usual sizes. */
function usualPlaces(proof: Proof, length: number, z: number): Place[] {
  const part = (kind: string) => proof.parts.find((p) => p.kind === kind);
  const tank = part('tank');
  const reel = part('reel');
  const drive = part('engine') ?? part('motor-pump') ?? part('pump');
  const gap = Math.min(0.08, length * 0.03);
  const reelSize = reel === undefined ? 0 : Math.min(0.75, length * 0.32);
  const tankLong = tank === undefined ? 0 : length * 0.5;
  const room = length - reelSize - tankLong - 2 * gap;
  const long = Math.max(0.2, Math.min(0.45, room));
  const place = (
    kind: Place['kind'],
    p: { readonly item: string; readonly name: string } | undefined,
    sizes: Pick<Place, 'from' | 'length' | 'height'>,
  ): Place[] => (p === undefined ? [] : [{ kind, item: p.item, name: p.name, z, ...sizes }]);
  return [
    ...place('tank', tank, {
      from: length - tankLong,
      length: tankLong,
      height: Math.min(1.4, tankLong * 0.75),
    }),
    ...place('drive', drive, {
      from: reelSize + gap + Math.max(0, room - long) / 2,
      length: long,
      height: Math.min(0.5, long * 1.1),
    }),
    ...place('reel', reel, { from: 0, length: reelSize, height: reelSize }),
  ];
}

function deck(length: number, right: number, height: number, scale: SceneScale, palette: Palette): string {
  const thick = Math.max(1.5, 0.09 * scale.k);
  const [x, y] = [scale.x(right - length), scale.y(height)];
  return element('rect', {
    x,
    y,
    width: length * scale.k,
    height: thick,
    ...stroke('outline', palette.ink, palette),
    'stroke-width': 1.2 * palette.weight,
    fill: thick < 4 ? palette.ink : palette.paper,
  });
}

function wheels(
  form: string,
  usual: Usual,
  length: number,
  right: number,
  scale: SceneScale,
  palette: Palette,
): string[] {
  const ink = { ...stroke('outline', palette.ink, palette), 'stroke-width': 1.4 * palette.weight };
  const neighbour = stroke('neighbour', palette.ink2, palette);
  const x = (share: number) => number(scale.x(right - length * share));
  const back = (metres: number) => number(scale.x(right - length - metres));
  const y = (metres: number) => number(scale.y(metres));
  const legs = [0.06, 0.94].map((s) => `M${x(s)} ${y(usual.deck)}V${number(scale.ground)}`).join('');
  switch (form) {
    case 'three-point':
      // The tractor it hangs on is a neighbour.
      return [
        element('path', {
          d: `M${back(0)} ${y(0.5)}L${back(0.55)} ${y(0.42)}M${back(0)} ${y(1)}L${back(0.6)} ${y(0.85)}`,
          ...ink,
        }),
        ...(usual.vehicle === undefined
          ? [drawNeighbourWheel(right - length - 1.25, 0.66, scale, palette)]
          : usual.vehicle.map((from, i) =>
              drawNeighbourWheel(right - from, i === usual.vehicle!.length - 1 ? 0.66 : 0.4, scale, palette),
            )),
        element('path', { d: `M${back(0.75)} ${y(1.2)}H${back(2.6)}V${y(0.6)}`, ...neighbour }),
      ];
    case 'utility-bed':
      return [
        ...(usual.vehicle ?? [length * 0.35, length * 2.1]).map((from) =>
          drawNeighbourWheel(right - from, 0.31, scale, palette),
        ),
        element('path', {
          d: `M${x(-0.06)} ${y(0.8)}H${x(2.45)}V${y(0.42)}M${x(1.02)} ${y(0.85)}L${x(1.15)} ${y(1.8)}H${x(1.85)}L${x(2.05)} ${y(0.85)}`,
          ...neighbour,
        }),
      ];
    case 'cart':
    case 'wagon':
    case 'tandem-trailer':
      return [
        element('path', {
          d: `M${back(-0.1)} ${y(usual.deck)}L${back(0.85)} ${y(0.42)}h${number(-0.12 * scale.k)}`,
          ...ink,
        }),
        ...usual.wheels.map((share) =>
          drawWheel(scale.x(right - length * share), scale.ground, (usual.wheel / 2) * scale.k, palette),
        ),
      ];
    default:
      return [element('path', { d: legs, ...ink })];
  }
}

function drawNeighbourWheel(at: number, r: number, scale: SceneScale, palette: Palette): string {
  return element('circle', {
    cx: scale.x(at),
    cy: scale.y(r),
    r: r * scale.k,
    ...stroke('neighbour', palette.ink2, palette),
  });
}

/** The form in a carrier's name, by the words of the trade, where the proof does not say it. */
function formByName(name: string | undefined): string {
  const text = (name ?? '').toLowerCase();
  const found = (
    [
      ['three-point', 'three-point'],
      ['trailer', 'tandem-trailer'],
      ['wagon', 'wagon'],
      ['cart', 'cart'],
      ['utility', 'utility-bed'],
    ] as const
  ).find(([word]) => text.includes(word));
  return found?.[1] ?? 'skid';
}
