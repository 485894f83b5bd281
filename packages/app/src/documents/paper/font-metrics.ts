import { readFileSync } from 'node:fs';

/** Widths of a TrueType face, as far as fitting a line of text into a box needs them. */
export interface FontMetrics {
  /** Advance of a character in em; undefined when the face does not have it. */
  readonly advance: (codePoint: number) => number | undefined;
  /** Height of the line over its base, in em. */
  readonly ascent: number;
}

/** Reads the character map and the advances of a TrueType file. */
export function readFontMetrics(file: string): FontMetrics {
  const bytes = readFileSync(file);
  const tables = new Map<string, number>();
  for (let i = 0; i < bytes.readUInt16BE(4); i++) {
    const record = 12 + i * 16;
    tables.set(bytes.toString('latin1', record, record + 4), bytes.readUInt32BE(record + 8));
  }
  const table = (tag: string): number => {
    const start = tables.get(tag);
    if (start === undefined) throw new RangeError(`${file} has no table '${tag}'; it is not a TrueType face`);
    return start;
  };
  const unitsPerEm = bytes.readUInt16BE(table('head') + 18);
  const wide = bytes.readUInt16BE(table('hhea') + 34);
  const hmtx = table('hmtx');
  const glyphOf = characterMap(bytes, table('cmap'), file);
  return {
    ascent: bytes.readInt16BE(table('hhea') + 4) / unitsPerEm,
    advance: (codePoint) => {
      const glyph = glyphOf(codePoint);
      if (glyph === 0) return undefined;
      return bytes.readUInt16BE(hmtx + Math.min(glyph, wide - 1) * 4) / unitsPerEm;
    },
  };
}

/** The segment map (format 4) of the basic plane, which is all that our faces carry. */
function characterMap(bytes: Buffer, cmap: number, file: string): (codePoint: number) => number {
  for (let i = 0; i < bytes.readUInt16BE(cmap + 2); i++) {
    const start = cmap + bytes.readUInt32BE(cmap + 4 + i * 8 + 4);
    if (bytes.readUInt16BE(start) !== 4) continue;
    const segments = bytes.readUInt16BE(start + 6) / 2;
    const word = (list: number, k: number) => start + 14 + (list * segments + k) * 2 + (list > 0 ? 2 : 0);
    return (codePoint) => {
      if (codePoint > 0xffff) return 0;
      for (let k = 0; k < segments; k++) {
        if (bytes.readUInt16BE(word(0, k)) < codePoint) continue;
        const first = bytes.readUInt16BE(word(1, k));
        if (first > codePoint) return 0;
        const delta = bytes.readUInt16BE(word(2, k));
        const rangeAt = word(3, k);
        const range = bytes.readUInt16BE(rangeAt);
        if (range === 0) return (codePoint + delta) & 0xffff;
        const glyph = bytes.readUInt16BE(rangeAt + range + (codePoint - first) * 2);
        return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
      }
      return 0;
    };
  }
  throw new RangeError(`${file} has no character map of format 4`);
}
