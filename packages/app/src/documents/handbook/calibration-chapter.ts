import { partNumbers } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import { calibrationsOf, type Calibration, type Proof, type Rig } from '@spraywright/engine/rig';
import { bucketFor, vesselText } from '@spraywright/engine/yard';
import { head, note, type Block, type Chapter } from '../chapters/chapter.ts';
import type { HandbookOptions } from './handbook-options.ts';

/** A tip that gives a tenth more than when new is worn. */
const WORN = 1.1;

/** What each outlet gives at each setting, and how a bucket checks it. */
export function calibrationChapter(rig: Rig, proof: Proof, options: HandbookOptions): Chapter {
  const tables = calibrationsOf(rig, proof.site, options.units);
  const tipped = tables.some((c) => c.tipped);
  return {
    id: 'calibration',
    title: 'Set it and check the flow',
    blocks: [
      note(
        tipped
          ? 'Worked out for this rig, tank to tip, with the hose let out that each table names. Set by the gauge, then catch clean water from one tip and count the seconds. A tip that fills the vessel faster than the last column is worn.'
          : 'Worked out for this rig, tank to outlet. Set the engine, look at the gauge, then let clean water run into a tank of known volume and count the seconds. Slower than the table: strainer, hose or pump.',
      ),
      ...tables.flatMap((c) => blocksOf(c, proof, options)),
      note(
        `Source: the solver of the proof of this rig, steady flow${tipped ? '; worn at 10 % over new: US extension guidance' : ''}.`,
      ),
    ],
  };
}

function blocksOf(c: Calibration, proof: Proof, { units }: HandbookOptions): Block[] {
  const title = head(
    `${c.name}: ${c.liquid}${c.hoseOut === undefined ? '' : `, ${display(c.hoseOut, 'length', units)} of hose out`}`,
  );
  if (c.rows.length === 0) return [title, note(`No figures: ${c.reason ?? 'unknown'}.`)];
  const vessel = bucketFor(Math.max(...c.rows.map((r) => r.water)), units);
  const pressure = (v: number | null) => (v === null ? 'unknown' : display(v, 'pressure', units));
  const seconds = (v: number) => `${v < 20 ? v.toFixed(1) : Math.round(v)} s`;
  const number = c.by === undefined ? undefined : partNumbers(proof).get(c.by.item);
  const by =
    c.by === undefined
      ? undefined
      : `${c.by.means === 'pressure' ? 'regulator' : 'engine'} ${number ?? ''} at`;
  return [
    title,
    {
      kind: 'table',
      captions: [
        ...(by === undefined ? [] : [by]),
        'gauge at pump',
        c.tipped ? 'gauge at tip' : 'in front of the outlet',
        ...(c.tips > 1 ? [`flow of ${c.tips} tips`, 'each tip'] : ['flow']),
        ...(c.tipped
          ? [`${vesselText(vessel, units)}, new tip`, 'worn at']
          : [`${vesselText(vessel, units)} in`]),
      ],
      rows: c.rows.map((r) => [
        ...(by === undefined || r.setting === undefined
          ? []
          : [display(r.setting, c.by!.means === 'pressure' ? 'pressure' : 'rotation', units)]),
        pressure(r.pump),
        pressure(r.tip),
        display(r.flow, 'flow', units),
        ...(c.tips > 1 ? [display(r.each, 'flow', units)] : []),
        seconds(vessel / r.water),
        ...(c.tipped ? [seconds(vessel / r.water / WORN)] : []),
      ]),
      widths: Array.from(
        { length: 4 + (by === undefined ? 0 : 1) + (c.tips > 1 ? 1 : 0) + (c.tipped ? 1 : 0) },
        () => '*' as const,
      ),
      words: 1,
      strong: by === undefined ? 1 : 2,
    },
    ...doses(c, units),
    ...(c.leastPressure === undefined
      ? []
      : [
          note(
            `Below ${pressure(c.leastPressure)} at the tip its pattern fails; such settings are left out.`,
          ),
        ]),
  ];
}

function doses(c: Calibration, units: HandbookOptions['units']): Block[] {
  if (c.speeds.length === 0) return [];
  return [
    note(
      `Rate on ${c.basis === 'treated' ? 'the treated area' : 'the whole field'} at each speed, ${display(c.width!, 'length', units)} wide:`,
    ),
    {
      kind: 'table',
      captions: ['gauge at tip', ...c.speeds.map((v) => display(v, 'speed', units))],
      rows: c.rows.map((r) => [
        display(r.tip, 'pressure', units),
        ...r.doses.map((d) => display(d, 'dose', units)),
      ]),
      widths: Array.from({ length: 1 + c.speeds.length }, () => '*' as const),
      words: 1,
    },
  ];
}
