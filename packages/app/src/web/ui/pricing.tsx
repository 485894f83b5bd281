import { useMe } from '../frame/me.ts';
import type { PricingTold } from '../protocol.ts';
import { useStore } from './desk-context.ts';
import { FieldProblems, GivenBox } from './given-box.tsx';
import '../style/pricing.css';

const RULES = { list: 'list prices', 'cost-plus': 'cost and a markup', 'target-margin': 'a margin' } as const;

/** How the rig is priced: the rule, what is taken off, freight and tax, and what the shop keeps. */
export function Pricing({ told }: { readonly told: PricingTold }) {
  const store = useStore();
  const me = useMe();
  const turnTo = (mode: string) =>
    store.edit({
      about: mode === 'shop' ? 'Priced as the shop does' : `Priced by ${RULES[mode as keyof typeof RULES]}`,
      puts: [{ path: ['pricing', 'price'], value: ruleOf(mode, told) }],
    });
  const refusal = told.refusals[me?.role ?? ''] ?? told.refusals[''];
  const { percent, tax } = told;
  return (
    <div className="pricing" role="group" aria-label="How it is priced">
      <p>
        Priced by{' '}
        <span className="given choice">
          <select aria-label="Priced by" value={told.mode} onChange={(event) => turnTo(event.target.value)}>
            <option value="shop">{`${RULES[told.shopMode]}, as the shop does`}</option>
            {Object.entries(RULES).map(([mode, name]) => (
              <option key={mode} value={mode}>
                {name}
              </option>
            ))}
          </select>
        </span>
        {percent !== undefined && (
          <>
            {' '}
            of <GivenBox given={percent} /> %{told.mode === 'cost-plus' ? ' on cost' : ' of the price'}
          </>
        )}
        , discount <GivenBox given={told.discount} /> %, freight <GivenBox given={told.freight} />
      </p>
      <p>
        {tax === undefined ? (
          <span className="note">No sales tax is reckoned: the shop sets it in the office.</span>
        ) : (
          <label>
            <input
              type="checkbox"
              checked={!tax.free}
              onChange={(event) =>
                store.edit({
                  about: event.target.checked ? 'With sales tax' : 'Without sales tax',
                  puts: [{ path: ['pricing', 'taxFree'], value: event.target.checked ? undefined : true }],
                })
              }
            />{' '}
            sales tax of {tax.percent} % on {tax.on === 'goods' ? 'parts and hose' : 'everything'}
          </label>
        )}
      </p>
      <FieldProblems givens={[told.discount, told.freight, ...(percent === undefined ? [] : [percent])]} />
      <p className="note">The shop keeps {told.kept}.</p>
      {refusal !== undefined && <p className="pricing-refusal">Not to be quoted like this: {refusal}.</p>}
    </div>
  );
}

function ruleOf(mode: string, { markup, margin }: PricingTold): unknown {
  switch (mode) {
    case 'list':
      return { mode };
    case 'cost-plus':
      return { mode, markupPercent: Math.min(900, Math.max(0, markup)) };
    case 'target-margin':
      return { mode, marginPercent: Math.min(90, Math.max(0, margin)) };
    default:
      return undefined;
  }
}
