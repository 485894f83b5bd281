import { relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const COMPILED = path('dist/');
const BUNDLED = path('dist/node');

/** A module that looks for a file from its own place still does, from where it was compiled to. */
function fromItsPlace(): Plugin {
  return {
    name: 'from-its-place',
    transform(code, id) {
      if (!id.startsWith(COMPILED) || !code.includes('import.meta.url')) return undefined;
      const place = JSON.stringify(relative(BUNDLED, id).replaceAll(sep, '/'));
      return {
        code: code.replaceAll('import.meta.url', `new URL(${place}, import.meta.url).href`),
        map: null,
      };
    },
  };
}

// The command line and the server in a few files: Node opens them several times as quickly as the many they are made of.
export default defineConfig({
  root: path('.'),
  ssr: {
    noExternal: true,
    // Built for the machine, or no modules of JavaScript's own kind.
    external: ['better-sqlite3', 'elkjs', 'nodemailer', 'pdfmake', 'pg', 'pg-boss'],
  },
  build: {
    ssr: true,
    outDir: BUNDLED,
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      input: { main: path('dist/cli/main.js') },
      output: { chunkFileNames: '[name]-[hash].js' },
    },
  },
  plugins: [fromItsPlace()],
});
