import type { MachineState } from '../machine-keeper.ts';

/** A step that was looked at and written down. */
export interface StepDone {
  readonly done: boolean;
  readonly value?: string;
  readonly unknown?: string;
  readonly note?: string;
  readonly by: string;
  readonly at: string;
}

export interface Photo {
  readonly about: string;
  readonly image: string;
  readonly by: string;
  readonly at: string;
}

export interface PutIn {
  readonly slot: string;
  readonly was: string;
  readonly part: string;
  readonly why: string;
  readonly by: string;
  readonly at: string;
}

/** What was written down of building a machine: of each step the last word, everything else in order. */
export interface BuildState {
  readonly steps: ReadonlyMap<string, StepDone>;
  /** Lots by part number. */
  readonly lots: ReadonlyMap<string, readonly string[]>;
  readonly photos: readonly Photo[];
  readonly putIn: readonly PutIn[];
}

export function buildState({ entries, waiting }: Pick<MachineState, 'entries' | 'waiting'>): BuildState {
  const steps = new Map<string, StepDone>();
  const lots = new Map<string, string[]>();
  const photos: Photo[] = [];
  const putIn: PutIn[] = [];
  for (const { kind, document, by, at } of [...entries, ...waiting]) {
    const text = (name: string) => (typeof document[name] === 'string' ? document[name] : '');
    const some = (name: string) => (text(name) === '' ? {} : { [name]: text(name) });
    if (kind === 'build-step')
      steps.set(text('step'), {
        done: document.done === true,
        ...some('value'),
        ...some('unknown'),
        ...some('note'),
        by,
        at,
      });
    else if (kind === 'lot') {
      const known = lots.get(text('part')) ?? [];
      if (!known.includes(text('lot'))) lots.set(text('part'), [...known, text('lot')]);
    } else if (kind === 'photo' && text('image').startsWith('data:image/jpeg;base64,'))
      photos.push({ about: text('about'), image: text('image'), by, at });
    else if (kind === 'substitution') {
      const { part } = document as { part?: { part?: { id?: string } } };
      putIn.push({
        slot: text('slot'),
        was: text('was'),
        part: part?.part?.id ?? '',
        why: text('why'),
        by,
        at,
      });
    }
  }
  return { steps, lots, photos, putIn };
}
