// What `npm start` and `npm test` need before they can run, each done once and remembered by a fingerprint.
// Plain Node on purpose: it runs in a fresh clone, before anything is installed.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const LEAST_NODE = [20, 19];
const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser'];
const POSTGRES = '/usr/lib/postgresql';

export function ensureNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1])) return;
  stop(`Spraywright needs Node ${LEAST_NODE.join('.')} or newer; this is Node ${process.versions.node}.`);
}

/** Installs the packages of the lock file, unless that very lock file is already installed for this Node. */
export function ensureInstalled() {
  ensureNode();
  const mark = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .update(process.version)
    .digest('hex');
  const stamp = join(root, 'node_modules', '.spraywright-installed');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === mark) return;
  say('Installing packages (once; two to three minutes) ...');
  const done = spawnSync('npm', ['ci', '--no-fund', '--no-audit', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) {
    const missing = missingBuildTools();
    stop(
      'The packages could not be installed. npm must reach a package registry; see its message above.\n' +
        (missing.length === 0
          ? 'The tools that build better-sqlite3 (python3, make, g++) are here.'
          : `better-sqlite3, which keeps the records, is built here and needs what is missing. On Debian:\n  apt-get install ${missing.join(' ')}`),
    );
  }
  writeFileSync(stamp, mark);
}

/** Debian packages that compile better-sqlite3 where no ready-made one can be fetched, and are not here. */
function missingBuildTools() {
  return ['python3', 'make', 'g++'].filter((tool) => spawnSync(tool, ['--version']).error !== undefined);
}

/** Compiles the engine and the app, bundles the page and what Node runs, unless their sources are as they were last time. */
export function ensureBuilt() {
  const mark = fingerprint([
    'packages/engine/src',
    'packages/app/src',
    'packages/app/assets',
    'packages/app/vite.config.ts',
    'packages/app/vite.node.config.ts',
    'package-lock.json',
    'tsconfig.base.json',
  ]);
  const stamp = join(root, 'packages', 'app', 'dist', '.built');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === mark) return;
  say('Building (once per change of the sources) ...');
  run('node', ['node_modules/typescript/bin/tsc', '-b', 'packages/engine', 'packages/app']);
  const bundle = (config) =>
    run('node', ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn', '--config', config]);
  bundle('packages/app/vite.config.ts');
  bundle('packages/app/vite.node.config.ts');
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, mark);
}

/** Finds Chromium for the browser test; as root on Debian it is installed when missing. */
export function ensureChromium() {
  const found = () => process.env.CHROMIUM ?? CHROMIUM.find((path) => existsSync(path));
  if (!found()) installed('Chromium for the browser test', ['chromium']);
  if (found()) return found();
  stop(
    'The browser test needs Chromium and it is not here. On Debian: sudo apt-get install chromium\n' +
      'Elsewhere set CHROMIUM to the path of the program.',
  );
}

/** Finds what reads the papers again: as root on Debian it is installed when missing. */
export function ensurePaperReaders() {
  const missing = () =>
    Object.entries({ pdftotext: 'poppler-utils', pdftoppm: 'poppler-utils', qpdf: 'qpdf' })
      .filter(([program]) => spawnSync(program, ['--version']).error !== undefined)
      .map(([, name]) => name);
  if (missing().length > 0)
    installed('what reads PDFs, for the tests of the papers', [...new Set(missing())]);
  if (missing().length === 0) return;
  stop(
    `The papers are read again by other programs. On Debian: sudo apt-get install ${[...new Set(missing())].join(' ')}`,
  );
}

/** Finds PostgreSQL, on which the records are tested too; as root on Debian it is installed when missing. */
export function ensurePostgres() {
  const found = () => process.env.POSTGRES_BIN ?? (existsSync(POSTGRES) && readdirSync(POSTGRES).length > 0);
  if (!found()) installed('PostgreSQL for the tests of the records', ['postgresql']);
  if (found()) return;
  stop(
    'The records are tested on PostgreSQL too, and it is not here. On Debian: sudo apt-get install postgresql\n' +
      'Elsewhere set POSTGRES_BIN to the folder of initdb.',
  );
}

/** Installs packages of Debian, where this is Debian and we may. */
function installed(what, packages) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  say(`Installing ${what} (once) ...`);
  const quiet = {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  };
  spawnSync('apt-get', ['update', '-qq'], quiet);
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], quiet);
}

/** Runs a command of the repository and stops when it fails. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  if (done.status !== 0) stop(`${[command, ...args].join(' ')} failed (${done.status ?? done.signal})`);
}

export function say(text) {
  process.stderr.write(`${text}\n`);
}

function stop(text) {
  say(`\n${text}`);
  process.exit(1);
}

function fingerprint(paths) {
  const hash = createHash('sha256');
  const visit = (path) => {
    const full = join(root, path);
    if (!existsSync(full)) return;
    const stat = statSync(full);
    if (stat.isDirectory()) for (const name of readdirSync(full).sort()) visit(`${path}/${name}`);
    else hash.update(`${path} ${stat.size} ${stat.mtimeMs}\n`);
  };
  paths.forEach(visit);
  hash.update(process.version);
  return hash.digest('hex');
}

/** The commit's short name, for the title of what a build prints; empty outside git. */
export function revision() {
  try {
    return execFileSync('git', ['rev-parse', '--short', 'HEAD'], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'ignore'],
    })
      .toString()
      .trim();
  } catch {
    return '';
  }
}
