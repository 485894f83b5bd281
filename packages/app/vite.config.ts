import { defineConfig } from 'vite';

// The desk is one bundle and one worker, the sums another page; the engine's sources go in directly.
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
      input: ['index', 'sums'].map((name) => new URL(`src/web/${name}.html`, import.meta.url).pathname),
    },
  },
  worker: { format: 'es' },
});
