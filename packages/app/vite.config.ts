import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

const built = new URL('dist/web/', import.meta.url);

/** Writes the worker that keeps the page on the device, with the list of all built files, so that each build is kept anew. */
function offline(): Plugin {
  return {
    name: 'offline',
    closeBundle() {
      const files = [
        'sums.html',
        'office.html',
        'machines.html',
        ...readdirSync(new URL('assets', built))
          .filter((f) => !f.endsWith('.gz'))
          .sort()
          .map((f) => `assets/${f}`),
      ];
      const source = readFileSync(new URL('src/web/offline.js', import.meta.url), 'utf8');
      writeFileSync(new URL('sw.js', built), `const FILES = ${JSON.stringify(files)};\n${source}`);
    },
  };
}

/** Writes every text beside itself as gzip, so that the server packs nothing while somebody waits. */
function packed(): Plugin {
  return {
    name: 'packed',
    writeBundle(_, bundle) {
      for (const file of Object.keys(bundle).filter((name) => /\.(js|css|html|svg)$/.test(name)))
        writeFileSync(
          new URL(`${file}.gz`, built),
          gzipSync(readFileSync(new URL(file, built)), { level: 9 }),
        );
    },
  };
}

// The desk is one bundle and its workers, the other sheets pages of their own; the engine's sources go in directly.
export default defineConfig({
  root: new URL('src/web', import.meta.url).pathname,
  base: './',
  resolve: { conditions: ['source', 'browser', 'import', 'default'] },
  build: {
    outDir: new URL('dist/web', import.meta.url).pathname,
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
    rolldownOptions: {
      input: ['index', 'sums', 'office', 'machines', 'design'].map(
        (name) => new URL(`src/web/${name}.html`, import.meta.url).pathname,
      ),
    },
  },
  plugins: [offline(), packed()],
  worker: { format: 'es' },
});
