import { createRoot } from 'react-dom/client';
import { Desk } from './ui/desk.tsx';
import { DeskContext } from './ui/desk-context.ts';
import { DeskStore } from './state/desk-store.ts';
import { browserStorage } from './state/kept-work.ts';
import { foldOf, watchFold } from './ui/fold.ts';
import { placeShown } from './state/place.ts';
import { keepOnDevice } from './frame/keep-on-device.ts';
import { layOutSheet } from './style/sheet-tokens.ts';
import { listenToKeys } from './ui/keys.ts';
import './style/fonts.css';
import './style/sheet.css';
import './style/desk.css';
import './style/brief.css';
import './style/promises.css';
import './style/parts.css';
import './style/line.css';
import './style/leaves.css';
import './style/title-block.css';
import './style/touch.css';
import './style/print.css';

layOutSheet();

/** How often the records are asked whether others changed the job [ms]. */
const LOOK_EVERY = 10_000;

const store = new DeskStore(browserStorage(), {
  night: matchMedia('(prefers-color-scheme: dark)').matches,
  fold: foldOf(),
  ...placeShown(),
});
addEventListener('popstate', () => {
  const { job, leaf } = placeShown();
  if (job !== '' && job !== store.state().current) store.open(job);
  store.setLeaf(leaf);
});
addEventListener('online', () => store.look());
addEventListener('focus', () => store.look());
setInterval(() => {
  if (document.visibilityState === 'visible') store.look();
}, LOOK_EVERY);
watchFold((fold) => store.setFold(fold));
listenToKeys(store);
addEventListener('pagehide', () => store.keepNow());

function draw(): void {
  createRoot(document.getElementById('sheet')!).render(
    <DeskContext value={store}>
      <Desk />
    </DeskContext>,
  );
  keepOnDevice();
}
// The script is run as soon as it is there, so that the engine begins to load: the document may be behind it.
if (document.readyState === 'loading') addEventListener('DOMContentLoaded', draw);
else draw();
