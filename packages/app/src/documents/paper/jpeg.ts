/** Markers that begin a frame, where the size of a picture stands; the codes between them are tables. */
const FRAMES = new Set([
  0xc0, 0xc1, 0xc2, 0xc3, 0xc5, 0xc6, 0xc7, 0xc8, 0xc9, 0xca, 0xcb, 0xcc, 0xcd, 0xce, 0xcf,
]);

/**
 * Whether a data address holds a JPEG that paper can show: it begins as one and tells its size.
 *
 * @source ITU-T T.81 (1992), annex B: markers and segments
 */
export function isPrintableJpeg(address: string): boolean {
  const found = /^data:image\/jpeg;base64,([A-Za-z0-9+/]+=*)$/.exec(address);
  if (found === null) return false;
  const bytes = Buffer.from(found[1]!, 'base64');
  if (bytes.length < 4 || bytes.readUInt16BE(0) !== 0xffd8) return false;
  for (let at = 2; at + 9 < bytes.length; at += 2 + bytes.readUInt16BE(at + 2)) {
    if (bytes[at] !== 0xff) return false;
    if (FRAMES.has(bytes[at + 1]!)) return bytes.readUInt16BE(at + 5) > 0 && bytes.readUInt16BE(at + 7) > 0;
  }
  return false;
}
