import { useEffect, useState, type ReactNode } from 'react';
import { layInPage } from '../../state/plumbing-layout.ts';
import { askMachine } from '../worker/machine-link.ts';
import type { AskedMachine, BuildSheet, LoadRow } from '../worker/protocol.ts';

interface DrawingsGiven {
  readonly sheet: BuildSheet;
  readonly machine: AskedMachine;
  readonly shade: 'day' | 'night';
}

/** Frame, plumbing and wiring of one machine, with the part numbers of the lists. */
export function Drawings({ sheet, machine, shade }: DrawingsGiven) {
  const plumbing = usePlumbing(sheet, machine, shade);
  return (
    <section aria-labelledby="drawings-heading">
      <h2 className="heading" id="drawings-heading">
        Drawings
      </h2>
      <Drawing name="Frame: the deck from above, front at the left" svg={sheet.frame}>
        The rig has no carrier: there is no frame.
      </Drawing>
      <Loads rows={sheet.loads} />
      <Drawing name="Plumbing" svg={plumbing}>
        Laying out the plumbing.
      </Drawing>
      <Drawing name="Wiring" svg={sheet.wiring}>
        This rig has no electrics that the proof knows of.
      </Drawing>
    </section>
  );
}

/** What rests on each support as the tank empties, against what it is rated for. */
function Loads({ rows }: { readonly rows: readonly LoadRow[] }) {
  if (rows.length === 0) return <p>What carries the rig is not told: ask for the vehicle and its axles.</p>;
  return (
    <div className="scroll">
      <table className="lines">
        <thead>
          <tr>
            {['what rests on', 'full', 'half', 'empty', 'rating'].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((r) => (
            <tr key={r.support}>
              <th scope="row">{r.support}</th>
              <td>{r.full}</td>
              <td>{r.half}</td>
              <td>{r.empty}</td>
              <td>{r.rating}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">An estimate: a qualified person must approve the frame and its lifting points.</p>
    </div>
  );
}

function Drawing(given: {
  readonly name: string;
  readonly svg: string | undefined;
  readonly children: ReactNode;
}) {
  const { name, svg, children } = given;
  return (
    <details className="drawing" open>
      <summary>
        <h3>{name}</h3>
      </summary>
      {svg === undefined ? (
        <p>{children}</p>
      ) : (
        <div
          className="scroll"
          role="img"
          aria-label={name}
          tabIndex={0}
          dangerouslySetInnerHTML={{ __html: svg }}
        />
      )}
    </details>
  );
}

/** The layout is made in a worker of its own and is the same for the same rig. */
function usePlumbing(sheet: BuildSheet, machine: AskedMachine, shade: 'day' | 'night'): string | undefined {
  const [svg, setSvg] = useState<string>();
  const key = JSON.stringify([sheet.plumbing, shade, machine.units]);
  useEffect(() => {
    let wanted = true;
    const draw = async () => {
      const layout = await layInPage(sheet.plumbing);
      const told = await askMachine('plumbing', machine, { layout, sheet: shade });
      if (wanted && told.ok) setSvg(told.value);
    };
    void draw();
    return () => {
      wanted = false;
    };
  }, [key]);
  return svg;
}
