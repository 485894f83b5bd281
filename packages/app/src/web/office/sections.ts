import type { UnitSystem } from '@spraywright/engine/quantity';
import type { ComponentType } from 'react';
import { OfficeStart } from './office-start.tsx';

/** What a section of the office is given: the rest of the address behind its name, and the units people read. */
interface SectionGiven {
  readonly at: readonly string[];
  readonly units: UnitSystem;
}

interface Section {
  readonly path: string;
  readonly name: string;
  readonly Sheet: ComponentType<SectionGiven>;
}

/** The sections of the office, in the order of the index; the first is shown when the address names none. */
export const SECTIONS: readonly [Section, ...Section[]] = [
  { path: 'start', name: 'Start', Sheet: OfficeStart },
];
