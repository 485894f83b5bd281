import { display, type UnitSystem } from '@spraywright/engine/quantity';
import type { Proof, Rig } from '@spraywright/engine/rig';
import { head, note, warning, type Block } from '../chapters/chapter.ts';

/** Every joint of a rig, line by line, with the fittings between its two sides. */
export function jointsBlocks(rig: Rig, proof: Proof, units: UnitSystem): Block[] {
  const { joints, open, gaps, added } = proof.bill.plumbing;
  const lines = [...new Set([...rig.lines.map((l) => l.id), ...joints.map((j) => j.line)])].filter((id) =>
    joints.some((j) => j.line === id),
  );
  const name = (id: string) =>
    rig.lines.find((l) => l.id === id)?.name ?? (id === 'drive' ? 'Drive' : `At ${id}`);
  return [
    ...gaps.map((gap) => warning(`Nothing in the catalogue joins this: ${gap}.`)),
    ...lines.flatMap((line): Block[] => [
      head(name(line)),
      {
        kind: 'table',
        captions: ['from', 'fittings between, in order', 'to', 'times', 'stands'],
        rows: joints
          .filter((j) => j.line === line)
          .map((j) => [
            j.between[0],
            j.gap !== undefined
              ? 'nothing fits'
              : j.pieces.length === 0
                ? line === 'drive'
                  ? 'shaft to shaft'
                  : 'directly'
                : j.pieces.map((p) => p.name).join(' + '),
            j.between[1],
            String(j.times),
            j.pressure > 0 ? display(j.pressure, 'pressure', units) : '',
          ]),
        widths: [104, '*', 104, 30, 44],
        words: 3,
      },
    ]),
    ...(added.length === 0
      ? []
      : [note(`Fitted beside the parts: ${added.map((a) => `${a.part.name} (${a.words})`).join('; ')}.`)]),
    ...(open.length === 0
      ? []
      : [note(`Left open on purpose: ${open.map((o) => `${o.of} ${o.port}, ${o.why}`).join('; ')}.`)]),
  ];
}
