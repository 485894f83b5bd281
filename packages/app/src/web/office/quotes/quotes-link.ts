/** A quote as the server lists it. */
export interface QuoteHead {
  readonly number: string;
  readonly job: string;
  readonly revision: string;
  readonly state: 'drawn' | 'sent' | 'accepted' | 'declined' | 'withdrawn';
  readonly since: string;
  readonly question: boolean;
  readonly title: string;
  readonly customer: string;
  readonly priceCents: number;
  readonly optionCount: number;
  readonly madeAt: string;
  readonly madeBy: string;
}

interface RevisionHead {
  readonly revision: string;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly sentAt?: string;
}

export type Quote = QuoteHead & { readonly revisions: readonly RevisionHead[] };

interface Row {
  readonly mark: string;
  readonly text: string;
  readonly has?: string;
  readonly asked?: string;
}

/** What the sheet shows of a frozen option. */
export interface Option {
  readonly name: string;
  /** Job whose rig it is; absent for a rig that was sent along. */
  readonly job?: string;
  readonly rig: { readonly pricing?: { readonly discountPercent?: number } };
  readonly summary: {
    readonly title: string;
    readonly words: {
      readonly will: readonly Row[];
      readonly willNot: readonly Row[];
      readonly open: readonly Row[];
    };
    readonly counts: Readonly<Record<'kept' | 'thin' | 'broken' | 'unknown', number>>;
    readonly costCents: number;
    readonly linesCents: number;
    readonly priceCents: number;
    readonly totalCents: number;
    readonly depositCents: number;
    readonly discount?: { readonly cents: number; readonly askedPercent: number };
    readonly tax?: { readonly cents: number; readonly percent: number };
    readonly labourHours: number;
    readonly readyDay: string;
    readonly readyInDays: number;
  };
}

export interface Revision extends RevisionHead {
  readonly document: {
    readonly date: string;
    readonly validUntil: string;
    readonly note: string;
    readonly engineVersion: string;
    readonly catalogue: { readonly name: string; readonly version: number };
    readonly shop: {
      readonly depositPercent: number;
      readonly validDays: number;
      readonly terms: readonly string[];
    };
    readonly options: readonly Option[];
  };
}

export interface QuoteEvent {
  readonly number: number;
  readonly revision: string;
  readonly kind: string;
  readonly option?: string;
  readonly said?: string;
  readonly by: string;
  readonly at: string;
}

export interface CustomerLink {
  readonly id: string;
  readonly revision: string;
  readonly sentTo: string;
  readonly expiresAt: string;
  readonly revokedAt?: string;
}

export interface Story {
  readonly links: readonly CustomerLink[];
  readonly events: readonly QuoteEvent[];
}

export interface Posted {
  readonly is: 'sent' | 'kept' | 'failed' | 'nobody';
  readonly file?: string;
  readonly why?: string;
}

export interface Sent {
  readonly address: string;
  readonly posted: Posted;
}

export interface Changes {
  readonly terms: readonly string[];
  readonly options: readonly {
    readonly name: string;
    readonly price: readonly string[];
    readonly parts: readonly string[];
    readonly promises: readonly string[];
  }[];
}

export const QUOTE_STATES = {
  drawn: 'drawn up, not sent',
  sent: 'sent, waits for the customer',
  accepted: 'accepted',
  declined: 'declined',
  withdrawn: 'taken back',
} as const;

export interface Calendar {
  readonly today: string;
  readonly hoursPerWeek?: number;
  readonly weeks: readonly { readonly monday: string; readonly hours: number; readonly capacity: number }[];
  readonly builds: readonly {
    readonly quote: string;
    readonly job: string;
    readonly title: string;
    readonly customer: string;
    readonly serials: readonly string[];
    readonly acceptedOn: string;
    readonly hours: number;
    readonly partsOn: string;
    readonly ready: string;
    readonly weeks: readonly { readonly monday: string; readonly hours: number }[];
  }[];
}

export function quotePath(number: string, ...more: readonly string[]): string {
  return ['api/quotes', number, ...more]
    .map((step, i) => (i === 0 ? step : encodeURIComponent(step)))
    .join('/');
}
