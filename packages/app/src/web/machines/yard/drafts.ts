import { browserStorage } from '../../state/kept-work.ts';

/** What is being typed, by row: on the device at every keystroke, until it is written down. */
export type Drafts = Readonly<Record<string, readonly string[]>>;

const keyOf = (serial: string): string => `spraywright-yard-drafts-1 ${serial}`;

export function loadDrafts(serial: string): Drafts {
  try {
    const kept: unknown = JSON.parse(browserStorage()?.getItem(keyOf(serial)) ?? '{}');
    return Object.fromEntries(
      Object.entries((kept ?? {}) as Record<string, unknown>).filter(
        (e): e is [string, string[]] => Array.isArray(e[1]) && e[1].every((t) => typeof t === 'string'),
      ),
    );
  } catch {
    return {};
  }
}

export function keepDrafts(serial: string, drafts: Drafts): void {
  try {
    browserStorage()?.setItem(keyOf(serial), JSON.stringify(drafts));
  } catch {
    // What is written down is kept elsewhere, and says so when it is not.
  }
}
