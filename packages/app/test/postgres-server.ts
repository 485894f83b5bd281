import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

export interface PostgresServer {
  /** Address of a new, empty database. */
  readonly newDatabase: () => Promise<string>;
  /** Ends the server at once, as a power cut would. */
  readonly kill: () => void;
  readonly start: () => void;
  readonly remove: () => void;
}

const VERSIONS = '/usr/lib/postgresql';

/** A PostgreSQL server of the tests' own, on a free port of this machine; it does not run as root, so root lends it a user. */
export async function postgresServer(): Promise<PostgresServer> {
  const bin = programs();
  const user = process.getuid?.() === 0 ? userNamed('postgres') : undefined;
  const folder = mkdtempSync(join(tmpdir(), 'spraywright-postgres-'));
  if (user !== undefined) chownSync(folder, user.uid, user.gid);
  const data = join(folder, 'data');
  const call = (program: string, args: readonly string[]) => {
    const done = spawnSync(join(bin, program), args, {
      ...user,
      cwd: folder,
      encoding: 'utf8',
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    if (done.status !== 0) throw new Error(`${program} failed: ${done.stderr}${done.error?.message ?? ''}`);
  };
  const port = await freePort();
  call('initdb', ['-D', data, '-U', 'shop', '-A', 'trust', '-E', 'UTF8', '--no-sync']);
  const log = join(folder, 'log');
  const start = () =>
    call('pg_ctl', ['-D', data, '-l', log, '-w', '-o', `-p ${port} -h 127.0.0.1 -k ${folder}`, 'start']);
  start();
  const address = (name: string) => `postgres://shop@127.0.0.1:${port}/${name}`;
  let made = 0;
  return {
    start,
    kill: () => call('pg_ctl', ['-D', data, '-w', '-m', 'immediate', 'stop']),
    async newDatabase() {
      const client = new pg.Client(address('postgres'));
      await client.connect();
      const name = `shop${++made}`;
      await client.query(`create database ${name}`);
      await client.end();
      return address(name);
    },
    remove() {
      spawnSync(join(bin, 'pg_ctl'), ['-D', data, '-m', 'immediate', 'stop'], {
        ...user,
        cwd: folder,
        stdio: 'ignore',
      });
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function programs(): string {
  const newest = existsSync(VERSIONS)
    ? readdirSync(VERSIONS).sort((a, b) => Number(b) - Number(a))[0]
    : undefined;
  const bin = process.env.POSTGRES_BIN ?? (newest === undefined ? undefined : join(VERSIONS, newest, 'bin'));
  if (bin !== undefined && existsSync(join(bin, 'initdb'))) return bin;
  throw new Error(
    'The records are tested on PostgreSQL too, and it is not here. On Debian: apt-get install postgresql. Elsewhere set POSTGRES_BIN to the folder of initdb.',
  );
}

function userNamed(name: string): { uid: number; gid: number } {
  const id = (flag: string) => Number(spawnSync('id', [flag, name], { encoding: 'utf8' }).stdout);
  return { uid: id('-u'), gid: id('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, refuse) => {
    const server = createServer();
    server.on('error', refuse);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });
}
