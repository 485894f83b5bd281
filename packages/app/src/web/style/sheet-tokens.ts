import { PALETTES } from '@spraywright/engine/drawings';

/** The colours of the sheets as custom properties, from the same table that the drawings use. */
export function sheetTokens(): string {
  const rule = (selector: string, palette: (typeof PALETTES)[keyof typeof PALETTES]) =>
    `${selector}{${Object.entries(palette)
      .map(([name, value]) => `--${name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}:${value}`)
      .join(';')}}`;
  return [
    rule(':root', PALETTES.day),
    rule(':root[data-sheet=night]', PALETTES.night),
    `@media print{${rule(':root,:root[data-sheet=night]', PALETTES.print)}}`,
  ].join('\n');
}
