import { existsSync, readFileSync } from 'node:fs';
import { extname, join, normalize } from 'node:path';
import type { Handler } from 'hono';
import { problem } from './problem.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
};

/** Addresses that the desk itself reads: a job's, and the list of jobs. */
const DESK = /^\/(jobs(\/[^/]*)?)?$/;

/** The files of the built page, packed where the build has packed them; a job's address is the desk with that job on it. */
export function pageFiles(folder: string): Handler {
  const root = normalize(`${folder}/`);
  return (c) => {
    const path = DESK.test(c.req.path) ? '/index.html' : decoded(c.req.path);
    const file = path === undefined ? root : normalize(join(root, path));
    if (!file.startsWith(root) || extname(file) === '' || !existsSync(file))
      return problem(c, 'no-such-page', 'there is no such page');
    const packed = /\bgzip\b/.test(c.req.header('Accept-Encoding') ?? '') && existsSync(`${file}.gz`);
    return c.body(new Uint8Array(readFileSync(packed ? `${file}.gz` : file)), 200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Cache-Control': c.req.path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      Vary: 'Accept-Encoding',
      ...(packed ? { 'Content-Encoding': 'gzip' } : {}),
    });
  };
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}
