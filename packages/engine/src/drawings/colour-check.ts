/** How readers see colours: contrast as WCAG 2.2 reckons it, and three deficiencies of colour vision. */

type Triple = readonly [number, number, number];

/** "#0b6678" as linear light, 0 to 1 in red, green and blue. */
function linear(hex: string): Triple {
  if (!/^#[0-9a-f]{6}$/i.test(hex))
    throw new RangeError(`colour is '${hex}'; six hex digits behind # are expected`);
  const channel = (at: number) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

function hexOf(light: Triple): string {
  return `#${light
    .map((c) => {
      const within = Math.min(1, Math.max(0, c));
      const s = within <= 0.0031308 ? within * 12.92 : 1.055 * within ** (1 / 2.4) - 0.055;
      return Math.round(s * 255)
        .toString(16)
        .padStart(2, '0');
    })
    .join('')}`;
}

function luminance(hex: string): number {
  const [r, g, b] = linear(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/**
 * Contrast of two colours, 1 to 21. Text asks 4.5, WCAG 2.2, 1.4.3.
 *
 * @param a, b colours such as '#0b6678'
 * @throws RangeError when a colour is not six hex digits behind #
 */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/**
 * Matrices of full severity for linear light: Machado, Oliveira, Fernandes, IEEE TVCG 15 (6), 2009; from memory, each row
 * adds up to one.
 */
const SIGHT = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const satisfies Record<string, readonly [Triple, Triple, Triple]>;

export type Sight = keyof typeof SIGHT;
export const SIGHTS = Object.keys(SIGHT) as Sight[];

/** A colour as somebody with a deficiency sees it. @throws RangeError when it is not six hex digits behind # */
export function seenBy(sight: Sight, hex: string): string {
  const light = linear(hex);
  const row = (m: Triple) => m[0] * light[0] + m[1] * light[1] + m[2] * light[2];
  const [r, g, b] = SIGHT[sight];
  return hexOf([row(r), row(g), row(b)]);
}
