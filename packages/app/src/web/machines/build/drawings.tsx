import { useEffect, useState, type ReactNode } from 'react';
import { layInPage } from '../../state/plumbing-layout.ts';
import { askMachine } from '../worker/machine-link.ts';
import type { AskedMachine, BuildSheet } from '../worker/protocol.ts';

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
      <Drawing name="Plumbing" svg={plumbing}>
        Laying out the plumbing.
      </Drawing>
      <Drawing name="Wiring" svg={sheet.wiring}>
        This rig has no electrics that the proof knows of.
      </Drawing>
    </section>
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
