import { useRef } from 'react';
import { useDesk } from './desk-context.ts';
import { Handles } from './handles.tsx';
import { Picture } from './picture.tsx';
import { useSight } from './use-sight.ts';

/** The rig alone from the side, from behind and from above: its weights, its balance, and where its parts stand. */
export function RigViews() {
  const rig = useDesk((s) => s.pictures?.rig);
  const ref = useRef<HTMLElement>(null);
  useSight('rig', ref, rig !== undefined);
  if (rig === undefined) return null;
  return (
    <section className="rig-views" ref={ref} aria-labelledby="rig-views-heading">
      <div className="area-head">
        <h2 className="heading" id="rig-views-heading">
          Rig, weights and balance
        </h2>
        <span className="note">
          Arrow: now; tinted, when full; outline, what it may bear. Quartered: middle of the mass, full; ring:
          empty
        </span>
      </div>
      <div className="scene-drawn">
        <Picture svg={rig.svg} className="rig-picture" />
        <Handles list={rig.handles} />
      </div>
    </section>
  );
}
