import { useEffect, useState } from 'react';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { CalibrationPlot } from './calibration-plot.tsx';
import { shopLearned, type ShopLearned } from './learned-link.ts';
import { PartDrift, timesOf } from './part-drift.tsx';
import { SetAside } from './set-aside.tsx';
import '../../style/office-learned.css';

/** After no answer the records are asked again so long later [ms]. */
const TRY_AGAIN = 4000;

/** What the yard tests have taught the shop of its parts, and how its promises came out. */
export function LearnedSheet({ units }: { readonly units: UnitSystem }) {
  const [learned, setLearned] = useState<ShopLearned>();
  const [why, setWhy] = useState('');
  useEffect(() => {
    let wanted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const ask = async () => {
      const answer = await shopLearned(units);
      if (!wanted) return;
      setWhy('why' in answer ? answer.why : '');
      if ('learned' in answer) setLearned(answer.learned);
      else timer = setTimeout(() => void ask(), TRY_AGAIN);
    };
    void ask();
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [units]);
  return (
    <div className="learned-sheet">
      <h1>What the yard tests taught</h1>
      {learned === undefined ? (
        <p role="status">{why === '' ? 'Working through the tests of all machines' : `${why}.`}</p>
      ) : (
        <Taught learned={learned} />
      )}
    </div>
  );
}

function Taught({ learned }: { readonly learned: ShopLearned }) {
  const { document, factors, calibration, unfinished } = learned;
  const open =
    unfinished.length === 0
      ? ''
      : ` ${unfinished.length === 1 ? 'A test is' : `${unfinished.length} tests are`} begun and not finished (${unfinished.join(', ')}): that teaches nothing yet.`;
  if (document.machines === 0)
    return (
      <>
        <p role="status">
          No machine has a finished yard test yet. Each one that is tested says how far its parts are off
          their leaflets, and makes the odds of the next quote sharper.{open}
        </p>
        <SetAside learned={learned} />
      </>
    );
  const off = (f: ShopLearned['factors'][number]) => Math.abs(f.mean - f.before.mean) / f.deviation;
  const parts = [...factors].sort((a, b) => off(b) - off(a));
  const [drifting, still] = [parts.filter((f) => f.drifts), parts.filter((f) => !f.drifts)];
  const times = timesOf(factors);
  return (
    <>
      <p role="status">
        From {count(document.machines, 'machine')} and {count(document.readings, 'reading')}.{open}
      </p>
      <section aria-labelledby="off-heading">
        <h2 className="heading" id="off-heading">
          Parts that are not what they are said to be
        </h2>
        {drifting.length === 0 ? (
          <p>None: no part is off its leaflet by more than the readings leave in doubt.</p>
        ) : (
          <>
            <p className="learned-key">
              Upright: how far off. Across: when it was tested. Each dot is one machine, its bar is what the
              readings leave in doubt (5 to 95 %). The grey band is the part itself, the dashed lines are
              where copies were expected before any test. A part far off its leaflet is first a question: is
              it the right part, and is the gauge right?
            </p>
            <div className="drifts">
              {drifting.map((part) => (
                <PartDrift key={part.key} part={part} times={times} />
              ))}
            </div>
          </>
        )}
      </section>
      {still.length > 0 && (
        <details className="no-drift">
          <summary>Show {count(still.length, 'part')} with no drift to tell</summary>
          <div className="drifts">
            {still.map((part) => (
              <PartDrift key={part.key} part={part} times={times} />
            ))}
          </div>
        </details>
      )}
      <CalibrationPlot calibration={calibration} />
      <SetAside learned={learned} />
    </>
  );
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
