import { Cautions } from './cautions.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { Picture, useSize } from './picture.tsx';
import { Upright } from './upright.tsx';
import { useSight } from './use-sight.ts';

/** Pressure from tank to tip: lying on the desk, upright on narrow sheets, where it is the parts list as well. */
export function PressureLine() {
  const store = useStore();
  const line = useDesk((s) => s.pictures?.line);
  const upright = useDesk((s) => s.pictures?.upright);
  const headline = useDesk((s) => s.body?.headline);
  const ref = useSize<HTMLElement>((width) => store.setSizes({ lineWidth: Math.round(width) - 24 }));
  useSight('line', ref, line !== undefined);
  return (
    <section className="pressure" ref={ref} aria-labelledby="pressure-heading">
      <div className="area-head">
        <h2 className="heading" id="pressure-heading">
          {upright === undefined ? 'Pressure, tank to tip' : 'Pressure and parts, tank to tip'}
        </h2>
        <span className="note">{headline}</span>
      </div>
      {upright !== undefined ? (
        <Upright line={upright} />
      ) : (
        line !== undefined && line !== '' && <Picture svg={line} className="line-picture" />
      )}
      <Cautions place="line" />
    </section>
  );
}
