import { FLUSH_RULES } from './handling.data.ts';
import { liquidOf } from './liquid-of.ts';
import { type ForbiddenMeeting, forbiddenMeetings } from './meetings.ts';

/** What must be done between two liquids. */
export interface FlushDemand {
  readonly after: string;
  /** The liquid's own wording. */
  readonly own: string;
  readonly steps: readonly string[];
  /** Forbidden meetings that an incomplete flush would bring about. */
  readonly dangers: readonly ForbiddenMeeting[];
  /** True when the flush must be recorded with who and when before the next liquid goes in. */
  readonly record: boolean;
}

/**
 * Flush after a liquid, and before the next one when it is known.
 *
 * @throws RangeError for an unknown liquid or material.
 */
export function flushDemand(last: string, next?: string, materials: readonly string[] = []): FlushDemand {
  const liquid = liquidOf(last);
  const rule = FLUSH_RULES.find((r) => r.groups.some((g) => liquid.groups.includes(g)));
  const dangers =
    next === undefined
      ? []
      : forbiddenMeetings({ carries: [next], last, materials }).filter((m) => m.where === 'last');
  return {
    after: rule?.after ?? liquid.name,
    own: liquid.flush,
    steps: rule?.steps ?? [`After ${liquid.name}: ${liquid.flush}.`],
    dangers,
    record: dangers.some((d) => d.severity === 'never'),
  };
}
