import { readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { readOrigin, type ReachedBy } from '../server/reached-by.ts';
import type { Arguments, Option } from './command.ts';

/** Options of how others reach the server, for `start`. */
export const REACHED_OPTIONS: Readonly<Record<'public-url' | 'client-header' | 'cert' | 'key', Option>> = {
  'public-url': {
    type: 'string',
    value: 'address',
    help: 'address at which others reach this server, through whatever stands before it: https://quotes.shop.example',
  },
  'client-header': {
    type: 'string',
    value: 'name',
    help: 'header in which whatever stands before this server writes who asked, such as X-Forwarded-For; believed only when named',
  },
  cert: { type: 'string', value: 'file', help: 'certificate (PEM), to serve by TLS; with --key' },
  key: { type: 'string', value: 'file', help: 'private key (PEM) of the certificate' },
};

export interface Reached {
  readonly reached: ReachedBy;
  readonly tls?: { readonly cert: Buffer; readonly key: Buffer };
}

/** @throws RangeError naming an option that cannot be, or whose file cannot be read */
export function readReached(args: Arguments): Reached {
  const [address, clientHeader, cert, key] = ['public-url', 'client-header', 'cert', 'key'].map((name) =>
    args.text(name),
  );
  if ((cert === undefined) !== (key === undefined))
    throw new RangeError('--cert and --key go together: a certificate and its private key');
  if (clientHeader !== undefined && !/^[\w-]{1,60}$/.test(clientHeader))
    throw new RangeError(`--client-header is '${clientHeader}'; the name of a header was expected`);
  return {
    reached: {
      ...(address === undefined ? {} : { origin: readOrigin(address) }),
      ...(clientHeader === undefined ? {} : { clientHeader }),
      ...(cert === undefined ? {} : { tls: true }),
    },
    ...(cert === undefined || key === undefined
      ? {}
      : { tls: { cert: pemOf('cert', cert), key: pemOf('key', key) } }),
  };
}

function pemOf(option: string, file: string): Buffer {
  try {
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    const why = code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    throw new RangeError(`--${option} is '${file}', which cannot be read: ${why}`, { cause: error });
  }
}

/** Names that a browser may ask for when the page is served at an address: all of this machine's for 0.0.0.0. */
export function namesAt(host: string): string[] {
  if (host !== '0.0.0.0') return [host];
  const addresses = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  return addresses.filter(({ family }) => family === 'IPv4').map(({ address }) => address);
}
