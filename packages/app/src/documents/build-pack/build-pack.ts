import { deckPlan, deckPlanOf, PALETTES, partNumbers, wiringDiagram } from '@spraywright/engine/drawings';
import { display, type UnitSystem } from '@spraywright/engine/quantity';
import {
  assemblySteps,
  type AssemblyStep,
  type BuildRecord,
  type Proof,
  type Rig,
  type StepDone,
} from '@spraywright/engine/rig';
import { figureText } from '../build-record-chapter.ts';
import { note, warning, type Block, type Chapter } from '../chapters/chapter.ts';
import { rigPlate, PLATE } from '../handbook/rig-plate.ts';
import type { BuildPackOptions } from './build-pack-options.ts';
import { hoseChapter, orderChapter, pickChapter } from './fetch-chapters.ts';
import { freightChapter } from './freight-chapter.ts';
import { jointsBlocks } from './joints-blocks.ts';
import { deckNotes } from '../deck-notes.ts';

/** Width of a drawing over the whole sheet, px and points. */
const DRAWN = { px: 712, points: 534 } as const;

/** Everything that is fetched, bought, cut, joined, wired, checked and labelled to build one machine. */
export function buildPackOf(rig: Rig, proof: Proof, options: BuildPackOptions): Chapter[] {
  return [
    identity(rig, proof, options),
    pickChapter(proof, options),
    orderChapter(proof, options),
    hoseChapter(proof, options),
    frame(proof, options),
    {
      id: 'plumbing',
      title: 'Plumbing',
      blocks: [
        {
          kind: 'drawing',
          svg: options.plumbing,
          words: 'Plumbing diagram with part numbers',
          width: DRAWN.points,
        },
        note('Symbols after ISO 1219-1 and ISO 14617. Circles are part numbers.'),
        ...jointsBlocks(rig, proof, options.units),
      ],
    },
    wiring(proof, options),
    steps(rig, proof, options),
    labels(proof),
    freightChapter(proof, options),
  ];
}

function identity(rig: Rig, proof: Proof, options: BuildPackOptions): Chapter {
  const { broken, unknown } = proof.counts;
  const open = [...proof.bill.plumbing.gaps, ...proof.bill.missing];
  return {
    id: 'machine',
    title: `Serial ${options.serial}`,
    blocks: [
      ...(broken > 0
        ? [
            warning(
              `${broken === 1 ? 'One promise of this rig is' : `${broken} promises of this rig are`} broken. Ask who designed it before anything is cut.`,
            ),
          ]
        : []),
      ...(unknown > 0
        ? [
            note(
              `${unknown === 1 ? 'One promise is' : `${unknown} promises are`} unknown; the design record says what is missing.`,
            ),
          ]
        : []),
      ...open.map((text) => warning(`Not in the catalogue: ${text}.`)),
      {
        kind: 'drawing',
        svg: rigPlate(rig, proof, options),
        words: `Plate of serial ${options.serial}`,
        width: PLATE.width * 0.6,
      },
      note(
        `Building begins on ${options.buildDate}. Circles with numbers are parts, the same in every list and drawing. A qualified person must approve frame and lifting points.`,
      ),
    ],
  };
}

function frame(proof: Proof, { units }: BuildPackOptions): Chapter {
  const plan = deckPlanOf(proof);
  if (plan === undefined)
    return { id: 'frame', title: 'Frame', blocks: [note('The rig has no carrier: there is no frame.')] };
  const length = (v: number) => display(v, 'length', units);
  return {
    id: 'frame',
    title: 'Frame: the deck from above, front at the left',
    blocks: [
      {
        kind: 'drawing',
        svg: deckPlan(proof, { width: DRAWN.px, units, palette: PALETTES.print })!,
        words: 'Deck from above with part numbers',
        width: DRAWN.points,
      },
      {
        kind: 'table',
        captions: [
          'no.',
          'part: its middle',
          'behind front',
          'to the left',
          'above deck',
          'mass as it works',
        ],
        rows: plan.standing.map(({ number, part, load, up }) => [
          String(number),
          `${part.name}${part.given ? '' : ' (placed by rule)'}`,
          length(part.x),
          length(part.y),
          length(up),
          display(load, 'mass', units),
        ]),
        widths: [22, '*', 62, 62, 62, 84],
        words: 2,
      },
      ...deckNotes(plan).map(note),
      ...loads(proof, units),
    ],
  };
}

