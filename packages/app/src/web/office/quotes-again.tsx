import { useEffect, useState } from 'react';
import { moneyText } from '@spraywright/engine/quantity';
import { hashOf } from '../frame/hash.ts';
import { askAgain, findingsOf, roundsAgain, type FindingAgain, type RoundAgain } from './parts-link.ts';

/** While a round is under way it is looked at so often [ms]. */
const LOOK = 1000;
/** Time until the server is asked again when it was not reached [ms]. */
const TRY_AGAIN = 4000;

/** The open quotes proven again with the catalogue as it is now: how far it is, and what each says. */
export function QuotesAgain() {
  const [round, setRound] = useState<RoundAgain>();
  const [findings, setFindings] = useState<readonly FindingAgain[]>([]);
  const [why, setWhy] = useState('');
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let left = false;
    const look = async () => {
      const answer = await roundsAgain();
      if (left) return;
      if ('why' in answer) {
        setWhy(answer.why);
        timer = setTimeout(() => void look(), TRY_AGAIN);
        return;
      }
      const [last] = answer.value.rounds;
      setWhy('');
      setRound(last);
      if (last === undefined) return;
      if (last.state === 'waiting' || last.state === 'running') timer = setTimeout(() => void look(), LOOK);
      const found = await findingsOf(last.id);
      if (!left && 'value' in found) setFindings(found.value.findings);
    };
    void look();
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [asked]);
  const again = async () => {
    const answer = await askAgain();
    if ('why' in answer) setWhy(answer.why);
    else setAsked(asked + 1);
  };
  const more = async () => {
    const found = await findingsOf(round!.id, findings.at(-1)!.quote);
    if ('value' in found) setFindings([...findings, ...found.value.findings]);
  };
  return (
    <div className="parts-keeping">
      <p>
        <a href={hashOf('parts')}>All parts</a>
      </p>
      <h1>Open quotes, proven again</h1>
      <p>
        After every change of a part, a price or the shop&rsquo;s settings, the quotes that may still be
        accepted are proven again. The quotes themselves stay as they were drawn up; to send what is said
        here, revise them.
      </p>
      <p role="status">{why !== '' ? why : wordsOf(round)}</p>
      {round !== undefined && round.total > 0 && (round.state === 'running' || round.state === 'waiting') && (
        <progress
          className="parts-progress"
          max={round.total}
          value={round.done}
          aria-label="Quotes proven"
        />
      )}
      <p className="part-acts">
        <button className="part-button" onClick={() => void again()}>
          Prove them again now
        </button>
      </p>
      <ul className="parts-again">
        {findings.map((finding) => (
          <Finding key={finding.quote} finding={finding} />
        ))}
      </ul>
      {round !== undefined && findings.length > 0 && findings.length < round.changed && (
        <button className="part-button" onClick={() => void more()}>
          More
        </button>
      )}
    </div>
  );
}

function Finding({ finding }: { readonly finding: FindingAgain }) {
  const { quote, revision, title, customer, beforeCents, afterCents, brokenBefore, brokenAfter, said } =
    finding;
  const broken = (brokenAfter ?? 0) - brokenBefore;
  return (
    <li>
      <a href={hashOf('quotes', quote)}>
        {quote} {revision}
      </a>{' '}
      {[title, customer].filter((text) => text !== '').join(', ')}: {moneyText(beforeCents)},{' '}
      {afterCents === undefined ? 'can no longer be proven' : `now ${moneyText(afterCents)}`}
      {broken > 0 && (
        <strong className="part-why">
          {' '}
          {broken} more {broken === 1 ? 'promise is' : 'promises are'} broken
        </strong>
      )}
      <ul>
        {said.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </li>
  );
}

function wordsOf(round: RoundAgain | undefined): string {
  if (round === undefined) return 'No round has been run yet.';
  const { state, edition, total, done, changed, trouble } = round;
  if (state === 'failed') return `The round failed: ${trouble}`;
  if (state !== 'done')
    return `${done} of ${total} proven with edition ${edition}; ${changed} say something else.`;
  const quotes = total === 1 ? '1 open quote was' : `${total} open quotes were`;
  return `${quotes} proven with edition ${edition}; ${changed === 1 ? '1 says' : `${changed} say`} something else now.`;
}
