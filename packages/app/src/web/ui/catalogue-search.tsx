import { settledText, withinText, type SearchProgress } from '@spraywright/engine/rig';
import type { SearchTold } from '../state/search-link.ts';
import { ChoiceRows } from './choice-rows.tsx';
import { useDesk, useStore } from './desk-context.ts';

/** Conditions named when no rig was found. */
const NAMED = 3;

/** The search of the whole catalogue: asked for, watched, stopped, and what it found, put together by kind. */
export function CatalogueSearch() {
  const store = useStore();
  const search = useDesk((s) => s.search);
  const running = search?.running === true;
  return (
    <section className="catalogue-search" aria-labelledby="catalogue-search-heading">
      <h2 className="heading" id="catalogue-search-heading">
        The whole catalogue
      </h2>
      {search === undefined ? (
        <p className="note">
          Every rig that the catalogue makes of this brief, for those that no other beats in price, dry mass,
          least margin and days. Pinned parts stay; the desk stays free.
        </p>
      ) : (
        <Standing search={search} />
      )}
      <button type="button" className="word" onClick={() => (running ? store.stopSearch() : store.search())}>
        {running ? 'Stop, and keep what is found' : search === undefined ? 'Search it' : 'Search it again'}
      </button>
      <Found running={running} />
    </section>
  );
}

/** A dimension line that fills, with the counts at its ends. */
function Standing({ search }: { search: SearchTold }) {
  const { progress, running, complete, failure, refused } = search;
  if (failure !== undefined)
    return (
      <p className="field-problem" role="alert">
        The search ended: {failure}.
      </p>
    );
  if (progress === undefined) return <p className="note">Reading the catalogue.</p>;
  const { size, nodes, proofs, found, settled } = progress;
  const share = complete ? 1 : settled;
  return (
    <>
      <div className="search-counts">
        <span>{setsText(size)}</span>
        <span>
          {countText(nodes)} looked at, {countText(proofs)} proven, {countText(found)}{' '}
          {found === 1 ? 'rig' : 'rigs'} found
        </span>
      </div>
      <div
        className="search-line"
        role="progressbar"
        aria-label="Share of the sets of parts that is settled"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.floor(share * 100)}
        aria-valuetext={complete ? 'all' : settledText(share)}
      >
        <i style={{ width: `${share * 100}%` }} />
      </div>
      <p className="note" role="status">
        {running ? soFar(progress, share) : ending(search)}
      </p>
      {!running && found === 0 && refused.length > 0 && (
        <p className="note">What refused most: {refused.slice(0, NAMED).join('; ')}.</p>
      )}
    </>
  );
}

/** The first round passes over what a buyer would not choose by; what it finds is told while the second one goes on. */
function soFar({ sought, within }: SearchProgress, share: number): string {
  if (within !== undefined)
    return `${withinText(within)} Smaller gains are looked for: ${settledText(share)} settled so far.`;
  return `Rigs better by more than ${sought * 100} % are looked for: ${settledText(share)} settled so far.`;
}

function ending({ complete, progress }: SearchTold): string {
  const none = progress?.found === 0;
  if (complete)
    return none
      ? 'Searched to the end: no rig of the catalogue keeps every promise of this brief.'
      : 'Searched to the end: no rig of the catalogue with what the brief wishes, set by the usual rules, beats these.';
  const share = settledText(progress?.settled ?? 0);
  if (progress?.within !== undefined)
    return `${withinText(progress.within)} Smaller gains were looked for too: stopped with ${share} settled.`;
  return none
    ? `Stopped with ${share} settled: no rig that keeps every promise is found yet.`
    : `Stopped with ${share} settled: better rigs may be among the rest.`;
}

function Found({ running }: { running: boolean }) {
  const choices = useDesk((s) => s.choices);
  if (choices === undefined || choices.found.length === 0) return null;
  const { found, moreFound, compared } = choices;
  return (
    <>
      <ChoiceRows found rows={found} shown={compared.rigs.slice(1).map((r) => r.id)} />
      <p className="note">
        Least margin, dry mass, days and price of each.{' '}
        {moreFound > 0 && `${moreFound} more ${moreFound === 1 ? 'kind is' : 'kinds are'} left out here. `}
        {running
          ? 'Better ones take the place of these as they are found.'
          : 'Press one to compare it, then take it.'}
      </p>
    </>
  );
}

/** How many sets of parts there are: beyond what has a name, by the digits. */
function setsText(size: number): string {
  if (size < 1e15) return `${countText(size)} sets of parts`;
  return `sets of parts: a number of ${Math.floor(Math.log10(size)) + 1} digits`;
}

const STEPS = [
  [1e12, 'thousand billion'],
  [1e9, 'billion'],
  [1e6, 'million'],
] as const;

/** A count as it is said. */
function countText(count: number): string {
  const step = STEPS.find(([from]) => count >= from);
  if (step !== undefined) return `${Number((count / step[0]).toPrecision(3)).toString()} ${step[1]}`;
  return Math.round(count)
    .toString()
    .replace(/(\d)(?=(\d{3})+$)/g, '$1,');
}
