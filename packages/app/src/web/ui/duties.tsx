import { STATE_WORDS } from '@spraywright/engine/drawings';
import { useDesk, useStore } from './desk-context.ts';
import { Mark } from './marks.tsx';

/** The duties of the brief as tabs; [ and ] turn them. */
export function Duties() {
  const store = useStore();
  const duties = useDesk((s) => s.body?.duties);
  const duty = useDesk((s) => s.body?.duty);
  const amiss = useDesk((s) => s.body?.outletsAmiss ?? NOTHING);
  if (duties === undefined) return null;
  return (
    <>
      <div className="duties">
        <h2 className="heading">Duty</h2>
        <ul>
          {duties.map((d, i) => (
            <li key={d.id}>
              <button
                type="button"
                title={d.name}
                aria-current={d.id === duty ? 'true' : undefined}
                onClick={() => store.setDuty(d.id)}
              >
                <b className="letter">{'abcdefghijkl'.charAt(i)}</b>
                <span>{d.name}</span>
                <Mark state={d.state} />
                <span className="for-readers">{STATE_WORDS[d.state]}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
      {amiss.map((words) => (
        <p className="duties-amiss" role="status" key={words}>
          {words}.{' '}
          <button type="button" className="word" onClick={() => store.chooseAgain()}>
            Choose the parts again
          </button>
        </p>
      ))}
    </>
  );
}

const NOTHING: readonly string[] = [];
