import type { UnitSystem } from '@spraywright/engine/quantity';
import { useEffect, useRef } from 'react';
import type { Method, MethodParam } from '../../calc/method.ts';
import { runCalculation } from '../../calc/registry.ts';
import { exampleOf } from '../../calc/typed-input.ts';
import { resultText, taken, takesAsRead } from '../../calc/wording.ts';

/** One sum: what it takes, what comes out, and how. */
export function Sum({
  method,
  inputs,
  units,
  onType,
}: {
  method: Method;
  inputs: Readonly<Record<string, string>>;
  units: UnitSystem;
  onType: (name: string, text: string) => void;
}) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    head.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const given = Object.fromEntries(Object.entries(inputs).filter(([, text]) => text.trim() !== ''));
  const done = runCalculation(method.name, given);
  const problems = done.ok ? [] : done.problems;
  const asked = method.params.filter((p) => p.optional !== true && given[p.name] === undefined);
  return (
    <section className="sum" aria-label="The sum">
      <h2 ref={head}>{method.purpose}</h2>
      <p className="note">
        spraywright calc <b>{method.name}</b>
      </p>
      <h3 className="heading">Given</h3>
      <ul className="inputs">
        {method.params.map((param) => {
          // An empty field is asked for in its place; that it is missing need not be said again.
          const problem = problems.find((p) => p.path[0] === param.name && p.code !== 'missing');
          return (
            <li key={param.name}>
              <label>
                <span>{param.meaning}</span>
                <Field
                  param={param}
                  text={inputs[param.name] ?? ''}
                  refused={problem !== undefined}
                  onType={(text) => onType(param.name, text)}
                />
                <span className="note">{takesAsRead(param, units)}</span>
              </label>
              {problem !== undefined && (
                <span className="problem" role="alert">
                  {problem.message}
                </span>
              )}
            </li>
          );
        })}
      </ul>
      <h3 className="heading">Formula</h3>
      <p className="formula">{method.formula}</p>
      <h3 className="heading">Result</h3>
      <div className="result" role="status">
        {done.ok ? (
          <>
            <ul className="steps">
              {done.working.inputs.map((i) => (
                <li key={i.name}>
                  {i.meaning}: {i.typed}
                  {taken(i)}
                </li>
              ))}
            </ul>
            <ul className="answers">
              {done.results.map((r) => (
                <li key={r.name}>{resultText(r, units)}</li>
              ))}
            </ul>
          </>
        ) : asked.length > 0 ? (
          <p className="note">Still to be given: {asked.map((p) => p.meaning).join('; ')}.</p>
        ) : (
          problems
            .filter((p) => !method.params.some((param) => param.name === p.path[0]))
            .map((p) => (
              <p key={p.message} className="problem">
                {p.message}
              </p>
            ))
        )}
      </div>
      {method.valid !== undefined && <p className="note">Holds: {method.valid}</p>}
      <p className="note">Source: {method.source}</p>
    </section>
  );
}

function Field({
  param,
  text,
  refused,
  onType,
}: {
  param: MethodParam;
  text: string;
  refused: boolean;
  onType: (text: string) => void;
}) {
  const choices = param.kind === 'flag' ? ['yes', 'no'] : param.kind === 'choice' ? param.choices : undefined;
  if (choices !== undefined)
    return (
      <select value={text} aria-invalid={refused} onChange={(e) => onType(e.target.value)}>
        <option value="">{param.optional === true ? 'left out' : 'choose'}</option>
        {choices.map((c) => (
          <option key={c}>{c}</option>
        ))}
      </select>
    );
  return (
    <input
      type="text"
      value={text}
      aria-invalid={refused}
      autoComplete="off"
      spellCheck={false}
      placeholder={param.kind === 'list' ? `${exampleOf(param)}; and so on` : `such as ${exampleOf(param)}`}
      onChange={(e) => onType(e.target.value)}
    />
  );
}
