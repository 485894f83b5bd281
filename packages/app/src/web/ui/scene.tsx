import { Cautions } from './cautions.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { Handles } from './handles.tsx';
import { Picture, useSize } from './picture.tsx';

const HEIGHTS = { desk: 545, tablet: 540, phone: 380 } as const;

/** The throw to its target, to scale. */
export function Scene() {
  const store = useStore();
  const svg = useDesk((s) => s.pictures?.scene);
  const handles = useDesk((s) => s.pictures?.handles?.list);
  const headline = useDesk((s) => s.body?.headline);
  const fold = useDesk((s) => s.fold);
  const ref = useSize<HTMLDivElement>((width) => {
    store.setSizes({ sceneWidth: Math.round(width), sceneHeight: HEIGHTS[fold] });
  });
  return (
    <section className="scene" aria-label="Scene" ref={ref}>
      {fold === 'phone' && headline !== undefined && <p className="headline">{headline}</p>}
      {svg !== undefined && svg !== '' && (
        <div className="scene-drawn">
          <Picture svg={svg} className="scene-picture" />
          <Handles list={handles} />
        </div>
      )}
      <Cautions place="scene" />
    </section>
  );
}
