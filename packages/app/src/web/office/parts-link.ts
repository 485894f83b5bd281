import type { Kind } from '@spraywright/engine/catalogue';
import { askServer, sent, type Problem } from '../frame/ask.ts';

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

/** A field that was refused; of a table also where it stands. */
export interface Refused {
  readonly field: string;
  readonly message: string;
  readonly line?: number;
  readonly column?: number;
}

/** What was answered, or in words why not. */
export type Got<T> = { readonly value: T } | { readonly why: string; readonly problems: readonly Refused[] };

const AWAY = 'The server cannot be reached; nothing was changed. Try again.';

export async function got<T>(path: string, init?: RequestInit): Promise<Got<T>> {
  const answer = await askServer<T>(path, init);
  if (answer.is === 'done') return { value: answer.value };
  if (answer.is !== 'refused') return { why: AWAY, problems: [] };
  const { problems = [] } = answer.problem as Problem & { problems?: readonly Refused[] };
  return { why: answer.why, problems };
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

export const addPart = (kind: Kind, part: RawPart) => got<PartOpened>('api/parts', sent({ kind, part }));

export const putPart = (id: string, madeOn: number, part: RawPart, pricesFrom: string) =>
  got<PartOpened>(address(id), sent({ madeOn, part, ...(pricesFrom === '' ? {} : { pricesFrom }) }, 'PUT'));

export const setStanding = (id: string, retired: boolean) =>
  got<PartOpened>(`${address(id)}/standing`, sent({ retired }));

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

export const readTable = (table: object) => got<Planned>('api/parts/table', sent(table));

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

export const askAgain = () => got<unknown>('api/quotes-again', sent({}));

export const findingsOf = (id: string, after = '') =>
  got<{ findings: readonly FindingAgain[] }>(`api/quotes-again/${id}?${new URLSearchParams({ after })}`);
