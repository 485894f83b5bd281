import type { UnitSystem } from '@spraywright/engine/quantity';
import type { ComponentType } from 'react';
import { DoingsSheet } from './doings-sheet.tsx';
import { PartsSheet } from './parts-sheet.tsx';
import { CalendarSheet } from './quotes/calendar-sheet.tsx';
import { JobsSheet } from './quotes/jobs-sheet.tsx';
import { QuotesSheet } from './quotes/quotes-sheet.tsx';
import { LearnedSheet } from './learned/learned-sheet.tsx';
import { PeopleSheet } from './people-sheet.tsx';
import { ShopSheet } from './shop-sheet.tsx';

/** What a section of the office is given: the rest of the address behind its name, and the units people read. */
interface SectionGiven {
  readonly at: readonly string[];
  readonly units: UnitSystem;
}

export interface Section {
  readonly path: string;
  readonly name: string;
  readonly Sheet: ComponentType<SectionGiven>;
  /** Whose it is; everybody's when absent. The server refuses the others, so that they are not led there. */
  readonly only?: 'sellers' | 'owner';
}

/** The sections of the office, in the order of the index; the first is shown when the address names none. */
export const SECTIONS: readonly [Section, ...Section[]] = [
  { path: 'jobs', name: 'Jobs', Sheet: JobsSheet },
  { path: 'quotes', name: 'Quotes', Sheet: QuotesSheet, only: 'sellers' },
  { path: 'calendar', name: 'Calendar', Sheet: CalendarSheet },
  { path: 'parts', name: 'Parts', Sheet: PartsSheet },
  { path: 'learned', name: 'Yard tests', Sheet: LearnedSheet },
  { path: 'shop', name: 'The shop', Sheet: ShopSheet, only: 'sellers' },
  { path: 'people', name: 'People', Sheet: PeopleSheet, only: 'owner' },
  { path: 'doings', name: 'Who did what', Sheet: DoingsSheet, only: 'owner' },
];
