import { useEffect, useState } from 'react';
import type { RigJson } from '../protocol.ts';
import type { BriefLists } from './brief-edits.ts';
import { useDesk, useStore } from '../ui/desk-context.ts';
import { FieldProblems, GivenBox } from '../ui/given-box.tsx';
import { AddDuty } from './add-duty.tsx';
import { AddLiquid } from './add-liquid.tsx';
import { BRIEF_FIELDS, DUTY_FIELDS, LIQUID_FIELDS, type FieldGroup } from './brief-fields.data.ts';
import { BriefGivens } from './brief-given.ts';
import { Decided } from './decided.tsx';
import { DutyRows } from './duty-rows.tsx';
import { Products } from './products.tsx';
import { useBriefEdit } from './use-brief-edit.ts';
import '../style/whole-brief.css';

/** What can be unfolded under the brief. */
export type BriefPanelName = 'duty' | 'liquid' | 'all';

/** The part of the brief that is unfolded, with the lists that it is filled from. */
export function BriefPanel({ panel, close }: { panel: BriefPanelName; close: () => void }) {
  const store = useStore();
  const rig = useDesk((s) => (s.current === undefined ? undefined : s.jobs[s.current]?.rig));
  const [lists, setLists] = useState<BriefLists>();
  const current = useDesk((s) => s.current);
  const lines = rig?.lines;
  useEffect(() => {
    let newest = true;
    void store.ask({ about: 'brief-lists' }).then((answer) => {
      if (newest) setLists(answer);
    });
    return () => void (newest = false);
  }, [store, current, lines]);
  if (rig === undefined || lists === undefined) return <p className="note brief-panel">Looking it up</p>;
  return (
    <div className="brief-panel">
      {panel === 'duty' && <AddDuty lists={lists} close={close} />}
      {panel === 'liquid' && <AddLiquid lists={lists} close={close} />}
      {panel === 'all' && <WholeBrief rig={rig} lists={lists} />}
    </div>
  );
}

/** All that a brief can say, each value in its box, in folds. */
function WholeBrief({ rig, lists }: { rig: RigJson; lists: BriefLists }) {
  const store = useStore();
  const units = useDesk((s) => s.units);
  const duty = useDesk((s) => s.body?.duty);
  const brief = rig.brief as {
    duties: readonly { id: string; name: string; open: readonly string[]; target?: { aim: string } }[];
    liquids: readonly { id: string; name: string }[];
  };
  const at = Math.max(
    0,
    brief.duties.findIndex((d) => d.id === duty),
  );
  const givens = new BriefGivens(rig, units, lists);
  const { refused, make } = useBriefEdit();
  const inHand = brief.duties[at]!;
  return (
    <>
      <Fold name={`Duty: ${inHand.name}`} open>
        <DutyRows duty={inHand} at={at} lists={lists} only={brief.duties.length === 1} make={make} />
        {DUTY_FIELDS.map((group) => (
          <div key={group.name}>
            {group.name !== '' && <h3 className="heading">{group.name}</h3>}
            <Fields group={group} place={at} givens={givens} skip={(p) => !aimsAt(inHand.target?.aim, p)} />
          </div>
        ))}
      </Fold>
      {brief.liquids.map((liquid, i) => (
        <Fold name={`Liquid: ${liquid.name}`} key={liquid.id}>
          <Fields group={LIQUID_FIELDS} place={i} givens={givens} />
          <Products at={i} />
          <p>
            <button
              type="button"
              className="word"
              onClick={() => void make({ do: 'remove-liquid', id: liquid.id })}
            >
              Take this liquid away
            </button>
          </p>
        </Fold>
      ))}
      {refused !== undefined && (
        <p className="field-problem" role="alert">
          {refused}
        </p>
      )}
      {BRIEF_FIELDS.map((group) => (
        <Fold name={group.name} key={group.name}>
          <Fields group={group} givens={givens} />
          {CHOOSES.includes(group.name) && (
            <p className="note">
              These steer which parts are chosen.{' '}
              <button type="button" className="word" onClick={() => store.chooseAgain()}>
                Choose the parts again
              </button>
            </p>
          )}
        </Fold>
      ))}
      <Decided rig={rig} />
    </>
  );
}

/** Groups of which the rig that stands takes no notice until its parts are chosen again. */
const CHOOSES = ['Job and wishes', 'Vehicle and carrier'];

const AIMED: Readonly<Record<string, readonly string[]>> = {
  height: ['target.height', 'target.standoff', 'reach'],
  roof: ['target.height', 'target.distance', 'reach'],
  distance: ['target.distance', 'reach'],
};

/** Whether a field says something of a duty that aims so. */
function aimsAt(aim: string | undefined, path: string): boolean {
  const ofTarget = path.startsWith('target.') || path === 'reach';
  return !ofTarget || (aim !== undefined && AIMED[aim]?.includes(path) === true);
}

function Fold({ name, open = false, children }: { name: string; open?: boolean; children: React.ReactNode }) {
  const [shown, setShown] = useState(open);
  return (
    <details className="brief-fold" open={shown} onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>{name}</summary>
      {shown && children}
    </details>
  );
}

function Fields({
  group,
  place,
  givens,
  skip = () => false,
}: {
  group: FieldGroup;
  place?: number;
  givens: BriefGivens;
  skip?: (path: string) => boolean;
}) {
  const at = place === undefined ? group.at : group.at.replace('*', String(place));
  return (
    <ul className="brief-fields">
      {group.fields
        .filter(([path]) => !skip(path))
        .map(([path, label]) => {
          const given = givens.given(at === '' ? path : `${at}.${path}`, label);
          return (
            <li key={given.path}>
              <span aria-hidden="true">{label}</span> <GivenBox given={given} />
              <FieldProblems givens={[given]} />
            </li>
          );
        })}
    </ul>
  );
}
