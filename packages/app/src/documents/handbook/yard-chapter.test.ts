import { proveRig } from '@spraywright/engine/rig';
import { judgeReadings, matchReadings, readReadings, yardSheet } from '@spraywright/engine/yard';
import { describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from '../../../test/demo.ts';
import { yardText } from '../yard-text.ts';
import type { HandbookOptions } from './handbook-options.ts';
import { yardChapter } from './yard-chapter.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const { rig } = demoRig('utility-12v', catalogue, shop);
const sheet = yardSheet(rig, proveRig(rig, catalogue, shop));
const tape = sheet.readings.find((r) => r.instrument === 'tape-farthest')!;
const feet = (share: number) => ((tape.expected * share) / 0.3048).toFixed(1);

function tested(...shares: readonly number[]) {
  const value = shares.map((s) => `${feet(s)} ft`);
  const head = readReadings({
    format: 'spraywright-readings',
    rig: sheet.rig,
    wind: '2 mph',
    readings: [{ id: tape.id, value }],
  });
  if (!head.ok) throw new Error(head.problems[0]!.message);
  const matched = matchReadings(head.document, sheet.rig, sheet.readings);
  if (!matched.ok) throw new Error(matched.problems[0]!.message);
  return { sheet, taken: matched.taken, judged: judgeReadings(rig, sheet, matched.taken) };
}

describe('the record of a yard test', () => {
  const rowOf = (...shares: readonly number[]) =>
    JSON.stringify(yardChapter({ tested: tested(...shares), units: 'us' } as HandbookOptions)).match(
      /\["Tape from[^\]]*\]/,
    )![0];

  it('prints every throw and the middle one that counts', () => {
    expect(rowOf(1.01, 1.13, 0.99)).toContain(
      `"${feet(1.01)} ft (${feet(1.01)} ft, ${feet(1.13)} ft, ${feet(0.99)} ft)","Pass"`,
    );
    expect(rowOf(1.01, 1.13, 0.99)).toContain('Throw 3 times: the middle one counts');
  });

  it('says how many throws it has where some are missing, on paper and in the terminal', () => {
    expect(rowOf(1.01)).toContain(`"${feet(1.01)} ft (1 of 3 throws)","Again"`);
    const text = yardText(sheet, 'us', tested(1.01, 0.99).judged);
    expect(text).toMatch(
      /Again {3}Tape from .* \(.* ft, .* ft; 2 of 3 throws\)\n +one more throw: the middle/,
    );
  });
});
