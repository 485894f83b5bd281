import { fileURLToPath } from 'node:url';
import { FONTS } from '@spraywright/engine/drawings';
import { readFontMetrics, type FontMetrics } from './font-metrics.ts';

/** The two families of a sheet: sentences, and figures with labels. */
export type Family = 'semi' | 'condensed';

/** A stretch of text that one face can set. */
interface Run {
  readonly text: string;
  /** Name under which the paper knows the face. */
  readonly font: string;
}

// From this file's place in `src/documents/paper` or `dist/documents/paper`.
const asset = (name: string) => fileURLToPath(new URL(`../../../assets/fonts/${name}.ttf`, import.meta.url));
const face = (normal: string, bold: string) => ({ normal: asset(normal), bold: asset(bold) });

const GREEK = { semi: 'Sheet Semi Greek', condensed: 'Sheet Condensed Greek' } as const;

/** Every face of the papers; the family alone lacks Greek and the signs of comparison. */
export const PAPER_FONTS = {
  [FONTS.semi]: face('semi-460', 'semi-640'),
  [FONTS.condensed]: face('condensed-500', 'condensed-660'),
  [GREEK.semi]: face('semi-greek-460', 'semi-greek-640'),
  [GREEK.condensed]: face('condensed-greek-500', 'condensed-greek-660'),
  [FONTS.signs]: face('signs-460', 'signs-640'),
} as const;

/** The only files that a paper may open. */
export const FONT_FILES: ReadonlySet<string> = new Set(
  Object.values(PAPER_FONTS).flatMap(({ normal, bold }) => [normal, bold]),
);

const metrics = new Map<string, FontMetrics>();

function metricsOf(font: string, bold: boolean): FontMetrics {
  const file = PAPER_FONTS[font as keyof typeof PAPER_FONTS][bold ? 'bold' : 'normal'];
  let known = metrics.get(file);
  if (known === undefined) metrics.set(file, (known = readFontMetrics(file)));
  return known;
}

/** What stands in for a character that none of our faces has, so that nothing is printed as a blank or a box. */
const MISSING = '?';

/** Splits a text into runs so that each sign comes from the face that has it. */
export function runsOf(text: string, family: Family): Run[] {
  const fonts = [FONTS[family], FONTS.signs, GREEK[family]];
  const runs: { text: string; font: string }[] = [];
  for (const character of plain(text)) {
    const font = fonts.find((f) => metricsOf(f, false).advance(character.codePointAt(0)!) !== undefined);
    const set = font === undefined ? { text: MISSING, font: FONTS[family] } : { text: character, font };
    const last = runs[runs.length - 1];
    // A blank between two signs stays with them, so that a line may still break there.
    if (last !== undefined && last.font === set.font) last.text += set.text;
    else runs.push(set);
  }
  return runs;
}

/** Line ends and other blanks of typed text become plain spaces, accents are composed. */
function plain(text: string): string {
  return text
    .normalize('NFC')
    .replace(/<=/g, '≤')
    .replace(/>=/g, '≥')
    .replace(/[\s\u2007\u2009\u202f]+/g, (s) => (s === '\u00a0' ? s : ' '));
}

/** Signs are set a little smaller, so that they are as high as the figures beside them. */
export const SIGN_SIZE = 0.93;

/** How much lower a line stands because a sign in it is taller than the family, in points. */
export function signDrop(text: string, family: Family, size: number): number {
  if (!runsOf(text, family).some((run) => run.font === FONTS.signs)) return 0;
  const taller = metricsOf(FONTS.signs, false).ascent * SIGN_SIZE - metricsOf(FONTS[family], false).ascent;
  return Math.max(0, taller) * size;
}

/** Width of a text in points at a size in points. */
export function widthOf(text: string, family: Family, bold: boolean, size: number): number {
  let em = 0;
  for (const { text: part, font } of runsOf(text, family))
    for (const character of part) em += metricsOf(font, bold).advance(character.codePointAt(0)!) ?? 0.6;
  return em * size;
}

/** Breaks a text into lines no wider than the box; a word that is too long is broken too. */
export function wrap(text: string, family: Family, bold: boolean, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (candidate: string) => widthOf(candidate, family, bold, size) <= width;
  for (const word of plain(text).trim().split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (line !== '' && !fits(line + character)) {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  }
  lines.push(line);
  return lines;
}

/** The largest size at which a text fits its box, whole; names are made smaller, never cut. */
export function fitted(
  text: string,
  family: Family,
  bold: boolean,
  box: { readonly width: number; readonly height: number; readonly size: number },
): { readonly size: number; readonly lines: readonly string[] } {
  for (let size = box.size; size > 3; size -= 0.5) {
    const lines = wrap(text, family, bold, size, box.width);
    if (lines.length * size * LINE <= box.height) return { size, lines };
  }
  throw new RangeError(`'${text.slice(0, 40)}' does not fit a box of ${box.width} by ${box.height} points`);
}

/** Height of a line over the size of its letters. */
export const LINE = 1.17;
