import { createRoot } from 'react-dom/client';
import { sheetTokens } from '../style/sheet-tokens.ts';
import { loadWork } from '../state/kept-work.ts';
import { SumsSheet } from './sums-sheet.tsx';
import '../style/fonts.css';
import '../style/sheet.css';
import '../style/desk.css';
import '../style/sums.css';

const tokens = document.createElement('style');
tokens.textContent = sheetTokens();
document.head.append(tokens);

// Units and light as the desk has them.
const kept = loadWork(storageOf(), matchMedia('(prefers-color-scheme: dark)').matches);
document.documentElement.dataset.sheet = kept.sheet;
createRoot(document.getElementById('sheet')!).render(<SumsSheet units={kept.units} />);

function storageOf(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}
