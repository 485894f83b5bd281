import type { Proof, Rig } from '@spraywright/engine/rig';
import { buildRecordChapter } from '../build-record-chapter.ts';
import type { Chapter } from '../chapters/chapter.ts';
import { calibrationChapter } from './calibration-chapter.ts';
import { careChapters } from './care-chapters.ts';
import type { HandbookOptions } from './handbook-options.ts';
import { identityChapter } from './identity-chapter.ts';
import { mixChapter } from './mix-chapter.ts';
import { sparesChapter } from './spares-chapter.ts';
import { yardChapter } from './yard-chapter.ts';

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
    buildRecordChapter({ rig, proof, record: options.built, units: options.units }),
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
