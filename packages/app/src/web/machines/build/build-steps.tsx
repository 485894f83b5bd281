import { useId, useState } from 'react';
import { parseQuantity } from '@spraywright/engine/quantity';
import type { MachineKeeper } from '../machine-keeper.ts';
import { byWhom } from '../../frame/moment.ts';
import type { StepRow } from '../worker/protocol.ts';
import type { BuildRecord, StepDone } from '@spraywright/engine/rig';
import { StepEvidence } from './step-evidence.tsx';

interface StepsGiven {
  readonly steps: readonly StepRow[];
  readonly record: BuildRecord;
  readonly keeper: MachineKeeper;
}

/** The steps that follow from this rig, each with who looked at it, when, and the figure that was asked. */
export function BuildSteps({ steps, record, keeper }: StepsGiven) {
  const done = record.steps;
  const builders = new Set(steps.filter((s) => s.by === 'builder').flatMap((s) => done.get(s.id)?.by ?? []));
  const finished = steps.filter((s) => done.get(s.id)?.done === true).length;
  return (
    <section aria-labelledby="steps-heading">
      <h2 className="heading" id="steps-heading">
        Put it together
      </h2>
      <p role="status">
        {finished} of {steps.length} steps done.
      </p>
      <ol className="build-steps">
        {steps.map((step, i) => (
          <Step
            key={step.id}
            step={step}
            number={i + 1}
            done={done.get(step.id)}
            record={record}
            sameHand={step.by === 'second person' && builders.has(done.get(step.id)?.by ?? '')}
            keeper={keeper}
          />
        ))}
      </ol>
      <p className="note">
        Order and checks: common practice, no source. Torques are the makers' to say; none is guessed here.
      </p>
    </section>
  );
}

function Step(given: {
  readonly step: StepRow;
  readonly number: number;
  readonly done: StepDone | undefined;
  readonly record: BuildRecord;
  /** A second person was asked for, and whoever built wrote it down. */
  readonly sameHand: boolean;
  readonly keeper: MachineKeeper;
}) {
  const { step, number, done, record, sameHand, keeper } = given;
  const write = (more: Readonly<Record<string, unknown>>) =>
    keeper.write('build-step', { step: step.id, text: step.text, ...more });
  return (
    <li data-step={step.id} data-done={done?.done === true}>
      <span className="step-number" aria-hidden="true">
        {number}
      </span>
      <div className="step-words">
        <p>
          <strong>{step.text}</strong>
          {step.numbers.length > 0 && (
            <span className="numbers">
              <span className="for-readers">parts </span>
              {step.numbers.join(', ')}
            </span>
          )}
        </p>
        <p>
          Check: {step.check}. By: {step.by}.
        </p>
        {step.figure !== '' && <p className="note">{step.figure}</p>}
        <StepEvidence step={step} number={number} record={record} keeper={keeper} />
      </div>
      {done?.done === true ? (
        <p className="step-done">
          <b>Done</b>
          {done.value !== undefined && `, ${done.value}`}
          {done.note !== undefined && `, ${step.asks?.also ?? 'note'} ${done.note}`}
          {done.unknown !== undefined && `, figure not known: ${done.unknown}`}. {byWhom(done)}
          {sameHand && ' A second person was asked to look; the same one wrote it down.'}
          <button
            type="button"
            className="word"
            aria-label={`Open again: step ${number}`}
            onClick={() => write({ done: false })}
          >
            Open again
          </button>
        </p>
      ) : (
        <StepForm step={step} number={number} onDone={(more) => write({ done: true, ...more })} />
      )}
    </li>
  );
}

function StepForm(given: {
  readonly step: StepRow;
  readonly number: number;
  readonly onDone: (more: Pick<StepDone, 'value' | 'unknown' | 'note'>) => void;
}) {
  const { step, number, onDone } = given;
  const id = useId();
  const [value, setValue] = useState('');
  const [unknown, setUnknown] = useState('');
  const [note, setNote] = useState('');
  const [problem, setProblem] = useState('');
  const { asks } = step;
  const finish = () => {
    if (asks === undefined) return onDone({});
    const typed = value.trim();
    if (typed === '') {
      if (unknown.trim() !== '') return onDone({ unknown: unknown.trim() });
      return setProblem(`${asks.what} is missing: type it with its unit, or say why it is not known`);
    }
    const read = parseQuantity(typed, asks.dimension);
    if (!read.ok) return setProblem(`${asks.what}: ${read.message}`);
    if (asks.also !== undefined && note.trim() === '') return setProblem(`${asks.also} is missing`);
    onDone({ value: typed, ...(note.trim() === '' ? {} : { note: note.trim() }) });
  };
  return (
    <form
      className="step-form"
      aria-label={`Step ${number}`}
      onSubmit={(event) => {
        event.preventDefault();
        finish();
      }}
    >
      {asks !== undefined && (
        <>
          <label htmlFor={`${id}-value`}>{asks.what}</label>
          <input
            id={`${id}-value`}
            value={value}
            aria-describedby={problem === '' ? undefined : `${id}-problem`}
            onChange={({ target }) => setValue(target.value)}
          />
          {asks.also !== undefined && (
            <>
              <label htmlFor={`${id}-also`}>{asks.also}</label>
              <input
                id={`${id}-also`}
                value={note}
                maxLength={100}
                onChange={({ target }) => setNote(target.value)}
              />
            </>
          )}
          <label htmlFor={`${id}-unknown`}>or why it is not known</label>
          <input
            id={`${id}-unknown`}
            value={unknown}
            maxLength={200}
            onChange={({ target }) => setUnknown(target.value)}
          />
        </>
      )}
      <button type="submit" className="act">
        Done<span className="for-readers">: step {number}</span>
      </button>
      {problem !== '' && (
        <p id={`${id}-problem`} className="broken" role="alert">
          {problem}
        </p>
      )}
    </form>
  );
}
