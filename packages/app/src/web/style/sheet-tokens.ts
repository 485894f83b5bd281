import { PALETTES } from '@spraywright/engine/drawings';

/** The colours of the sheets as custom properties, from the same table that the drawings use. */
function sheetTokens(): string {
  const rule = (selector: string, palette: (typeof PALETTES)[keyof typeof PALETTES]) =>
    `${selector}{${Object.entries(palette)
      .map(([name, value]) => `--${name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}:${value}`)
      .join(';')}}`;
  return [
    rule(':root', PALETTES.day),
    rule(':root[data-sheet=night]', PALETTES.night),
    rule(':root[data-sheet=sun]', PALETTES.sun),
    `@media print{${rule(':root,:root[data-sheet]', PALETTES.print)}}`,
  ].join('\n');
}

/** Puts the colours of the sheets into the page. */
export function layOutSheet(): void {
  const tokens = document.createElement('style');
  tokens.textContent = sheetTokens();
  document.head.append(tokens);
}