/** What rests where, and what the frame must be looked at for. */
function loads({ placement }: Proof, units: UnitSystem): Block[] {
  const mass = (v: number) => display(v, 'mass', units);
  if (placement === undefined || placement.supports.length === 0)
    return [note('What carries the rig is not told: ask for the vehicle and its axles.')];
  return [
    { kind: 'head', text: `What rests where, with ${placement.liquid.name} in the tank` },
    {
      kind: 'table',
      captions: ['support', 'full', 'half', 'empty', 'rating'],
      rows: placement.supports.map((s) => [
        s.name,
        mass(s.full),
        mass(s.half),
        mass(s.empty),
        s.rating === undefined ? 'not told' : mass(s.rating),
      ]),
      widths: ['*', 68, 68, 68, 68],
      words: 1,
    },
    note('All of this is an estimate: a qualified person must approve the frame and its lifting points.'),
  ];
}

function wiring(proof: Proof, { units }: BuildPackOptions): Chapter {
  const title = 'Wiring';
  if (proof.wiring === undefined)
    return { id: 'wiring', title, blocks: [note('This rig has no electrics that the proof knows of.')] };
  const { circuits } = proof.wiring;
  return {
    id: 'wiring',
    title,
    blocks: [
      {
        kind: 'drawing',
        svg: wiringDiagram(proof.wiring, {
          width: DRAWN.px,
          units,
          palette: PALETTES.print,
          numbers: partNumbers(proof),
        }),
        words: 'Wiring diagram with cable sizes and fuses',
        width: DRAWN.points,
      },
      {
        kind: 'table',
        captions: ['circuit', 'cable', 'one way', 'wire in all', 'current', 'fuse', 'drop'],
        rows: circuits.map((c) => [
          c.name,
          c.cable === undefined ? 'unknown' : `AWG ${c.cable.label}`,
          display(c.oneWay, 'length', units),
          display(2 * c.oneWay, 'length', units),
          display(c.current, 'current', units),
          c.fuse === null ? 'none' : `${c.fuse} A`,
          c.drop === undefined ? 'unknown' : display(c.drop, 'voltage', units),
        ]),
        widths: ['*', 52, 52, 60, 48, 40, 44],
        words: 2,
      },
      note(
        'Sized by voltage drop, ampacity and fuse (ABYC E-11 table of AWG cable as reprinted; 3 and 10 % drop and 125 % fuse are common practice, from memory). The switch is drawn open; its rating must be that of the fuse. Symbols after IEC 60617.',
      ),
    ],
  };
}

function steps(rig: Rig, proof: Proof, { units, built }: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  return {
    id: 'assembly',
    title: 'Put it together',
    blocks: [
      {
        kind: 'table',
        captions: [
          'step',
          'what',
          'parts',
          'check before going on',
          'torque or reading',
          'who',
          'name, date',
        ],
        rows: assemblySteps(rig, proof, units).map((s, i) => [
          String(i + 1),
          s.text,
          s.items
            .flatMap((item) => numbers.get(item) ?? [])
            .sort((a, b) => a - b)
            .join(', '),
          s.check,
          figureOf(s, built, units),
          s.by,
          signedBy(built?.steps.get(s.id)),
        ]),
        widths: [20, '*', 44, 112, 92, 46, 54],
        words: 7,
      },
      note(
        "Order and checks: common practice, no source. Torques are the makers' to say; none is guessed here.",
      ),
    ],
  };
}

/** The figure that was read, else the one that is asked. */
function figureOf(
  { id, asks, figure }: AssemblyStep,
  built: BuildRecord | undefined,
  units: UnitSystem,
): string {
  const step = built?.steps.get(id);
  const read = step?.done === true ? figureText(step, asks?.dimension, units) : '';
  return read === '' ? figure : read;
}

/** Who did a step and when; blank to sign by hand where nobody wrote it down. */
function signedBy(step: StepDone | undefined): string {
  return step?.done === true ? [step.by, step.at.slice(0, 10)].filter((t) => t !== '').join(', ') : '';
}

function labels(proof: Proof): Chapter {
  return {
    id: 'labels',
    title: 'Labels',
    blocks: [
      {
        kind: 'table',
        captions: ['where', 'danger', 'what to do', 'done'],
        rows: proof.cautions.map(({ caution }) => [caution.place, caution.danger, caution.act, '']),
        widths: [48, '*', '*', 26],
        words: 4,
      },
      note(
        'Wording and colours of safety labels follow the rules of the place where the rig is sold; ask there.',
      ),
    ],
  };
}
