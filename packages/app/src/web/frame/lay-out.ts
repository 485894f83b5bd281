import type { UnitSystem } from '@spraywright/engine/quantity';
import { browserStorage, loadWork } from '../state/kept-work.ts';
import { layOutSheet } from '../style/sheet-tokens.ts';
import '../style/fonts.css';
import '../style/sheet.css';
import '../style/desk.css';
import '../style/framed.css';
import '../style/print.css';

/** Lays out a sheet beside the desk: colours, and units and light as the desk has them. @returns the units */
export function layOutBeside(): UnitSystem {
  layOutSheet();
  const kept = loadWork(browserStorage(), matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.dataset.sheet = kept.sheet;
  return kept.units;
}
