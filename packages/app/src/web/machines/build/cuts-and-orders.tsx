import type { StockKeeper } from '../stock-keeper.ts';
import type { CutRow, OrderRow } from '../worker/protocol.ts';

/** What is short, by who supplies it. */
export function OrderList({
  rows,
  store,
}: {
  readonly rows: readonly OrderRow[];
  readonly store: StockKeeper;
}) {
  const suppliers = [...new Set(rows.map((r) => r.supplier))];
  return (
    <section aria-labelledby="order-heading">
      <h2 className="heading" id="order-heading">
        Buy
      </h2>
      {rows.length === 0 && <p>Nothing is short.</p>}
      {suppliers.map((supplier) => (
        <div key={supplier}>
          <h3>{supplier}</h3>
          <div className="scroll">
            <table className="lines">
              <thead>
                <tr>
                  <th scope="col">part</th>
                  <th scope="col">catalogue number</th>
                  <th scope="col">order</th>
                  <th scope="col">takes</th>
                  <th scope="col">
                    <span className="for-readers">came in</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {rows
                  .filter((r) => r.supplier === supplier)
                  .map((r) => (
                    <tr key={r.part}>
                      <th scope="row">{r.name}</th>
                      <td>{r.part}</td>
                      <td className="figure">{r.order}</td>
                      <td>{r.days} days</td>
                      <td>
                        <button
                          type="button"
                          className="word"
                          aria-label={`${r.order} of ${r.name} came in`}
                          onClick={() => store.move(r.part, parseInt(r.order, 10), 'received')}
                        >
                          Came in
                        </button>
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </div>
        </div>
      ))}
    </section>
  );
}

export function CutList({ rows }: { readonly rows: readonly CutRow[] }) {
  return (
    <section aria-labelledby="cut-heading">
      <h2 className="heading" id="cut-heading">
        Cut hose
      </h2>
      {rows.length === 0 ? (
        <p>No hose is cut.</p>
      ) : (
        <div className="scroll">
          <table className="lines">
            <thead>
              <tr>
                {['no.', 'hose', 'one end', 'other end', 'pieces', 'length'].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((r, i) => (
                <tr key={i}>
                  <td>{r.number}</td>
                  <th scope="row">{r.name}</th>
                  <td>{r.ends[0]}</td>
                  <td>{r.ends[1]}</td>
                  <td className="figure">{r.count}</td>
                  <td className="figure strong">{r.length}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
