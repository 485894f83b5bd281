import { useDesk, useStore } from './desk-context.ts';

/** What keeps the sheet from being drawn or is being waited for, in the flow of the sheet. */
export function Notice() {
  const store = useStore();
  const failure = useDesk((s) => s.failure);
  const choosing = useDesk((s) => s.choosing);
  const problems = useDesk((s) => s.problems);
  const loading = useDesk((s) => s.shop === undefined && s.failure === undefined);
  return (
    <div className="notices" aria-live="polite">
      {loading && <p className="notice">Reading the catalogue</p>}
      {choosing !== undefined && (
        <p className="notice">
          Choosing parts for “{choosing.title}”: rigs are proven from the cheapest up{' '}
          <button type="button" className="word" onClick={() => store.stopChoosing()}>
            Stop
          </button>
        </p>
      )}
      {failure !== undefined && (
        <p className="notice bad">
          {failure}{' '}
          <button type="button" className="word" onClick={() => store.fail(undefined)}>
            Put away
          </button>
        </p>
      )}
      {problems.length > 0 && (
        <p className="notice bad">
          The figures are those of the last rig that could be read: {problems[0]!.message}
        </p>
      )}
    </div>
  );
}
