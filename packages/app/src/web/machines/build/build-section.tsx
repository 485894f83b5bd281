import type { UnitSystem } from '@spraywright/engine/quantity';
import { useMemo } from 'react';
import { MachineSheet } from '../machine-head.tsx';
import { ForHands } from '../../frame/for-hands.tsx';
import { useMe, worksInShop } from '../../frame/me.ts';
import { MachinePapers } from '../machine-papers.tsx';
import { useMachine } from '../machine-keeper.ts';
import { useStock } from '../stock-keeper.ts';
import { WhoWorks } from '../who-works.tsx';
import { askedOf, useTold } from '../worker/machine-link.ts';
import type { BuildSheet } from '../worker/protocol.ts';
import { buildState } from './build-state.ts';
import { CutList, OrderList } from './cuts-and-orders.tsx';
import { Drawings } from './drawings.tsx';
import { FetchRows } from './fetch-rows.tsx';
import { PartInstead } from './part-instead.tsx';
import { PhotoNotes } from './photo-notes.tsx';
import { BuildSteps } from './build-steps.tsx';
import '../../style/machines.css';

const PACK = [
  { file: 'build-pack.pdf', words: 'build pack (PDF)' },
  { file: 'freight.pdf', words: 'freight (PDF)' },
];
const FRAME = [
  { file: 'frame.pdf', words: 'frame (PDF)' },
  { file: 'frame.svg', words: 'frame (SVG)' },
  { file: 'frame.dxf', words: 'frame (DXF)' },
];

/** Building one machine: what is fetched, bought and cut, its drawings, and its steps with who, when and the figure. */
export function BuildSection({ serial, units }: { readonly serial: string; readonly units: UnitSystem }) {
  const { state, keeper } = useMachine(serial);
  const { stock, keeper: store } = useStock(serial);
  const { moved, given } = stock;
  const me = useMe();
  const sheet = document.documentElement.dataset.sheet === 'night' ? 'night' : 'day';
  const asked = askedOf(state, units);
  const told = useTold('build', asked, {
    ...(moved === undefined ? {} : { moved }),
    ...(given === undefined ? {} : { given }),
    sheet,
  });
  const built = useMemo(() => buildState(state), [state]);
  return (
    <MachineSheet name="Build" serial={serial} state={state} told={told}>
      {(value) => (
        <>
          {worksInShop(me) && (
            <MachinePapers
              serial={serial}
              units={units}
              papers={value.frame === undefined ? PACK : [...PACK, ...FRAME]}
            />
          )}
          <WhoWorks />
          <Warnings sheet={value} />
          <ForHands>
            <FetchRows rows={value.fetch} lots={built.lots} stock={stock} store={store} keeper={keeper} />
            <OrderList rows={value.orders} store={store} />
          </ForHands>
          <CutList rows={value.cuts} />
          <Drawings sheet={value} machine={asked!} shade={sheet} />
          <BuildSteps steps={value.steps} record={built} keeper={keeper} />
          {worksInShop(me) && (
            <PartInstead
              slots={value.slots}
              putIn={built.putIn}
              machine={asked!}
              onPutIn={() => void keeper.work()}
            />
          )}
          <PhotoNotes photos={built.photos} keeper={keeper} />
        </>
      )}
    </MachineSheet>
  );
}

function Warnings({ sheet }: { readonly sheet: BuildSheet }) {
  return (
    <>
      {sheet.warnings.length > 0 && (
        <ul className="warnings">
          {sheet.warnings.map((w) => (
            <li key={w}>{w}</li>
          ))}
        </ul>
      )}
      <div className="machine-cautions">
        <h2 className="heading">Before anything is lifted, turned or filled</h2>
        <ul>
          {sheet.cautions.map((c) => (
            <li key={c.id}>
              <b>{c.danger}</b> {c.act} <span className="note">{c.source}</span>
            </li>
          ))}
        </ul>
        <p className="note">Labels, local codes and licensed practice come before this sheet.</p>
      </div>
    </>
  );
}
