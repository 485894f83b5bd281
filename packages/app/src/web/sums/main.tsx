import { createRoot } from 'react-dom/client';
import { layOutSheet } from '../style/sheet-tokens.ts';
import { browserStorage, loadWork } from '../state/kept-work.ts';
import { SumsSheet } from './sums-sheet.tsx';
import '../style/fonts.css';
import '../style/sheet.css';
import '../style/desk.css';
import '../style/sums.css';

layOutSheet();

// Units and light as the desk has them.
const kept = loadWork(browserStorage(), matchMedia('(prefers-color-scheme: dark)').matches);
document.documentElement.dataset.sheet = kept.sheet;
createRoot(document.getElementById('sheet')!).render(<SumsSheet units={kept.units} />);
