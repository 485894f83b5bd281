import type { BillGroup } from '../protocol.ts';
import { useDesk } from './desk-context.ts';
import { Pricing } from './pricing.tsx';
import { QuoteEntry } from './quote-entry.tsx';

const NONE: readonly BillGroup[] = [];

/** The bill in its groups, each opening to its lines. */
export function Bill() {
  const bill = useDesk((s) => s.body?.bill ?? NONE);
  const toPay = useDesk((s) => s.body?.toPay);
  const pricing = useDesk((s) => s.body?.pricing);
  if (bill.length === 0) return null;
  return (
    <section className="bill" aria-labelledby="bill-heading">
      <div className="area-head">
        <h2 className="heading" id="bill-heading">
          Bill
        </h2>
      </div>
      {bill.map((group) => (
        <details key={group.name}>
          <summary>
            <span>{group.name}</span>
            <span className="note">{group.rows.length} lines</span>
            <span className="price">{group.price}</span>
          </summary>
          <table>
            <tbody>
              {group.rows.map((row, i) => (
                <tr key={i}>
                  <th scope="row">{row.name}</th>
                  <td>{row.late ?? ''}</td>
                  <td>{row.quantity}</td>
                  <td>{row.price}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
      {pricing === undefined ? (
        <p className="note">
          Everything here stands at list prices. What it costs the shop and what the customer is to pay are
          told to those who quote: owner and builder.
        </p>
      ) : (
        <Pricing told={pricing} />
      )}
      {pricing?.rows.map((row) => (
        <p className="bill-row" key={row.name}>
          <span>{row.name}</span>
          <span>{row.figure}</span>
        </p>
      ))}
      <p className="total">
        <span>
          {pricing === undefined
            ? 'At list prices'
            : `To be paid, sales tax ${pricing.tax?.free === false ? '' : 'not '}included`}
        </span>
        <span className="price">{toPay}</span>
      </p>
      {pricing !== undefined && <QuoteEntry />}
    </section>
  );
}
