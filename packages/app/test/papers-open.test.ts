import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

/** Every paper of one machine, by its command. */
const PAPERS: readonly (readonly [command: string, ...options: string[]])[] = [
  ['quote'],
  ['record'],
  ['frame'],
  ['freight', '--serial', 'LF-0412-1'],
  ['build-pack', '--serial', 'LF-0412-1', '--build-date', '2026-05-04'],
  ['handbook', '--serial', 'LF-0412-1'],
  ['plate', '--serial', 'LF-0412-1'],
];
/** Points darker than paper on a page at 40 to the inch; a page with a heading alone has more. */
const LEAST_INK = 60;

const catalogue = demoCatalogue();
const shop = demoShop();
let folder: string;
beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), 'spraywright-papers-'))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each(demoBriefs().map(({ name }) => name))('the papers of %s', (name) => {
  it('are whole PDFs, and no page of them is blank', { timeout: 60_000 }, async () => {
    const rig = join(folder, `${name}.json`);
    writeFileSync(rig, JSON.stringify(demoRig(name, catalogue, shop).raw));
    for (const [command, ...options] of PAPERS) {
      const file = join(folder, `${name}-${command}.pdf`);
      let told = '';
      const hear = (text: string) => void (told += text);
      const code = await main([command, rig, '-o', file, ...options], { out: hear, err: hear });
      expect(code, `${command}: ${told}`).toBeLessThan(2);
      // Syntax, cross-references and streams, by a program that is not ours.
      expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain(
        'No syntax or stream encoding errors',
      );
      execFileSync('pdftoppm', ['-gray', '-r', '40', file, join(folder, 'page')]);
      for (const page of pages()) expect(ink(page), command).toBeGreaterThan(LEAST_INK);
    }
  });
});

/** Takes the pages that were printed, and away. */
function pages(): Buffer[] {
  const names = execFileSync('ls', [folder], { encoding: 'utf8' })
    .split('\n')
    .filter((name) => name.endsWith('.pgm'));
  return names.map((name) => {
    const bytes = readFileSync(join(folder, name));
    rmSync(join(folder, name));
    return bytes;
  });
}

function ink(page: Buffer): number {
  const head = /^P5\s+\d+\s+\d+\s+255\s/.exec(page.toString('latin1', 0, 40))!;
  return page.subarray(head[0].length).reduce((n, point) => n + (point < 160 ? 1 : 0), 0);
}
