import { buildRecord, type BuildRecord } from '@spraywright/engine/rig';
import type { MachineState } from '../machine-keeper.ts';

export interface PutIn {
  readonly slot: string;
  readonly was: string;
  readonly part: string;
  readonly why: string;
  readonly by: string;
  readonly at: string;
}

/** What was written down of building a machine, also what is not sent yet, and every other part that was put in. */
export interface BuildState extends BuildRecord {
  readonly putIn: readonly PutIn[];
}

export function buildState({ entries, waiting }: Pick<MachineState, 'entries' | 'waiting'>): BuildState {
  const all = [...entries, ...waiting];
  const putIn = all.flatMap(({ kind, document, by, at }): PutIn[] => {
    if (kind !== 'substitution') return [];
    const text = (name: string) => (typeof document[name] === 'string' ? document[name] : '');
    const { part } = document as { part?: { part?: { id?: string } } };
    return [{ slot: text('slot'), was: text('was'), part: part?.part?.id ?? '', why: text('why'), by, at }];
  });
  return { ...buildRecord(all), putIn };
}
