import { encode } from 'uqr';

/** Blank modules around the code, as ISO/IEC 18004 asks. */
const QUIET = 4;
const INK = '#000000';

/** An address as a square code that a telephone reads, one path of modules. */
export function addressCode(address: string): string {
  const { data, size } = encode(address, { ecc: 'M', border: QUIET });
  let path = '';
  data.forEach((row, y) => row.forEach((dark, x) => (path += dark ? `M${x} ${y}h1v1h-1z` : '')));
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size * 4}" height="${size * 4}" viewBox="0 0 ${size} ${size}">` +
    `<rect width="${size}" height="${size}" fill="#ffffff"/><path d="${path}" fill="${INK}"/></svg>`
  );
}
