// What takes minutes: a million random networks, or with `kills` the server and its database killed while they save.
import { spawnSync } from 'node:child_process';

const [what, ...rest] = process.argv.slice(2);
const file = what === 'kills' ? 'packages/app/bench/kills.ts' : 'packages/engine/bench/soak.ts';
const more = what === 'kills' ? rest : process.argv.slice(2);
const { status } = spawnSync('node', ['--conditions=source', '--import', 'tsx', file, ...more], {
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
