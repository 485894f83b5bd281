import { useDesk, useStore } from './desk-context.ts';
import { Picture, useSize } from './picture.tsx';

/** Padding of a cell on both sides [px]. */
const PADDING = 24;

/** What the rig could do with more or less of something, each curve drawn by the engine from the proof. */
export function Curves() {
  const store = useStore();
  const curves = useDesk((s) => s.curves);
  const fold = useDesk((s) => s.fold);
  const columns = fold === 'phone' ? 1 : 2;
  const ref = useSize<HTMLElement>((width) =>
    store.setSizes({ curveWidth: Math.floor(width / columns) - PADDING }),
  );
  return (
    <section className="curves" aria-label="Curves" aria-busy={curves.length === 0} ref={ref}>
      {curves.map(({ id, name, svg, note }) => (
        <figure key={id} data-curve={id}>
          <h2 className="heading">{name}</h2>
          {svg !== undefined && <Picture svg={svg} className="curve-picture" />}
          <figcaption className="note">{note}</figcaption>
        </figure>
      ))}
      {curves.length === 0 && <p className="note waiting">Being worked out.</p>}
    </section>
  );
}
