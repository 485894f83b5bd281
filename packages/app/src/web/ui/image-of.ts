const images = new Map<string, string>();

/**
 * A drawing as an image for CSS. For the few that stand in a hundred rows: each drawing that is an element of the page is a
 * layer of its own, and a hundred of them were a third of what a step of a drag took to paint.
 */
export function imageOf(svg: string): string {
  const known = images.get(svg);
  if (known !== undefined) return known;
  const image = `url("data:image/svg+xml,${encodeURIComponent(svg)}")`;
  images.set(svg, image);
  return image;
}
