import type { Kind } from '@spraywright/engine/catalogue';
import { sent } from '../frame/ask.ts';
import { got, gotFor } from './got.ts';

export type RawPart = Readonly<Record<string, unknown>>;

interface PartHead {
  readonly id: string;
  readonly kind: Kind;
  readonly name: string;
  readonly edition: number;
  readonly retired: boolean;
  readonly changedAt: string;
  readonly changedBy: string;
}

/** A part in a list, with what it is sold for today. */
export interface ListedPart extends PartHead {
  readonly priceCents?: number;
}

export interface PartOpened extends PartHead {
  readonly document: RawPart;
  readonly prices: readonly {
    readonly from: string;
    /** Absent for those who do not sell. */
    readonly costCents?: number;
    readonly priceCents: number;
    readonly by: string;
  }[];
}

export interface PartsAsked {
  readonly find: string;
  readonly kind: string;
  readonly standing: string;
}

export const findParts = ({ find, kind, standing }: PartsAsked, after?: string) =>
  got<{ edition: number; parts: readonly ListedPart[]; next?: string }>(
    `api/parts?${new URLSearchParams({
      find,
      standing,
      ...(kind === '' ? {} : { kind }),
      ...(after === undefined ? {} : { after }),
    })}`,
  );

const address = (id: string) => `api/parts/${encodeURIComponent(id)}`;

export const openPart = (id: string, day?: string) =>
  got<PartOpened>(day === undefined || day === '' ? address(id) : `${address(id)}?day=${day}`);

export interface Uses {
  readonly jobs: readonly { readonly id: string; readonly title: string; readonly customer: string }[];
  readonly quotes: readonly { readonly number: string; readonly title: string; readonly customer: string }[];
  readonly machines: readonly {
    readonly serial: string;
    readonly title: string;
    readonly customer: string;
  }[];
}

export const usesOf = (id: string) => got<Uses>(`${address(id)}/uses`);

export interface PartStock {
  /** What all movements come to. */
  readonly moved: number;
  /** The newest first. */
  readonly movements: readonly {
    readonly operation: string;
    readonly quantity: number;
    readonly why: string;
    readonly serial: string;
    readonly note: string;
    readonly by: string;
    readonly at: string;
  }[];
}

export const movementsOf = (id: string) =>
  got<PartStock>(`api/stock/${encodeURIComponent(id)}/movements?limit=50`);

/** @param operation name of the movement, which is written down once however often it is asked for */
export const moveStock = (operation: string, part: string, quantity: number, why: string, note: string) =>
  gotFor<unknown>('api/stock/movements', { movements: [{ operation, part, quantity, why, note }] });

export const addPart = (kind: Kind, part: RawPart) => gotFor<PartOpened>('api/parts', { kind, part });

export const putPart = (id: string, madeOn: number, part: RawPart, pricesFrom: string) =>
  got<PartOpened>(address(id), sent({ madeOn, part, ...(pricesFrom === '' ? {} : { pricesFrom }) }, 'PUT'));

export const setStanding = (id: string, retired: boolean) =>
  gotFor<PartOpened>(`${address(id)}/standing`, { retired });

export interface Planned {
  readonly kind: Kind;
  readonly edition: number;
  readonly written: boolean;
  readonly added: readonly string[];
  readonly changes: readonly {
    readonly part: string;
    readonly line: number;
    readonly field: string;
    readonly before?: string;
    readonly after: string;
  }[];
  readonly unchanged: number;
}

export const readTable = (table: object) => gotFor<Planned>('api/parts/table', table);

/** A round in which the open quotes are proven again. */
export interface RoundAgain {
  readonly id: string;
  readonly edition: number;
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly total: number;
  readonly done: number;
  readonly changed: number;
  readonly trouble: string;
}

export interface FindingAgain {
  readonly quote: string;
  readonly revision: string;
  readonly title: string;
  readonly customer: string;
  readonly beforeCents: number;
  readonly afterCents?: number;
  readonly brokenBefore: number;
  readonly brokenAfter?: number;
  readonly said: readonly string[];
}

export const roundsAgain = () => got<{ rounds: readonly RoundAgain[] }>('api/quotes-again?limit=1');

export const askAgain = () => gotFor<unknown>('api/quotes-again', {});

export const findingsOf = (id: string, after = '') =>
  got<{ findings: readonly FindingAgain[] }>(`api/quotes-again/${id}?${new URLSearchParams({ after })}`);
