import type { DeskBody } from '../protocol.ts';
import type { DeskState } from '../state/desk-state.ts';
import { useDesk, useStore } from './desk-context.ts';

/** What keeps the sheet from being drawn or is being waited for, in the flow of the sheet. */
export function Notice() {
  const store = useStore();
  const failure = useDesk((s) => s.failure);
  const choosing = useDesk((s) => s.choosing);
  // A refusal is told at its field; here only when the sheet has no such field.
  const elsewhere = useDesk(refusedElsewhere);
  const refused = useDesk((s) => (s.keeping === 'refused' ? s.keepingWhy : undefined));
  const signedOut = useDesk((s) => s.keeping === 'signed-out');
  const looking = useDesk((s) => s.keeping === 'looking');
  const tried = useDesk((s) => {
    const { current = '' } = s;
    return (s.synced[current]?.version ?? 0) > 0 && s.synced[current]?.rig !== s.jobs[current]?.rig;
  });
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
      {refused !== undefined && (
        <p className="notice bad">
          The last changes are on this device and not in the shop’s records: {refused}. They are sent again by
          themselves.
        </p>
      )}
      {looking && (
        <p className="notice">
          What you try here stays on this device: in this shop you read jobs and do not change them.{' '}
          {tried && (
            <button type="button" className="word" onClick={() => store.goBackToShops()}>
              Back to the shop’s job
            </button>
          )}
        </p>
      )}
      {signedOut && (
        <p className="notice bad">
          You are signed out. The last changes are on this device: <a href="/sign-in">sign in</a>, and they
          are sent to the shop’s records.
        </p>
      )}
      {elsewhere !== undefined && (
        <p className="notice bad">The figures are those of the last rig that could be read. {elsewhere}</p>
      )}
    </div>
  );
}

function hasField(body: DeskBody | undefined, path: string): boolean {
  if (body === undefined) return false;
  const inProse = body.prose.some((line) =>
    line.some((piece) => typeof piece !== 'string' && piece.path === path),
  );
  const { discount, freight, percent } = body.pricing ?? {};
  if ([discount, freight, percent].some((given) => given?.path === path)) return true;
  return inProse || body.parts.some((p) => p.givens.some((g) => g.given.path === path));
}

/** The first refusal that has no field on the sheet, in the words of the step that set the field; a step of others has left none. */
function refusedElsewhere({ problems, body, jobs, current }: DeskState): string | undefined {
  const problem = problems.find((p) => !hasField(body, p.path));
  if (problem === undefined) return undefined;
  const { past = [] } = (current === undefined ? undefined : jobs[current]) ?? {};
  const inside = (path: string, holder: string) => `${path}.`.startsWith(`${holder}.`);
  const step = past.findLast(({ puts }) =>
    puts.some(({ path }) => path.length > 0 && inside(problem.path, path.join('.'))),
  );
  const field = step === undefined ? problem.path : step.about.charAt(0).toUpperCase() + step.about.slice(1);
  const own = `${problem.path.split('.').at(-1)}: `;
  const why = problem.message.startsWith(own) ? problem.message.slice(own.length) : problem.message;
  return `${field}: ${why}`;
}
