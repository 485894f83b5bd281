import { defineConfig } from 'vite';

// The page is one bundle and one worker; the engine's sources go in directly.
export default defineConfig({
  root: new URL('src/web', import.meta.url).pathname,
  base: './',
  resolve: { conditions: ['source', 'browser', 'import', 'default'] },
  build: {
    outDir: new URL('dist/web', import.meta.url).pathname,
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
  },
  worker: { format: 'es' },
});
