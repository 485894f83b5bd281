/** Anything that is written down of a machine, as it arrives. */
interface WrittenEntry {
  readonly kind: string;
  readonly document: Readonly<Record<string, unknown>>;
  readonly by: string;
  readonly at: string;
}

/** A step that was looked at and written down. */
export interface StepDone {
  readonly done: boolean;
  /** The figure that was asked, as typed, or why it is not known. */
  readonly value?: string;
  readonly unknown?: string;
  readonly note?: string;
  readonly by: string;
  readonly at: string;
}

/** A JPEG as a data address, and what it shows. */
export interface BuildPhoto {
  readonly about: string;
  readonly image: string;
  /** The step that it belongs to; absent where it belongs to none. */
  readonly step?: string;
  readonly by: string;
  readonly at: string;
}

/** What was written down of building a machine: of each step the last word, everything else in order. */
export interface BuildRecord {
  readonly steps: ReadonlyMap<string, StepDone>;
  /** Lots by part number. */
  readonly lots: ReadonlyMap<string, readonly string[]>;
  readonly photos: readonly BuildPhoto[];
}

/** Kinds of entries that a build record is put together from. */
export const BUILD_KINDS: readonly string[] = ['build-step', 'lot', 'photo'];

/** The record of building one machine, from its entries in their order; those of other kinds are passed over. */
export function buildRecord(entries: readonly WrittenEntry[]): BuildRecord {
  const steps = new Map<string, StepDone>();
  const lots = new Map<string, string[]>();
  const photos: BuildPhoto[] = [];
  for (const { kind, document, by, at } of entries) {
    const text = (name: string) => (typeof document[name] === 'string' ? document[name] : '');
    const some = (...names: string[]) =>
      Object.fromEntries(names.flatMap((name) => (text(name) === '' ? [] : [[name, text(name)]])));
    if (kind === 'build-step')
      steps.set(text('step'), { done: document.done === true, ...some('value', 'unknown', 'note'), by, at });
    else if (kind === 'lot') {
      const known = lots.get(text('part')) ?? [];
      if (!known.includes(text('lot'))) lots.set(text('part'), [...known, text('lot')]);
    } else if (kind === 'photo' && text('image').startsWith('data:image/jpeg;base64,'))
      photos.push({ about: text('about'), image: text('image'), ...some('step'), by, at });
  }
  return { steps, lots, photos };
}
