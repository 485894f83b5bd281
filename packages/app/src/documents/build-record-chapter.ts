import { display, parseQuantity, type UnitSystem } from '@spraywright/engine/quantity';
import {
  assemblySteps,
  type BuildRecord,
  type Proof,
  type Rig,
  type StepDone,
} from '@spraywright/engine/rig';
import { note, type Block, type Chapter } from './chapters/chapter.ts';

/** What a chapter about the building of one machine is made of. */
interface RecordGiven {
  readonly rig: Rig;
  readonly proof: Proof;
  readonly record: BuildRecord | undefined;
  readonly units: UnitSystem;
}

/** How one machine was built: who did each step, when, with which figure; lots and photos. */
export function buildRecordChapter({ rig, proof, record, units }: RecordGiven): Chapter {
  const head = { id: 'built', title: 'How it was built' };
  if (record === undefined || record.steps.size + record.lots.size + record.photos.length === 0)
    return { ...head, blocks: [note('Nothing of its building is recorded.')] };
  const steps = assemblySteps(rig, proof, units);
  const done = steps.filter((s) => record.steps.get(s.id)?.done === true);
  const open = steps.length - done.length;
  const lots = [...record.lots].map(([part, list]) => [nameOf(rig, part), part, list.join(', ')]);
  const textOf = new Map(steps.map((s) => [s.id, s.text]));
  const blocks: Block[] = [
    note(
      open === 0
        ? `All ${steps.length} steps are written down as done.`
        : `${done.length} of ${steps.length} steps are written down as done; of the others nothing is recorded.`,
    ),
  ];
  if (done.length > 0)
    blocks.push({
      kind: 'table',
      captions: ['step', 'figure', 'by', 'when'],
      rows: done.map((s) => {
        const step = record.steps.get(s.id)!;
        return [
          s.text,
          figureText(step, s.asks?.dimension, units),
          step.by || 'nobody named',
          step.at.slice(0, 10),
        ];
      }),
      widths: ['*', 130, 70, 54],
      words: 4,
    });
  if (lots.length > 0)
    blocks.push(
      { kind: 'head', text: 'Lots of its parts' },
      {
        kind: 'table',
        captions: ['part', 'catalogue number', 'lot'],
        rows: lots,
        widths: ['*', 150, 110],
        words: 3,
      },
    );
  if (record.photos.length > 0)
    blocks.push(
      { kind: 'head', text: 'Photos' },
      {
        kind: 'photos',
        photos: record.photos.map((p) => ({
          image: p.image,
          words: `${(p.step === undefined ? undefined : textOf.get(p.step)) ?? p.about}. ${p.by || 'Nobody named'}, ${p.at.slice(0, 10)}`,
        })),
      },
    );
  return { ...head, blocks };
}

/** "40 lbf·ft, sheet 12", or why the figure is not known. */
export function figureText(
  { value, unknown, note: also }: StepDone,
  dimension: Parameters<typeof parseQuantity>[1] | undefined,
  units: UnitSystem,
): string {
  if (value === undefined) return unknown === undefined ? '' : `not known: ${unknown}`;
  const read = dimension === undefined ? undefined : parseQuantity(value, dimension);
  const told = read?.ok === true && dimension !== undefined ? display(read.value, dimension, units) : value;
  return also === undefined ? told : `${told}, ${also}`;
}

function nameOf(rig: Rig, part: string): string {
  return [...rig.items.values()].find((i) => i.part.id === part)?.part.name ?? part;
}
