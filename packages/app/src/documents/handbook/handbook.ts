import type { Part } from '@spraywright/engine/catalogue';
import type { Proof, Rig } from '@spraywright/engine/rig';
import type { JudgedTest, TakenReadings, YardSheet } from '@spraywright/engine/yard';
import type { Chapter } from '../chapters/chapter.ts';
import type { QuoteOptions } from '../quote-options.ts';
import { calibrationChapter } from './calibration-chapter.ts';
import { careChapters } from './care-chapters.ts';
import { identityChapter } from './identity-chapter.ts';
import { mixChapter } from './mix-chapter.ts';
import { sparesChapter } from './spares-chapter.ts';
import { yardChapter } from './yard-chapter.ts';

/** One built machine: what a handbook is for. */
export interface HandbookOptions extends QuoteOptions {
  readonly serial: string;
  /** Where the page of this machine can be found; drawn as a square code. */
  readonly address?: string;
  /** What was read of this machine in the yard. */
  readonly tested?: { readonly sheet: YardSheet; readonly taken: TakenReadings; readonly judged: JudgedTest };
  /** The plumbing diagram as SVG; its places come from a layout that papers do not make. */
  readonly plumbing: string;
  readonly partOf: (id: string) => Part | undefined;
}

/** The handbook of one machine, as chapters for paper and page alike. */
export function handbookOf(rig: Rig, proof: Proof, options: HandbookOptions): Chapter[] {
  const { before, after } = careChapters(rig, proof, options);
  return [
    identityChapter(rig, proof, options),
    { id: 'cautions', title: 'Before anything else', blocks: cautionBlocks(proof) },
    ...before,
    calibrationChapter(rig, proof, options),
    mixChapter(rig, proof, options),
    ...after,
    yardChapter(options),
    sparesChapter(rig, proof, options),
  ];
}

function cautionBlocks(proof: Proof): Chapter['blocks'] {
  const caused = proof.cautions.filter((c) => c.state === 'caused');
  const open = proof.cautions.filter((c) => c.state === 'unknown');
  return [
    {
      kind: 'warning',
      text: 'The label of the product, local codes and licensed practice come before this handbook. It does not say that a use is lawful.',
    },
    { kind: 'cautions', cautions: caused },
    ...(open.length === 0
      ? []
      : [
          {
            kind: 'note' as const,
            text: 'Nobody has told us enough to rule these out; they hold unless you know better:',
          },
          { kind: 'cautions' as const, cautions: open },
        ]),
  ];
}

/** What a paper calls the machine. */
export function handbookTitle(proof: Proof, serial: string): string {
  return `${proof.title}, serial ${serial}`;
}
