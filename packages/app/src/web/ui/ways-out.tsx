import type { KeyboardEvent } from 'react';
import type { WayOut } from '../protocol.ts';
import type { DeskStore } from '../state/desk-store.ts';
import { useDesk, useStore } from './desk-context.ts';
import { Mark } from './marks.tsx';

const LETTERS = 'abcd';
const NO_WAYS: readonly WayOut[] = [];

/** Changes of one or two parts or settings that keep a broken promise and every other, each proven with the whole rig. */
export function WaysOut({ id }: { id: string }) {
  const store = useStore();
  const ways = useDesk((s) => s.ways[id] ?? NO_WAYS);
  const looked = useDesk((s) => s.ways[id] !== undefined);
  if (!looked) return <p className="ways-note note">Ways out are being tried</p>;
  if (ways.length === 0)
    return (
      <p className="ways-note note">
        No part or setting mends it, and no likely pair of them. Ask less, or choose the parts again.
      </p>
    );
  const light = (w: WayOut | undefined) => store.setLit(w?.slots[0]);
  return (
    <table className="ways">
      <thead>
        <tr className="note">
          <th scope="col">
            <span className="for-readers">Letter</span>
          </th>
          <th scope="col">ways out</th>
          <th scope="col">then</th>
          <th scope="col">price</th>
          <th scope="col">mass</th>
          <th scope="col">
            <span className="for-readers">Take it</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ways.map((w, i) => (
          <tr key={w.name} onPointerEnter={() => light(w)} onPointerLeave={() => light(undefined)}>
            <td>
              <span className="letter-box">{LETTERS.charAt(i)}</span>
            </td>
            <th scope="row">{w.name}</th>
            <td>
              <span className={`then ${w.state}`}>
                {w.then} <Mark state={w.state} />
              </span>
            </td>
            <td>{w.price}</td>
            <td>{w.mass}</td>
            <td>
              <button
                type="button"
                className="take"
                aria-label={`Take ${w.name}`}
                onClick={() => takeWay(store, w)}
                onFocus={() => light(w)}
                onBlur={() => light(undefined)}
              >
                Take
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The letters a to d take a way out while the focus is in its promise. */
export function takeByLetter(event: KeyboardEvent, store: DeskStore, id: string): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.target instanceof HTMLElement && event.target.matches('input, select')) return;
  const way = event.key.length === 1 ? store.state().ways[id]?.[LETTERS.indexOf(event.key)] : undefined;
  if (way === undefined) return;
  event.preventDefault();
  takeWay(store, way);
}

function takeWay(store: DeskStore, way: WayOut): void {
  store.edit({ ...way.change, about: `Take ${way.name}` });
}
