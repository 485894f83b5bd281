// npm start: install and build when needed, print the proof of the demo job, serve the page.
import { ensureBuilt, ensureInstalled } from './ensure.mjs';

ensureInstalled();
ensureBuilt();
const { main } = await import('../packages/app/dist/node/main.js');
process.exitCode = await main(['start', ...process.argv.slice(2)]);
