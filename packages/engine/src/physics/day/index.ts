export type { DayInput } from './day-input.ts';
export type { DayPhase } from './day-clock.ts';
export * from './day-curves.ts';
export * from './working-day.ts';
