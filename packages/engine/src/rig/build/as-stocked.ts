import type { Catalogue, Part } from '../../catalogue/index.ts';

/** A part as it was when a machine was begun, with what the shop has and buys of it today. */
export function asStocked(part: Part | undefined, today: Catalogue): Part | undefined {
  const now = part === undefined ? undefined : today.parts.get(part.id);
  if (part === undefined || now === undefined) return part;
  const { stock, leadTimeDays, costCents, supplier } = now;
  return { ...part, stock, leadTimeDays, costCents, ...(supplier === undefined ? {} : { supplier }) };
}
