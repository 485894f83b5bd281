import { useState } from 'react';
import { moneyText } from '@spraywright/engine/quantity';
import { byWhom } from '../frame/moment.ts';
import { EDITIONS, shopEditions, type ShopEdition } from './shop-link.ts';
import { fieldInShopWords } from './shop-words.ts';

/** Who changed which setting, from what to what; asked for when it is opened. */
export function ShopEditions() {
  const [found, setFound] = useState<readonly ShopEdition[]>();
  const [more, setMore] = useState(true);
  const [why, setWhy] = useState('');
  const ask = async (before: readonly ShopEdition[]) => {
    const answer = await shopEditions(before.at(-1)?.edition);
    if ('why' in answer) return setWhy(answer.why);
    const { editions } = answer.value;
    setFound([...before, ...editions]);
    setMore(editions.length === EDITIONS);
  };
  return (
    <details
      className="shop-editions"
      onToggle={(e) => e.currentTarget.open && found === undefined && void ask([])}
    >
      <summary>Who changed what</summary>
      <p role="status">{why}</p>
      <ol>
        {found?.map((edition) => (
          <li key={edition.edition}>
            <p>
              {edition.changes.length === 0
                ? 'As they were first laid in'
                : `Edition ${edition.edition}, ${byWhom(edition)}`}
            </p>
            <ul>
              {edition.changes.map((change) => (
                <li key={change.field}>
                  {fieldInShopWords(change.field)}: {valueText(change.field, change.before)} becomes{' '}
                  <b>{valueText(change.field, change.after)}</b>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
      {found !== undefined && more && (
        <button type="button" className="part-button" onClick={() => void ask(found)}>
          Earlier
        </button>
      )}
    </details>
  );
}

/** A setting as people read it: dollars, words, or the fields of an entry one after the other. */
function valueText(field: string, value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value))
    return value.length === 0 ? 'none' : value.map((v) => valueText('', v)).join('; ');
  if (typeof value === 'object')
    return Object.entries(value)
      .filter(([name]) => name !== 'id')
      .map(([name, inner]) => {
        const place = `${field.replace(/\[[^\]]*\]/g, '')}.${name}`;
        return `${fieldInShopWords(place)} ${valueText(name, inner)}`;
      })
      .join(', ');
  if (typeof value === 'number') return /Cents/.test(field) ? moneyText(value) : String(value);
  return typeof value === 'string' ? value : value === true ? 'yes' : 'no';
}
