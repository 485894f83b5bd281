import type { MachineState } from '../machine-keeper.ts';

/** A call that was written down. */
export interface ServiceCall {
  readonly words: string;
  readonly verdict: string;
  readonly done: string;
  readonly sent: string;
  readonly by: string;
  readonly at: string;
}

/** What a machine carried last, by the newest entry; and what was done before the next liquid. */
interface LiquidRecord {
  readonly liquid: string;
  readonly by: string;
  readonly at: string;
}

interface Flush {
  readonly after: string;
  readonly next: string;
  readonly how: string;
  readonly by: string;
  readonly at: string;
}

export interface ServiceState {
  readonly calls: readonly ServiceCall[];
  readonly last?: LiquidRecord;
  readonly flushes: readonly Flush[];
}

export function serviceState({ entries, waiting }: Pick<MachineState, 'entries' | 'waiting'>): ServiceState {
  const calls: ServiceCall[] = [];
  const flushes: Flush[] = [];
  let last: LiquidRecord | undefined;
  for (const { kind, document, by, at } of [...entries, ...waiting]) {
    const text = (name: string) => (typeof document[name] === 'string' ? document[name] : '');
    if (kind === 'service')
      calls.push({
        words: text('words'),
        verdict: text('verdict'),
        done: text('done'),
        sent: text('sent'),
        by,
        at,
      });
    else if (kind === 'last-liquid') last = { liquid: text('liquid'), by, at };
    else if (kind === 'flush')
      flushes.push({ after: text('after'), next: text('next'), how: text('how'), by, at });
  }
  return { calls, flushes, ...(last === undefined ? {} : { last }) };
}
