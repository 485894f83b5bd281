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

/** A job as people would spell its address; the desk itself has it behind a `#`. */
const JOB = /^\/jobs(?:\/([^/]*))?$/;

/** The files of the built page, packed where the build has packed them; a job's address leads to the desk with that job on it. */
export function pageFiles(folder: string): Handler {
  const root = normalize(`${folder}/`);
  return (c) => {
    const job = JOB.exec(c.req.path);
    if (job !== null) return c.redirect(job[1] ? `/#${job[1]}` : '/');
    const path = c.req.path === '/' ? '/index.html' : decoded(c.req.path);
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
