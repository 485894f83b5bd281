import { identifier, integer, list, object, optional, quantity, text } from '../quantity/index.ts';
import { portShape } from './port.ts';

// The quantities of which the kinds of parts are made, each with the limits that every kind has.

const cents = () => integer({ min: 0, max: 100_000_000 });
export const pressure = () => quantity('pressure', { min: '0 psi', max: '1000 bar' });
export const flow = () => quantity('flow', { min: '0 gpm', max: '5000 gpm' });
export const bore = () => quantity('length', { min: '0.3 mm', max: '300 mm' });
export const length = () => quantity('length', { min: '0 m', max: '30 m' });
export const power = () => quantity('power', { min: '0 W', max: '500 kW' });
export const speed = () => quantity('rotation', { min: '0 rpm', max: '12000 rpm' });

/** What every part carries, whatever its kind. */
export const everyPart = {
  id: identifier(),
  name: text({ min: 2, max: 80 }),
  mass: quantity('mass', { min: '0 kg', max: '5000 kg' }),
  /** Outside size: along the rig, across it, and up. */
  size: object({ length: length(), width: length(), height: length() }),
  costCents: cents(),
  priceCents: cents(),
  leadTimeDays: integer({ min: 0, max: 365 }),
  stock: integer({ min: 0, max: 1_000_000 }),
  ports: list(portShape, { max: 12 }),
  /** Each material the liquid touches, by the piece it is. */
  wetted: list(object({ piece: text({ min: 2, max: 40 }), material: text({ min: 1, max: 40 }) }), {
    max: 12,
  }),
  /** Who it is bought from. */
  supplier: optional(text({ min: 2, max: 60 })),
  note: optional(text({ max: 300 })),
};

/** A law given as "this much water passes at one bar": q = k √(Δp / SG). */
export const flowAtOneBar = () => quantity('flow', { above: '0 l/min', max: '20000 l/min' });
