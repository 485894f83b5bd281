import type { UnitSystem } from '@spraywright/engine/quantity';
import { useDeferredValue, useEffect, useState } from 'react';
import { closestMethod, METHODS, methodNamed, methodsAbout } from '../../calc/registry.ts';
import { SheetFrame } from '../frame/sheet-frame.tsx';
import { addressOf, readAddress } from './address.ts';
import { Sum } from './sum.tsx';

/** Sums listed at once; more words find the rest. */
const LISTED = 40;

/** Every sum behind a proof: found by what it does, worked out on what is typed. */
export function SumsSheet({ units: kept }: { units: UnitSystem }) {
  const [at, setAt] = useState(() => readAddress(location.hash));
  const [units, setUnits] = useState(kept);
  useEffect(() => {
    const follow = () => setAt(readAddress(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  const go = (next: Partial<typeof at>, step: boolean) => {
    const whole = { ...at, ...next };
    setAt(whole);
    // Opening a sum is a step to come back from; what is typed into it is not.
    history[step ? 'pushState' : 'replaceState'](null, '', addressOf(whole));
  };
  const words = useDeferredValue(at.words);
  const found = methodsAbout(words.split(/\s+/));
  const method = at.name === undefined ? undefined : methodNamed(at.name);
  useEffect(() => {
    document.title = `${method?.name ?? 'Sums'} - Spraywright`;
  }, [method]);
  return (
    <SheetFrame
      here="Sums"
      className="sums"
      sections={[]}
      at={undefined}
      tools={
        <button
          type="button"
          className="tool"
          aria-label={`US / SI: units, now ${units === 'us' ? 'US' : 'SI'}`}
          onClick={() => setUnits(units === 'us' ? 'metric' : 'us')}
        >
          <b data-on={units === 'us'}>US</b> / <b data-on={units === 'metric'}>SI</b>
        </button>
      }
    >
      <div className="sums-areas">
        <section className="finder" aria-label="Find a sum">
          <h1 className="heading">Sums behind the proof</h1>
          <label className="find">
            <span className="note">What is to be worked out</span>
            <input
              type="search"
              value={at.words}
              placeholder="such as hose friction, or tip flow"
              autoFocus={at.name === undefined}
              onChange={(e) => go({ words: e.target.value }, false)}
            />
          </label>
          <p className="note" role="status">
            {found.length === 0
              ? `None of the ${METHODS.length} sums speaks of all these words.`
              : `${found.length} of ${METHODS.length} sums${found.length > LISTED ? `; the first ${LISTED}, more words narrow them down` : ''}`}
          </p>
          <ol>
            {found.slice(0, LISTED).map((m) => (
              <li key={m.name}>
                <a
                  href={addressOf({ name: m.name, inputs: {}, words: at.words })}
                  aria-current={m.name === at.name ? 'page' : undefined}
                  onClick={(e) => {
                    if (e.ctrlKey || e.metaKey || e.shiftKey) return;
                    e.preventDefault();
                    go({ name: m.name, inputs: m.name === at.name ? at.inputs : {} }, true);
                  }}
                >
                  {m.purpose}
                </a>
              </li>
            ))}
          </ol>
        </section>
        {method !== undefined ? (
          <Sum
            key={method.name}
            method={method}
            inputs={at.inputs}
            units={units}
            onType={(name, text) => go({ inputs: { ...at.inputs, [name]: text } }, false)}
          />
        ) : (
          <section className="sum" aria-label="The sum">
            {at.name === undefined ? (
              <p>
                Every figure of a proof comes from one of these sums. Find one by what it does, type what is
                known with its unit, such as 12 gpm or 45 psi, and read the result with its working and its
                source.
              </p>
            ) : (
              <p className="problem" role="alert">
                There is no sum called {at.name}
                {closestMethod(at.name) === undefined ? '.' : `; did you mean ${closestMethod(at.name)}?`}
              </p>
            )}
          </section>
        )}
      </div>
    </SheetFrame>
  );
}
