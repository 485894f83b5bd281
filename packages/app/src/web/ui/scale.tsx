import type { PromiseRow } from '../protocol.ts';
import { imageOf } from './image-of.ts';

/** The small scale of a promise; what it shows is said by the figures beside it. */
export function Scale({ scale }: { scale: PromiseRow['scale'] }) {
  if (scale === undefined) return <span className="scale" aria-hidden="true" />;
  const { svg, x, y, common } = scale;
  if (!common) return <span className="scale" aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />;
  const background = `${imageOf(svg)} ${x}px ${y}px no-repeat, var(--asked-line)`;
  return <span className="scale" aria-hidden="true" style={{ background }} />;
}
