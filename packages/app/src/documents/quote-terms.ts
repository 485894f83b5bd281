import type { Shop } from '@spraywright/engine/catalogue';
import type { Proof, Tax } from '@spraywright/engine/rig';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const DAY = 86_400_000;

/**
 * A day as a moment, midnight in UTC.
 *
 * @throws RangeError when the text is not a day of the calendar such as 2026-03-03
 */
export function parseDay(text: string): Date {
  const day = new Date(`${text}T00:00:00Z`);
  if (
    !/^\d{4}-\d{2}-\d{2}$/.test(text) ||
    Number.isNaN(day.getTime()) ||
    day.toISOString().slice(0, 10) !== text
  )
    throw new RangeError(`date is '${text}'; a day such as 2026-03-03 was expected`);
  return day;
}

export function dateText(day: Date): string {
  return `${day.getUTCDate()} ${MONTHS[day.getUTCMonth()]!} ${day.getUTCFullYear()}`;
}

/** Prices and dates of the quote; money in integer cents. */
export interface QuoteTerms {
  /** Before discount and tax. */
  readonly linesCents: number;
  readonly discountCents: number;
  /** Absent where the shop reckons none. */
  readonly tax?: Tax;
  /** Absent where none was said. */
  readonly freightCents?: number;
  /** What is to be paid. */
  readonly totalCents: number;
  readonly depositCents: number;
  readonly depositPercent: number;
  readonly readyInDays: number;
  readonly validUntil: string;
}

export function quoteTerms(proof: Proof, shop: Shop, date: string): QuoteTerms {
  const { linesCents, discount, tax, freightCents, totalCents } = proof.bill;
  return {
    linesCents,
    discountCents: discount?.cents ?? 0,
    ...(tax === undefined ? {} : { tax }),
    ...(freightCents === undefined ? {} : { freightCents }),
    totalCents,
    depositCents: Math.round((totalCents * shop.depositPercent) / 100),
    depositPercent: shop.depositPercent,
    readyInDays: proof.bill.readyInDays,
    validUntil: dateText(new Date(parseDay(date).getTime() + shop.validDays * DAY)),
  };
}
