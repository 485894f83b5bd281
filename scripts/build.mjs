// npm run build: what `npm start` builds by itself.
import { ensureBuilt, ensureInstalled } from './ensure.mjs';

ensureInstalled();
ensureBuilt();
