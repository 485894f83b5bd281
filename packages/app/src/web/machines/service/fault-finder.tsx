import { parseQuantity } from '@spraywright/engine/quantity';
import { useEffect, useState } from 'react';
import type { MachineKeeper } from '../machine-keeper.ts';
import type { CheckRow, FaultSheet, Questions } from '../worker/protocol.ts';

export type Asked = Questions['fault']['asks'];

interface FinderGiven {
  readonly sheet: FaultSheet;
  /** Whether the sheet tells of everything that was read, and of the machine as it now is. */
  readonly weighed: boolean;
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
  readonly keeper: MachineKeeper;
}

/** Symptom and readings in; the likeliest faults, the next check and the part to send out. */
export function FaultFinder({ sheet, weighed, asked, onAsk, keeper }: FinderGiven) {
  const known = new Set([...asked.readings, ...asked.looks].map((a) => a.id));
  const given = sheet.checks.filter((c) => known.has(c.id));
  const first = sheet.first.filter((c) => !known.has(c.id));
  const atOnce = new Set(first.map((c) => c.id));
  // Before anything is answered, the order of the rest says little.
  const next = known.size === 0 ? [] : sheet.next.filter((c) => !known.has(c.id) && !atOnce.has(c.id));
  const listed = new Set([...given, ...first, ...next].map((c) => c.id));
  const rest = sheet.checks.filter((c) => !listed.has(c.id));
  const row = (check: CheckRow, settles?: string) => (
    <Check key={check.id} check={check} settles={settles} asked={asked} onAsk={onAsk} />
  );
  return (
    <section aria-labelledby="fault-heading">
      <h2 className="heading" id="fault-heading">
        What is wrong with it
      </h2>
      <p className="note">
        With clean water in the tank and the pressure let off before anything is opened. Nobody in front of
        the gun or near a turning shaft.
      </p>
      {sheet.problems.map((p) => (
        <p key={p} className="broken" role="alert">
          {p}
        </p>
      ))}
      {known.size === 0 ? (
        <p className="verdict">Nothing has been read yet: begin with the questions below.</p>
      ) : weighed ? (
        <Verdict sheet={sheet} />
      ) : (
        <p className="verdict">Weighing what was read.</p>
      )}
      {first.length > 0 && (
        <>
          <h3>
            {known.size === 0 ? 'Ask these first, whatever it is' : 'Still open of the first questions'}
          </h3>
          <ul className="check-rows">{first.map((c) => row(c))}</ul>
        </>
      )}
      {next.length > 0 && (
        <>
          <h3>Then check, the most telling first</h3>
          <ol className="check-rows">{next.map((c) => row(c, c.settles))}</ol>
        </>
      )}
      {given.length > 0 && (
        <>
          <h3>Read and looked at</h3>
          <ul className="check-rows">{given.map((c) => row(c))}</ul>
        </>
      )}
      <details>
        <summary className="word">Everything else that can be checked ({rest.length})</summary>
        <ul className="check-rows">{rest.map((c) => row(c))}</ul>
      </details>
      <KeepCall
        sheet={sheet}
        weighed={weighed}
        asked={asked}
        keeper={keeper}
        onKept={() => onAsk({ readings: [], looks: [] })}
      />
      <p className="note">
        How often which fault occurs is {sheet.source}. The rest follows from this rig's own network and
        tolerances.
      </p>
    </section>
  );
}

