import { FORMULATIONS } from '@spraywright/engine/liquids';
import { useDesk, useStore } from '../ui/desk-context.ts';

interface Product {
  readonly name: string;
  readonly form: string;
}

/** What is mixed in the tank, by the form it is sold in: the handbook says in which order it goes in. */
export function Products({ at }: { at: number }) {
  const store = useStore();
  const products = useDesk((s) => {
    const job = s.current === undefined ? undefined : s.jobs[s.current];
    const { liquids } = job!.rig.brief as { liquids: readonly { products?: readonly Product[] }[] };
    return liquids[at]?.products ?? NONE;
  });
  const put = (next: readonly Product[], merge?: string) =>
    store.edit(
      {
        about: 'Products in the mix',
        puts: [{ path: ['brief', 'liquids', at, 'products'], value: next.length === 0 ? undefined : next }],
      },
      merge,
    );
  const change = (i: number, by: Partial<Product>, merge?: string) =>
    put(
      products.map((p, k) => (k === i ? { ...p, ...by } : p)),
      merge,
    );
  return (
    <fieldset className="brief-products">
      <legend>Products mixed in it</legend>
      {products.map((p, i) => (
        <p key={i}>
          <input
            aria-label={`Product ${i + 1}`}
            value={p.name}
            maxLength={60}
            onChange={(event) => change(i, { name: event.target.value }, `product ${at} ${i}`)}
            onBlur={() => store.settle()}
          />{' '}
          <select
            aria-label={`Form of product ${i + 1}`}
            value={p.form}
            onChange={(event) => change(i, { form: event.target.value })}
          >
            {FORMULATIONS.map((form) => (
              <option key={form}>{form}</option>
            ))}
          </select>{' '}
          <button type="button" className="word" onClick={() => put(products.filter((_, k) => k !== i))}>
            Take it out
          </button>
        </p>
      ))}
      {products.length < 12 && (
        <button
          type="button"
          className="word"
          onClick={() =>
            put([...products, { name: `Product ${products.length + 1}`, form: 'soluble liquid' }])
          }
        >
          Add a product
        </button>
      )}
    </fieldset>
  );
}

const NONE: readonly Product[] = [];
