import type { UnitSystem } from '@spraywright/engine/quantity';
import type { ComponentType } from 'react';
import { BuildSection } from './build/build-section.tsx';
import { YardSection } from './yard/yard-section.tsx';
import { ServiceSection } from './service/service-section.tsx';

/** What a section of one machine is given: its serial number, the rest of the address, and the units people read. */
interface MachineGiven {
  readonly serial: string;
  readonly at: readonly string[];
  readonly units: UnitSystem;
}

interface MachineSection {
  readonly path: string;
  readonly name: string;
  readonly Sheet: ComponentType<MachineGiven>;
}

/** The sections of one machine, in the order of its life. */
export const MACHINE_SECTIONS: readonly MachineSection[] = [
  { path: 'build', name: 'Build', Sheet: BuildSection },
  { path: 'yard', name: 'Yard test', Sheet: YardSection },
  { path: 'service', name: 'Service', Sheet: ServiceSection },
];
