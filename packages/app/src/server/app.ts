import { readFileSync, existsSync } from 'node:fs';
import { extname, join, normalize } from 'node:path';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { secureHeaders } from 'hono/secure-headers';
import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import { formatPath } from '@spraywright/engine/quantity';
import { proveRig, readRig } from '@spraywright/engine/rig';
import { quotePdf } from '../documents/quote-pdf.ts';

export interface ServerOptions {
  /** Folder of the built page. */
  readonly webFolder: string;
  /** Raw JSON files the page starts from: catalogue, shop and briefs. */
  readonly start: unknown;
  readonly catalogue: Catalogue;
  readonly shop: Shop;
  /** Today as YYYY-MM-DD, asked at each quote. */
  readonly today: () => string;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
};

const LARGEST_BODY = 2_000_000;

/** The page, what it starts from, and the quote of a rig as a PDF. Nothing is stored. */
export function serverApp(options: ServerOptions): Hono {
  const app = new Hono();
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:'],
        objectSrc: ["'none'"],
        frameAncestors: ["'none'"],
      },
    }),
  );

  app.get('/start.json', (c) => c.json(options.start as never));

  app.post(
    '/quote.pdf',
    bodyLimit({
      maxSize: LARGEST_BODY,
      onError: (c) =>
        c.json({ problems: [{ code: 'too-large', message: 'the rig is larger than 2 MB' }] }, 413),
    }),
    async (c) => {
      let raw: unknown;
      try {
        raw = await c.req.json();
      } catch {
        return c.json({ problems: [{ code: 'not-json', message: 'the body is not JSON' }] }, 400);
      }
      const { rig: rawRig, units } = (raw ?? {}) as { rig?: unknown; units?: unknown };
      const rig = readRig(rawRig, options.catalogue);
      if (!rig.ok)
        return c.json(
          {
            problems: rig.problems.map((p) => ({
              field: formatPath(p.path),
              code: p.code,
              message: p.message,
            })),
          },
          422,
        );
      const system = units === 'metric' ? 'metric' : 'us';
      const proof = proveRig(rig.rig, options.catalogue, options.shop, { units: system });
      const pdf = await quotePdf(proof, { shop: options.shop, units: system, date: options.today() });
      return c.body(new Uint8Array(pdf), 200, {
        'Content-Type': 'application/pdf',
        'Content-Disposition': `attachment; filename="quote-${proof.id}.pdf"`,
      });
    },
  );

  app.get('/*', (c) => {
    const path = c.req.path === '/' ? '/index.html' : decodeURIComponent(c.req.path);
    const file = normalize(join(options.webFolder, path));
    if (!file.startsWith(normalize(options.webFolder)) || !existsSync(file) || extname(file) === '')
      return c.text('There is no such page.', 404);
    return c.body(new Uint8Array(readFileSync(file)), 200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Cache-Control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
    });
  });
  return app;
}
