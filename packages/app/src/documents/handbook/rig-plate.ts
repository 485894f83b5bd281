import { FONTS } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import { driveOf, highestPressureOf, type Proof, type Rig } from '@spraywright/engine/rig';
import { escaped } from '../chapters/on-page.ts';
import { fitted, LINE } from '../paper/faces.ts';
import { INK, INK2 } from '../paper/sheet.ts';
import type { QuoteOptions } from '../quote-options.ts';
import { addressCode } from './address-code.ts';

/** Size of a plate, px. */
export const PLATE = { width: 420, height: 250 } as const;
const MARGIN = 14;
/** Side of the square code, px: 32 mm on a plate of 112 mm. */
const CODE = 120;
/** Width of shop and title beside the serial number, px. */
const TITLE = (PLATE.width - 2 * MARGIN) / 2 + 60;

export interface PlateOptions extends QuoteOptions {
  readonly serial: string;
  /** Where the page of this machine can be found; drawn as a square code. */
  readonly address?: string;
}

/** The plate that is riveted to the frame: whose machine it is and what it must not exceed. */
export function rigPlate(rig: Rig, proof: Proof, options: PlateOptions): string {
  const { shop, serial, date, units, address } = options;
  const { width, height } = PLATE;
  const cells = plateCells(rig, proof, units);
  const rows = Math.ceil(cells.length / 2);
  const top = 74;
  const rowHeight = (height - top - 22) / rows;
  const right = width - MARGIN - (address === undefined ? 0 : CODE + 8);
  const half = (right - MARGIN) / 2;
  const line = (x1: number, y1: number, x2: number, y2: number) =>
    `<path d="M${x1} ${y1}L${x2} ${y2}" fill="none" stroke="${INK}" stroke-width="0.9"/>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `<rect x="1" y="1" width="${width - 2}" height="${height - 2}" fill="#ffffff" stroke="${INK}" stroke-width="1.8"/>`,
    ...[
      [9, 9],
      [width - 9, 9],
      [9, height - 9],
      [width - 9, height - 9],
    ].map(([x, y]) => `<circle cx="${x}" cy="${y}" r="3" fill="none" stroke="${INK}" stroke-width="0.9"/>`),
    text(shop.name, MARGIN + 6, 12, TITLE, 20, 15, true),
    text(`${shop.address}; ${date}`, MARGIN + 6, 31, TITLE, 14, 9.5, false, INK2),
    text(proof.title, MARGIN + 6, 47, TITLE, 22, 13, true),
    text('Serial', width - MARGIN - 128, 12, 118, 12, 9.5, false, INK2),
    text(serial, width - MARGIN - 128, 26, 118, 40, 24, true),
    ...cells.map(([caption, value], i) => {
      const x = MARGIN + (i % 2) * half;
      const y = top + Math.floor(i / 2) * rowHeight;
      return (
        (i % 2 === 0 ? line(MARGIN, y, right, y) : line(x, y, x, y + rowHeight)) +
        text(caption, x + 6, y + 2, half - 12, 12, 9, false, INK2) +
        text(value, x + 6, y + 13, half - 12, rowHeight - 14, 13, true)
      );
    }),
    ...(address === undefined ? [] : [codeAt(address, width - MARGIN - CODE, top + 8)]),
    line(MARGIN, height - 22, width - MARGIN, height - 22),
    text(
      'Let the pressure off before opening a joint. Read the handbook and the product label.',
      MARGIN + 6,
      height - 19,
      width - 2 * MARGIN - 12,
      14,
      10,
      false,
    ),
    '</svg>',
  ].join('');
}

/** The square code of an address in its place on the plate. */
function codeAt(address: string, x: number, y: number): string {
  return addressCode(address).replace(
    /^<svg ([^>]*?)width="\d+" height="\d+"/,
    `<svg $1x="${x}" y="${y}" width="${CODE}" height="${CODE}"`,
  );
}

/** What the plate tells, caption and value; what is not known is said. */
export function plateCells(rig: Rig, proof: Proof, units: QuoteOptions['units']): [string, string][] {
  const pressure = highestPressureOf(proof);
  const full = proof.placement?.centre.full.mass;
  const drive = driveOf(rig);
  const turns =
    drive?.by === 'engine'
      ? `${drive.engine.name}, ${display(drive.engineSpeed, 'rotation', units)}`
      : drive?.by === 'pto'
        ? `PTO at ${display(drive.ptoSpeed, 'rotation', units)}`
        : (proof.parts.find((p) => p.kind === 'motor-pump')?.name ?? 'unknown');
  const tank = [...rig.items.values()].find(({ part }) => part.kind === 'tank')!.part;
  return [
    ['Empty and dry', display(proof.bill.dryMass, 'mass', units)],
    ['Full weight, tank full', full === undefined ? 'unknown: no carrier' : display(full, 'mass', units)],
    ['Highest pressure it makes', pressure === undefined ? 'unknown' : display(pressure, 'pressure', units)],
    ['Tank', tank.kind === 'tank' ? display(tank.volume, 'volume', units) : 'unknown'],
    ['Drive', turns],
    [
      'Liquids it was proven with',
      rig.brief.liquids
        .filter((l) => l.use === 'spray')
        .map((l) => l.name)
        .join(', '),
    ],
  ];
}

/** A text in its box, made smaller until it fits, never cut. */
function text(
  words: string,
  x: number,
  y: number,
  width: number,
  height: number,
  size: number,
  bold: boolean,
  color: string = INK,
): string {
  const { size: fit, lines } = fitted(words, 'condensed', bold, { width, height, size });
  return lines
    .map(
      (one, i) =>
        `<text x="${x}" y="${(y + fit * (0.92 + i * LINE)).toFixed(2)}" font-family="${FONTS.condensed}" font-size="${fit}" font-weight="${bold ? 640 : 500}" fill="${color}">${escaped(one)}</text>`,
    )
    .join('');
}
