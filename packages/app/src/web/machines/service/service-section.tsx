import type { UnitSystem } from '@spraywright/engine/quantity';
import { useMemo, useState } from 'react';
import { MachineSheet } from '../machine-head.tsx';
import { MachinePapers } from '../machine-papers.tsx';
import { useMachine } from '../machine-keeper.ts';
import { byWhom } from '../../frame/moment.ts';
import { WhoWorks } from '../who-works.tsx';
import { askedOf, useTold } from '../worker/machine-link.ts';
import { FaultFinder, type Asked } from './fault-finder.tsx';
import { LastLiquid } from './last-liquid.tsx';
import { serviceState, type ServiceCall } from './service-state.ts';
import '../../style/machines.css';

const NOTHING: Asked = { readings: [], looks: [] };
const PAPERS = [
  { file: 'handbook.pdf', words: 'handbook (PDF)' },
  { file: 'handbook.html', words: 'handbook for a telephone, works without a network' },
  { file: 'plate.pdf', words: 'plate (PDF)' },
];

/** A machine in service: what is wrong with it, what it carried, what was done to it; its papers. */
export function ServiceSection({ serial, units }: { readonly serial: string; readonly units: UnitSystem }) {
  const { state, keeper } = useMachine(serial);
  const [asked, setAsked] = useState(NOTHING);
  const machine = askedOf(state, units);
  const told = useTold('fault', machine, asked);
  // Until the entries are there, a part that was put in since may be missing from what the engine was asked.
  const weighed = told?.current === true && state.keeping.is !== 'asking';
  const record = useMemo(() => serviceState(state), [state]);
  return (
    <MachineSheet name="Service" serial={serial} state={state} told={told}>
      {(value) => (
        <>
          <MachinePapers serial={serial} units={units} papers={PAPERS} />
          <WhoWorks />
          <LastLiquid machine={machine!} record={record} keeper={keeper} />
          <FaultFinder sheet={value} weighed={weighed} asked={asked} onAsk={setAsked} keeper={keeper} />
          <Calls calls={record.calls} />
        </>
      )}
    </MachineSheet>
  );
}

function Calls({ calls }: { readonly calls: readonly ServiceCall[] }) {
  return (
    <section aria-labelledby="calls-heading">
      <h2 className="heading" id="calls-heading">
        Record of service
      </h2>
      {calls.length === 0 && <p>Nothing has been written down yet.</p>}
      <ol className="machine-lines">
        {[...calls].reverse().map((c, i) => (
          <li key={i}>
            <p>
              <strong>{c.words}</strong>
            </p>
            <p>
              {c.verdict}
              {c.done !== '' && `. Done: ${c.done}`}
              {c.sent !== '' && `. Sent: ${c.sent}`}. {byWhom(c)}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}
