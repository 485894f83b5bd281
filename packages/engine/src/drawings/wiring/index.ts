export { wiringDiagram, type WiringOptions } from './wiring-diagram.ts';
