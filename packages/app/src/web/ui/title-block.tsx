import { STATE_WORDS } from '@spraywright/engine/drawings';
import type { PromiseState } from '@spraywright/engine/rig';
import type { ReactNode } from 'react';
import { useDesk } from './desk-context.ts';
import { JOB_STATES } from '../frame/job-standing.ts';
import { Mark } from './marks.tsx';
import { ArcSign, ProjectionSign } from './signs.tsx';
import { useStanding } from './use-standing.ts';

const COUNTED: readonly PromiseState[] = ['broken', 'thin', 'unknown', 'kept'];

/** Identity, price and masses of the job; on narrow sheets the bar at the bottom. */
export function TitleBlock() {
  const shop = useDesk((s) => s.shop);
  const body = useDesk((s) => s.body);
  const fold = useDesk((s) => s.fold);
  const steps = useDesk((s) => (s.current === undefined ? 0 : (s.jobs[s.current]?.past.length ?? 0)));
  const standing = useStanding();
  if (body === undefined || shop === undefined) return null;
  const state = standing === undefined ? 'Not known' : JOB_STATES[standing.state];
  const counts = (
    <span className="count-marks">
      {COUNTED.map((state) => (
        <span key={state} className={state}>
          <Mark state={state} /> {body.counts[state]}
          <span className="for-readers"> {STATE_WORDS[state].toLowerCase()}</span>
        </span>
      ))}
    </span>
  );
  if (fold !== 'desk')
    return (
      <footer className="title-block bar" aria-label="Title block">
        {fold === 'tablet' && (
          <>
            <div className="cell sign">
              <ArcSign />
            </div>
            <Cell name={`${shop.name}, for ${body.customer}`} className="grow title">
              {body.title}
            </Cell>
          </>
        )}
        <Cell name={body.pricing === undefined ? 'List price' : 'Price'} className="price">
          {body.price}
        </Cell>
        {fold === 'tablet' && <Cell name="Full">{body.full}</Cell>}
        <Cell name={state} className="grow">
          {counts}
        </Cell>
        <Cell name="Ready in">{body.ready}</Cell>
      </footer>
    );
  return (
    <footer className="title-block" aria-label="Title block">
      <div className="cells first">
        <div className="cell shop">
          <ArcSign />
          <span>
            <strong>{shop.name}</strong>
            <small>{shop.address}</small>
          </span>
        </div>
        <Cell name="Customer">{body.customer}</Cell>
      </div>
      <div className="cells">
        <Cell name="Title" className="title">
          {body.title}
        </Cell>
      </div>
      <div className="cells figures">
        <Cell name={body.pricing === undefined ? 'List price' : 'Price'} className="price">
          {body.price}
        </Cell>
        <Cell name="Dry">{body.dry}</Cell>
        <Cell name="Full">{body.full}</Cell>
        <Cell name="Ready in">{body.ready}</Cell>
      </div>
      <div className="cells small">
        <Cell name="Job">{body.id}</Cell>
        <Cell name="Changes">{steps}</Cell>
        <Cell name="State">{state}</Cell>
        <Cell name="Catalogue">{`${body.catalogue}, engine ${body.engine}`}</Cell>
        <div className="cell sign">
          <ProjectionSign />
        </div>
      </div>
    </footer>
  );
}

function Cell({ name, className = '', children }: { name: string; className?: string; children: ReactNode }) {
  return (
    <div className={`cell ${className}`}>
      <small>{name}</small>
      <span>{children}</span>
    </div>
  );
}
