// npm test: everything that must hold before a change lands. `npm test -- --only vitest` runs one step.
import { spawnSync } from 'node:child_process';
import {
  ensureBuilt,
  ensureChromium,
  ensureInstalled,
  ensurePaperReaders,
  ensurePostgres,
  root,
  say,
} from './ensure.mjs';

ensureInstalled();
const chromium = ensureChromium();
ensurePostgres();
ensurePaperReaders();
ensureBuilt();

const bin = (name) => `node_modules/${name}`;
const steps = [
  ['format', [bin('prettier/bin/prettier.cjs'), '--check', '--log-level', 'warn', '.']],
  ['types', [bin('typescript/bin/tsc'), '-b']],
  ['lint', [bin('eslint/bin/eslint.js'), '--max-warnings', '0', '.']],
  [
    'layers',
    [bin('dependency-cruiser/bin/dependency-cruise.mjs'), '--config', '.dependency-cruiser.cjs', 'packages'],
  ],
  ['dead code', [bin('knip/bin/knip.js')]],
  ['methods', ['scripts/methods.mjs', '--check']],
  ['tests', [bin('vitest/vitest.mjs'), 'run']],
];

const only =
  process.argv.indexOf('--only') === -1 ? undefined : process.argv[process.argv.indexOf('--only') + 1];
const failed = [];
for (const [name, args] of steps) {
  if (only !== undefined && only !== name) continue;
  say(`\n== ${name}`);
  const began = Date.now();
  const done = spawnSync('node', args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, CHROMIUM: chromium },
  });
  say(
    `== ${name}: ${done.status === 0 ? 'passed' : 'FAILED'} in ${((Date.now() - began) / 1000).toFixed(1)} s`,
  );
  if (done.status !== 0) failed.push(name);
}
say(failed.length === 0 ? '\nAll steps passed.' : `\nFailed: ${failed.join(', ')}`);
process.exitCode = failed.length === 0 ? 0 : 1;
