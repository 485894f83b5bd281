import { createRoot } from 'react-dom/client';
import { Desk } from './ui/desk.tsx';
import { DeskContext } from './ui/desk-context.ts';
import { DeskStore } from './state/desk-store.ts';
import { browserStorage } from './state/kept-work.ts';
import { foldOf, watchFold } from './ui/fold.ts';
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

const store = new DeskStore(browserStorage(), {
  night: matchMedia('(prefers-color-scheme: dark)').matches,
  fold: foldOf(),
  job: decodeURIComponent(location.hash.slice(1)),
});
addEventListener('hashchange', () => store.open(decodeURIComponent(location.hash.slice(1))));
watchFold((fold) => store.setFold(fold));
listenToKeys(store);
addEventListener('pagehide', () => store.keepNow());

createRoot(document.getElementById('sheet')!).render(
  <DeskContext value={store}>
    <Desk />
  </DeskContext>,
);
