import { createRoot } from 'react-dom/client';
import { layOutBeside } from '../frame/lay-out.ts';
import { SumsSheet } from './sums-sheet.tsx';
import '../style/sums.css';

const units = layOutBeside();
createRoot(document.getElementById('sheet')!).render(<SumsSheet units={units} />);
