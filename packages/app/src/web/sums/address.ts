/** What stands in the address of the sums: a sum by its name, and its inputs as typed. */
export interface SumsAddress {
  readonly name: string | undefined;
  readonly inputs: Readonly<Record<string, string>>;
  readonly words: string;
}

/** `#fluidPower?flow=12+gpm` is a sum with an input; `#?about=hose` is a search. */
export function readAddress(hash: string): SumsAddress {
  const [name = '', query = ''] = hash.replace(/^#/, '').split('?', 2);
  const fields = new URLSearchParams(query);
  const words = fields.get('about') ?? '';
  fields.delete('about');
  return {
    name: name === '' ? undefined : decodeURIComponent(name),
    inputs: Object.fromEntries(fields),
    words,
  };
}

export function addressOf({ name, inputs, words }: SumsAddress): string {
  const fields = new URLSearchParams(Object.entries(inputs).filter(([, text]) => text.trim() !== ''));
  if (words !== '') fields.set('about', words);
  const query = fields.toString();
  return `#${encodeURIComponent(name ?? '')}${query === '' ? '' : `?${query}`}`;
}
