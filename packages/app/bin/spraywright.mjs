#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const built = new URL('../dist/node/main.js', import.meta.url);
if (!existsSync(fileURLToPath(built))) {
  process.stderr.write('Spraywright is not built yet: run `npm start` once, or `npm run build`.\n');
  process.exit(2);
}
const { main } = await import(built.href);
process.exitCode = await main(process.argv.slice(2));
