import type { ValveRow } from '../protocol.ts';
import { pathOf } from '@spraywright/engine/quantity';
import type { DeskStore } from '../state/desk-store.ts';
import { useDesk, useStore } from './desk-context.ts';
import { Picture, useSize } from './picture.tsx';

/** The plumbing as a diagram; its valves are turned in the drawing or in the list under it. */
export function Plumbing() {
  const store = useStore();
  const plumbing = useDesk((s) => s.plumbingPicture);
  const failure = useDesk((s) => s.plumbingFailure);
  const ref = useSize<HTMLElement>((width) => store.setSizes({ curveWidth: Math.floor(width) - 24 }));
  const press = (item: string) => {
    const valve = plumbing?.valves.find((v) => v.item === item);
    if (valve === undefined) store.setSlot(item);
    else turn(store, valve);
  };
  return (
    <section className="plumbing" aria-label="Plumbing" aria-busy={plumbing === undefined} ref={ref}>
      {plumbing === undefined ? (
        <p className="note waiting">{failure ?? 'Being laid out.'}</p>
      ) : (
        <>
          <Picture svg={plumbing.svg} className="plumbing-picture" onItem={press} />
          <p className="plumbing-now" role="status">
            {plumbing.tried ? 'As tried' : 'In this duty'}: {plumbing.now}.
          </p>
          <ul className="valves">
            {plumbing.valves.map((valve) => (
              <Valve key={valve.item} valve={valve} />
            ))}
          </ul>
          <p className="note plumbing-foot">
            Opening or shutting an outlet or the stirring changes the duty, and its promises follow; any other
            valve is only tried here. Symbols after ISO 1219-1 and ISO 14617, drawn by us.
          </p>
        </>
      )}
    </section>
  );
}

function Valve({ valve }: { valve: ValveRow }) {
  const store = useStore();
  const lit = useDesk((s) => s.lit === valve.item);
  const light = () => store.setLit(valve.item);
  const dim = () => store.setLit(undefined);
  return (
    <li className={lit ? 'valve lit' : 'valve'} onPointerEnter={light} onPointerLeave={dim}>
      <button
        type="button"
        role="switch"
        aria-checked={valve.open}
        aria-label={`${valve.number} ${valve.name}, ${valve.open ? 'open' : 'shut'}`}
        onFocus={light}
        onBlur={dim}
        onClick={() => turn(store, valve)}
      >
        <span className={lit ? 'balloon lit' : 'balloon'}>{valve.number}</span>
        <span className="valve-name">{valve.name}</span>
        <b>{valve.open ? 'Open' : 'Shut'}</b>
      </button>
      <span className="note">{valve.would}</span>
    </li>
  );
}

function turn(store: DeskStore, { item, name, open, puts }: ValveRow): void {
  if (puts === undefined) store.tryValve(item);
  else
    store.edit({
      about: `${name} ${open ? 'shut' : 'opened'}`,
      puts: [{ path: pathOf(puts.path), value: puts.value }],
    });
}
