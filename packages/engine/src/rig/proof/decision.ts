import type { Brief } from '../brief.ts';

/** A recorded decision on something that data do not settle: who, why, when. */
export type Decision = Brief['decisions'][number];

export function decisionOn(brief: Brief, about: string): Decision | undefined {
  return brief.decisions.find((d) => d.about === about);
}
