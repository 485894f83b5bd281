import { READING_WORDS, type YardTest } from '@spraywright/engine/yard';
import { momentText } from '../../frame/moment.ts';

interface TestsGiven {
  readonly tests: readonly YardTest[];
  readonly shown: string | undefined;
  /** Undefined begins another. */
  readonly onChoose: (test: string | undefined) => void;
}

/** All tests of the machine, and the way to begin another. */
export function TestsBefore({ tests, shown, onChoose }: TestsGiven) {
  if (tests.length === 0) return null;
  return (
    <div className="tests-before">
      <h2>Tests of this machine</h2>
      <ul>
        {tests.map((t) => (
          <li key={t.id}>
            <button type="button" aria-pressed={t.id === shown} onClick={() => onChoose(t.id)}>
              {momentText(t.begun)}, {t.by.length === 0 ? 'nobody named' : t.by.join(', ')}: {t.values.size}{' '}
              read,{' '}
              {t.finished === undefined ? 'not finished' : READING_WORDS[t.finished.state].toLowerCase()}
            </button>
          </li>
        ))}
      </ul>
      {shown !== undefined && (
        <button type="button" onClick={() => onChoose(undefined)}>
          Begin another test
        </button>
      )}
    </div>
  );
}