function Verdict({ sheet }: { readonly sheet: FaultSheet }) {
  return (
    <div aria-live="polite">
      <p className="verdict" data-state={sheet.state}>
        {sheet.verdict}
      </p>
      {sheet.mend !== undefined && <p>Do: {sheet.mend}</p>}
      {sheet.send !== undefined && (
        <p>
          Send: <b>{sheet.send}</b>
          {sheet.part !== undefined && ` (${sheet.part})`}
        </p>
      )}
      {sheet.suspects.length > 0 && (
        <table className="lines suspects">
          <thead>
            <tr>
              <th scope="col">cause</th>
              <th scope="col">chance</th>
              <th scope="col" aria-hidden="true" />
            </tr>
          </thead>
          <tbody>
            {sheet.suspects.map((s) => (
              <tr key={s.name}>
                <th scope="row">{s.name}</th>
                <td>{s.chance}</td>
                <td className="bar" aria-hidden="true">
                  <span style={{ width: `${(100 * s.probability).toFixed(1)}%` }} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

function Check(given: {
  readonly check: CheckRow;
  readonly settles: string | undefined;
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
}) {
  const { check, settles, asked, onAsk } = given;
  const words = (
    <p>
      {check.text}
      {settles !== undefined && (
        <>
          {' '}
          <span className="note">Likely settles {settles} of the doubt.</span>
        </>
      )}
    </p>
  );
  if (check.kind === 'look') {
    const answer = asked.looks.find((l) => l.id === check.id)?.answer;
    const put = (to: 'yes' | 'no') =>
      onAsk({
        ...asked,
        looks: [
          ...asked.looks.filter((l) => l.id !== check.id),
          ...(answer === to ? [] : [{ id: check.id, answer: to }]),
        ],
      });
    return (
      <li>
        {words}
        <div className="yes-no" role="group" aria-label={check.text}>
          {(['yes', 'no'] as const).map((to) => (
            <button key={to} type="button" aria-pressed={answer === to} onClick={() => put(to)}>
              {to}
            </button>
          ))}
        </div>
      </li>
    );
  }
  return (
    <li>
      {words}
      <ReadingBox check={check} asked={asked} onAsk={onAsk} />
    </li>
  );
}

function ReadingBox(given: {
  readonly check: CheckRow;
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
}) {
  const { check, asked, onAsk } = given;
  const kept = asked.readings.find((r) => r.id === check.id)?.value ?? '';
  const [typed, setTyped] = useState(kept);
  const [problem, setProblem] = useState('');
  const done = () => {
    const value = typed.trim();
    if (value === kept) return;
    const read = value === '' ? undefined : parseQuantity(value, check.dimension!);
    if (read?.ok === false) return setProblem(read.message);
    setProblem('');
    const others = asked.readings.filter((r) => r.id !== check.id);
    onAsk({ ...asked, readings: value === '' ? others : [...others, { id: check.id, value }] });
  };
  return (
    <div>
      <input
        aria-label={check.text}
        value={typed}
        placeholder="with its unit"
        onChange={({ target }) => setTyped(target.value)}
        onBlur={done}
        onKeyDown={({ key }) => {
          if (key === 'Enter') done();
        }}
      />
      {problem !== '' && (
        <p className="broken" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

function KeepCall(given: {
  readonly sheet: FaultSheet;
  readonly weighed: boolean;
  readonly asked: Asked;
  readonly keeper: MachineKeeper;
  readonly onKept: () => void;
}) {
  const { sheet, weighed, asked, keeper, onKept } = given;
  const [words, setWords] = useState('');
  const [done, setDone] = useState('');
  const [sentPart, setSentPart] = useState('');
  const [problem, setProblem] = useState('');
  const [wanted, setWanted] = useState(false);
  const keep = () => {
    const read = asked.readings.length + asked.looks.length;
    keeper.write('service', {
      words: words.trim(),
      readings: asked.readings,
      looks: asked.looks,
      verdict: read === 0 ? 'Nothing was read' : sheet.verdict,
      state: read === 0 ? 'cannot-tell' : sheet.state,
      done: done.trim(),
      sent: sentPart.trim(),
    });
    setWanted(false);
    setWords('');
    setDone('');
    setSentPart('');
    onKept();
  };
  // A call is kept with the verdict of everything that was read, which may still be awaited.
  useEffect(() => {
    if (wanted && weighed) keep();
  }, [wanted, weighed]);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (words.trim() === '') return setProblem('Write down what was said first');
        setProblem('');
        setWanted(true);
      }}
    >
      <h3>Write the call down</h3>
      <p className="field">
        <label htmlFor="call-words">What was said</label>
        <input
          id="call-words"
          value={words}
          maxLength={2000}
          onChange={({ target }) => setWords(target.value)}
        />
      </p>
      <p className="field">
        <label htmlFor="call-done">What was done</label>
        <input id="call-done" value={done} maxLength={500} onChange={({ target }) => setDone(target.value)} />
      </p>
      <p className="field">
        <label htmlFor="call-sent">Part sent</label>
        <input
          id="call-sent"
          value={sentPart}
          maxLength={120}
          placeholder={sheet.part ?? 'none'}
          onChange={({ target }) => setSentPart(target.value)}
        />
        <button type="submit" className="act">
          Keep this call
        </button>
      </p>
      <p role="status">{wanted && !weighed ? 'Kept as soon as what was read is weighed.' : ''}</p>
      {problem !== '' && (
        <p className="broken" role="alert">
          {problem}.
        </p>
      )}
    </form>
  );
}
