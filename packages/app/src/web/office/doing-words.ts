import { moneyText } from '@spraywright/engine/quantity';
import { wordsOf } from '../part-form/part-draft.ts';
import { fieldInShopWords } from './shop-words.ts';

/** "pricing.freightCents nothing becomes 25000", as the book keeps what was changed of settings and parts. */
const CHANGED = /^(\S+) (.*) becomes (.*)$/;
const WORDS: Readonly<Record<string, (field: string) => string>> = {
  shop: fieldInShopWords,
  parts: (field) =>
    field
      .split('.')
      .map(wordsOf)
      .join(', ')
      .replace(/ \[\$\]$/, ''),
};

/** What somebody did as people read it: fields called as on their page, money in dollars. */
export function doingInWords({
  aboutKind,
  what,
}: {
  readonly aboutKind: string;
  readonly what: string;
}): string {
  const named = WORDS[aboutKind];
  if (named === undefined) return what;
  return what
    .split('; ')
    .map((piece) => {
      const [, field, before, after] = CHANGED.exec(piece) ?? [];
      if (field === undefined) return piece;
      const value = (text: string) =>
        field.includes('Cents') && /^\d+$/.test(text) ? moneyText(Number(text)) : text;
      return `${named(field)} ${value(before!)} becomes ${value(after!)}`;
    })
    .join('; ');
}
