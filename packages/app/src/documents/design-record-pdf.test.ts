import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { figureText, proveRig, stepText } from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from '../../test/demo.ts';
import { designRecordPdf } from './design-record-pdf.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const folder = mkdtempSync(join(tmpdir(), 'record-'));
afterAll(() => rmSync(folder, { recursive: true }));

const options = { shop, units: 'us', date: '2026-03-03' } as const;
const dense = (text: string) => text.replace(/[\s\u00a0]+/g, '');

function made(name: string) {
  const { rig } = demoRig(name, catalogue, shop);
  return { rig, proof: proveRig(rig, catalogue, shop) };
}

describe('The design record', () => {
  it('has every promise with its figures, working, method and source, and the versions behind them', async () => {
    for (const name of ['three-point-pasture', 'roof-skid']) {
      const { rig, proof } = made(name);
      const file = join(folder, `${name}.pdf`);
      writeFileSync(file, await designRecordPdf(rig, proof, options));
      // Raw order keeps a cell that breaks over lines together.
      const text = dense(execFileSync('pdftotext', ['-raw', file, '-']).toString('utf8'));
      const missing = proof.promises.flatMap((p) =>
        [
          p.sentence,
          p.method,
          ...p.working.map((step) => stepText(step, 'us')),
          ...[p.has, p.asked].flatMap((f) => (f === undefined ? [] : [figureText(f, 'us')])),
        ]
          .map(dense)
          .filter((word) => !text.includes(word.replace(/<=/g, '≤').replace(/>=/g, '≥'))),
      );
      expect(missing).toEqual([]);
      expect(text).toContain(dense(`engine ${proof.engineVersion}`));
      for (const duty of proof.duties) expect(text).toContain(dense(duty.name).toUpperCase());
      for (const decision of rig.brief.decisions) expect(text).toContain(dense(decision.why));
    }
  });

  it('is the same bytes for the same rig and day', async () => {
    const { rig, proof } = made('utility-12v');
    const [one, two] = [
      await designRecordPdf(rig, proof, options),
      await designRecordPdf(rig, proof, options),
    ];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });
});
