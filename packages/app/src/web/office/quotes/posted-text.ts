import type { Posted } from './quotes-link.ts';

const TEXTS: Readonly<Record<Posted['is'], (to: string, more: string) => string>> = {
  sent: (to) => `The letter to ${to} was sent.`,
  kept: (to, file) =>
    `No mail server is set: the letter to ${to} was not sent. It lies in the outbox as ${file}.`,
  failed: (to, why) => `The letter to ${to} could not be sent (${why}): reach them in another way.`,
  nobody: () => 'No letter was written.',
};

/** What became of a letter to a customer. */
export function postedText({ is, file, why }: Posted, to: string): string {
  return TEXTS[is](to, file ?? why ?? '');
}
