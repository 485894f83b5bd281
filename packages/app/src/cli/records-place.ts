import { join, resolve as absolute } from 'node:path';
import type { Records } from '../store/index.ts';
import type { Arguments, Option, Terminal } from './command.ts';

const FOLDER = 'spraywright-records';

export const RECORDS_OPTION: Option = {
  type: 'string',
  short: 'r',
  value: 'folder|postgres://...',
  help: `where the shop's records are: a folder, made when it is not there, or a PostgreSQL database (default: DATABASE_URL, else ${FOLDER})`,
};

/** The folder or the address of the records that a command works on. */
export function recordsPlace(args: Arguments): string {
  const place = args.text('records') ?? process.env.DATABASE_URL ?? FOLDER;
  return isServer(place) ? place : absolute(place);
}

function isServer(place: string): boolean {
  return /^postgres(ql)?:\/\//.test(place);
}

/** The records of a place; where they cannot be had, why is printed. */
export async function recordsAt(place: string, terminal: Terminal): Promise<Records | undefined> {
  try {
    const { openRecords } = await import('../store/index.ts');
    return await openRecords(place);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const unbuilt = /bindings file|NODE_MODULE_VERSION|Cannot find module 'better-sqlite3'/.test(message);
    terminal.err(
      unbuilt
        ? 'The records need better-sqlite3, which is not built for this Node.\n' +
            'On Debian: apt-get install python3 make g++, then npm rebuild better-sqlite3'
        : `The records in ${placeShown(place)} cannot be opened: ${message}`,
    );
    return undefined;
  }
}

/** A place of the records as people may read it: an address without its password. */
export function placeShown(place: string): string {
  return place.replace(/^(postgres\w*:\/\/[^/@:]*):[^@]*@/, '$1:***@');
}

/** Folder beside the records in which letters lie that nobody sends. */
export function outboxFor(place: string): string {
  return isServer(place) ? absolute('spraywright-outbox') : join(place, 'outbox');
}
