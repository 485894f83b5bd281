import { lazy, Suspense, useEffect } from 'react';
import { Bill } from './bill.tsx';
import { Brief } from './brief.tsx';
import { Duties } from './duties.tsx';
import { useDesk } from './desk-context.ts';
import { showPlace } from '../state/place.ts';
import { IndexRow } from './index-row.tsx';
import { Leaves } from './leaves.tsx';
import { Notice } from './notice.tsx';
import { Parts } from './parts.tsx';
import { PressureLine } from './pressure-line.tsx';
import { useSize } from './picture.tsx';
import { Promises } from './promises.tsx';
import { RigViews } from './rig-views.tsx';
import { Scene } from './scene.tsx';
import { TitleBlock } from './title-block.tsx';
import { Zones } from './zones.tsx';

// All are fetched when they are first wanted.
const JobList = lazy(() => import('./job-list.tsx').then((m) => ({ default: m.JobList })));
const DisagreementSheet = lazy(() =>
  import('./disagreement.tsx').then((m) => ({ default: m.DisagreementSheet })),
);
const Plumbing = lazy(() => import('./plumbing.tsx').then((m) => ({ default: m.Plumbing })));
const Curves = lazy(() => import('./curves.tsx').then((m) => ({ default: m.Curves })));
const ChoicesSheet = lazy(() => import('./choices-sheet.tsx').then((m) => ({ default: m.ChoicesSheet })));

function Disagreement() {
  const disagreement = useDesk((s) => s.disagreement);
  return disagreement === undefined ? null : <DisagreementSheet disagreement={disagreement} />;
}

/** The one sheet there is: the desk. */
export function Desk() {
  const fold = useDesk((s) => s.fold);
  const leaf = useDesk((s) => s.leaf);
  const sheet = useDesk((s) => (s.printing ? 'print' : s.sheet));
  const title = useDesk((s) => s.body?.title);
  useEffect(() => {
    document.documentElement.dataset.sheet = sheet;
  }, [sheet]);
  useEffect(() => {
    document.title = title === undefined ? 'Spraywright' : `${title} - Spraywright`;
  }, [title]);
  const current = useDesk((s) => s.current);
  const listing = useDesk((s) => s.listing);
  useEffect(() => {
    if (current !== undefined) showPlace(current, leaf);
  }, [current, leaf]);
  // The left column stays in sight while the right one is read on; its foot when it is higher than the window.
  const left = useSize<HTMLDivElement>((_, height) =>
    left.current?.style.setProperty('--left-height', `${height}px`),
  );
  const drawn = useDesk((s) => s.body !== undefined);
  return (
    <div className={`sheet ${fold}`}>
      {fold === 'desk' && <Zones />}
      <div className="frame">
        <IndexRow />
        <Notice />
        <Suspense>
          {listing && <JobList />}
          <Disagreement />
        </Suspense>
        <main className={drawn ? 'areas' : 'areas empty'} id="desk">
          <h1 className="for-readers">{title ?? 'Spraywright'}</h1>
          <div className="left" ref={left}>
            <Leaves />
            <Duties />
            <Brief />
            <Suspense>
              {leaf === 'plumbing' && <Plumbing />}
              {leaf === 'curves' && <Curves />}
              {leaf === 'choices' && <ChoicesSheet />}
            </Suspense>
            {leaf === 'desk' && <Scene />}
            {leaf === 'desk' && fold === 'desk' && <PressureLine />}
            {leaf === 'desk' && <RigViews />}
            {fold === 'desk' && <Bill />}
          </div>
          <div className="right">
            <Promises />
            <div className="rig-column">
              {fold !== 'desk' && <PressureLine />}
              <Parts />
              {fold !== 'desk' && <Bill />}
            </div>
            <TitleBlock />
          </div>
        </main>
      </div>
    </div>
  );
}
