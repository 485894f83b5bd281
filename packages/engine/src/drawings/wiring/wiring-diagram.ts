import { display, type UnitSystem } from '../../quantity/index.ts';
import type { Wiring, WiringCircuit } from '../../rig/index.ts';
import { balloon } from '../balloon.ts';
import type { Palette } from '../palette.ts';
import { drawing, element, label, number, stroke } from '../svg.ts';

export interface WiringOptions {
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
  /** Number of each part, the same everywhere. */
  readonly numbers: ReadonlyMap<string, number>;
}

const ROW = 74;
const TOP = 40;
const BUS = 86;

/**
 * The wiring of a rig, drawn by us after IEC 60617: battery at the left, plus over the fuse and switch of each circuit to
 * what draws current, and back to minus. Each conductor carries its size and length.
 */
export function wiringDiagram(wiring: Wiring, options: WiringOptions): string {
  const { width, palette } = options;
  const rows = wiring.circuits.length + (wiring.charging === undefined ? 0 : 1);
  const height = TOP + rows * ROW + 26;
  const right = width - 46;
  const last = TOP + (rows - 1) * ROW + 22;
  const thick = stroke('outline', palette.ink, palette);
  const line = (d: string) => element('path', { d, ...thick });
  return drawing(
    width,
    height,
    `Wiring: ${wiring.circuits.length} circuits from ${wiring.supply}, ${display(wiring.voltage, 'voltage', options.units)}.`,
    // Plus along the left, minus along the right and back under everything.
    line(`M${BUS} ${TOP}V${number(last)}`),
    line(`M${number(right)} ${TOP + 22}V${number(height - 16)}H34V${number(TOP + 28)}`),
    line(`M34 ${number(TOP + 14)}V${TOP}H${BUS}`),
    battery(34, TOP + 14, wiring, options),
    label(BUS - 4, TOP - 8, 'plus', { size: 12, color: palette.ink2, anchor: 'end' }),
    label(right + 6, height - 20, 'minus', { size: 12, color: palette.ink2 }),
    ...wiring.circuits.map((c, i) => circuit(c, TOP + i * ROW + 22, right, options)),
    ...(wiring.charging === undefined
      ? []
      : [charging(wiring.charging, TOP + (rows - 1) * ROW + 22, right, options)]),
  );
}

/** A cell: the long thin plate is plus. */
function battery(x: number, y: number, wiring: Wiring, { palette, units, numbers }: WiringOptions): string {
  const thin = stroke('outline', palette.ink, palette);
  const count = wiring.battery === undefined ? undefined : numbers.get(wiring.battery);
  return (
    element('path', { d: `M${x - 16} ${y}H${x + 16}`, ...thin }) +
    element('path', { d: `M${x - 8} ${y + 7}H${x + 8}`, ...thin, 'stroke-width': 3.4 * palette.weight }) +
    element('path', { d: `M${x} ${y + 7}V${y + 14}`, ...thin }) +
    label(x + 20, y + 14, display(wiring.voltage, 'voltage', units), {
      size: 12.5,
      weight: 640,
      color: palette.ink,
    }) +
    (count === undefined ? '' : balloon(count, x - 16, y + 26, false, palette))
  );
}

/** Fuse, switch and load of one circuit, with the cable over its conductors. */
function circuit(
  c: WiringCircuit,
  y: number,
  right: number,
  { palette, units, numbers }: WiringOptions,
): string {
  const thick = stroke('outline', palette.ink, palette);
  const [fuse, contact, load] = [BUS + 34, BUS + 124, right - 150];
  const path = (d: string) => element('path', { d, ...thick });
  const words = (x: number, dy: number, text: string, weight = 500) =>
    label(x, y + dy, text, { size: 12.5, weight, color: palette.ink });
  const cable =
    c.cable === undefined
      ? 'cable unknown: ask an electrician'
      : `AWG ${c.cable.label}, ${display(c.oneWay, 'length', units)} each way`;
  const count = numbers.get(c.item);
  return (
    path(`M${BUS} ${y}H${fuse}`) +
    (c.fuse === null
      ? path(`M${fuse} ${y}H${contact}`)
      : element('rect', { x: fuse, y: y - 6, width: 34, height: 12, ...thick }) +
        path(`M${fuse} ${y}H${contact}`)) +
    // An open contact: its blade stands off the second pole.
    path(`M${contact} ${y}L${contact + 30} ${y - 14}`) +
    element('circle', { cx: contact, cy: y, r: 2.6, fill: palette.ink }) +
    element('circle', { cx: contact + 32, cy: y, r: 2.6, fill: palette.ink }) +
    path(`M${contact + 32} ${y}H${number(load - 14)}`) +
    element('circle', { cx: load, cy: y, r: 14, ...thick, fill: palette.paper }) +
    label(load, y + 5, 'M', { size: 14, weight: 640, color: palette.ink, anchor: 'middle' }) +
    path(`M${number(load + 14)} ${y}H${number(right)}`) +
    (c.fuse === null ? words(fuse, -9, 'no fuse: starter') : words(fuse, -11, `${c.fuse} A`, 640)) +
    words(contact + 46, -8, cable, 640) +
    words(contact + 46, 17, `${display(c.current, 'current', units)}${lost(c, units)}`) +
    words(contact + 46, 33, c.name) +
    (count === undefined ? '' : balloon(count, load + 30, y - 14, false, palette))
  );
}

function lost(c: WiringCircuit, units: UnitSystem): string {
  return c.drop === undefined
    ? ''
    : `, loses ${display(c.drop, 'voltage', units)} of ${display(c.allowed, 'voltage', units)} allowed`;
}

/** The coil of the engine feeds the battery through what its maker gives. */
function charging(
  { item, current }: NonNullable<Wiring['charging']>,
  y: number,
  right: number,
  { palette, units, numbers }: WiringOptions,
): string {
  const thick = stroke('outline', palette.ink, palette);
  const load = right - 150;
  const count = numbers.get(item);
  return (
    element('path', { d: `M${BUS} ${y}H${number(load - 14)}`, ...thick }) +
    element('circle', { cx: load, cy: y, r: 14, ...thick, fill: palette.paper }) +
    label(load, y + 5, 'G', { size: 14, weight: 640, color: palette.ink, anchor: 'middle' }) +
    element('path', { d: `M${number(load + 14)} ${y}H${number(right)}`, ...thick }) +
    label(
      BUS + 34,
      y - 8,
      `charging coil of the engine, ${display(current, 'current', units)}; its rectifier, cable and fuse: maker's sheet`,
      {
        size: 12.5,
        color: palette.ink,
      },
    ) +
    (count === undefined ? '' : balloon(count, load + 30, y - 14, false, palette))
  );
}
