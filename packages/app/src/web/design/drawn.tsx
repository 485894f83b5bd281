/** A piece of drawing as the engine makes it; the words beside it say what it is. */
export function Drawn({ svg, width, height }: { svg: string; width: number; height: number }) {
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  );
}
