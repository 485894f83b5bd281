import { moneyText } from '@spraywright/engine/quantity';
import type { Option, Revision } from './quotes-link.ts';
import { dayText } from '../../frame/moment.ts';

type Value = (option: Option) => string;

const ROWS: readonly (readonly [name: string, value: Value, strong?: boolean])[] = [
  ['Lines', ({ summary }) => moneyText(summary.linesCents)],
  [
    'Discount',
    ({ summary: { discount } }) =>
      discount === undefined ? 'none' : `${moneyText(discount.cents)}, ${discount.askedPercent} %`,
  ],
  [
    'Sales tax',
    ({ summary: { tax } }) => (tax === undefined ? 'none' : `${moneyText(tax.cents)}, ${tax.percent} %`),
  ],
  ['To be paid', ({ summary }) => moneyText(summary.totalCents), true],
  ['To pay on order', ({ summary }) => moneyText(summary.depositCents)],
  ['Cost', ({ summary }) => moneyText(summary.costCents)],
  [
    'Margin',
    ({ summary: { priceCents, costCents } }) =>
      priceCents === 0 ? 'none' : `${((1 - costCents / priceCents) * 100).toFixed(1)} %`,
  ],
  ['Hours of work', ({ summary }) => summary.labourHours.toFixed(1)],
  ['Ordered on the day of the quote, ready by', ({ summary }) => dayText(summary.readyDay)],
  [
    'Promises',
    ({ summary: { counts } }) =>
      (['broken', 'unknown', 'thin', 'kept'] as const)
        .filter((state) => counts[state] > 0)
        .map((state) => `${counts[state]} ${state}`)
        .join(', '),
  ],
  ['Not promised', ({ summary: { words } }) => words.willNot.map((row) => row.text).join(' ')],
];

/** The options of a revision side by side, with what only the shop sees: cost, margin, hours. */
export function OptionsTable({ document: { options } }: { readonly document: Revision['document'] }) {
  return (
    <section aria-label="Options">
      <h2 className="heading">{options.length === 1 ? 'The rig' : 'Options side by side'}</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label="Options and prices">
        <table>
          <thead>
            <tr>
              <td />
              {options.map((o, i) => (
                <th key={o.name} scope="col">
                  {options.length > 1 ? `${i + 1}. ` : ''}
                  {o.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ROWS.map(([name, value, strong]) => (
              <tr key={name} className={strong === true ? 'strong' : undefined}>
                <th scope="row">{name}</th>
                {options.map((o) => (
                  <td key={o.name}>{value(o)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
