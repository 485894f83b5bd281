import { parentPort, workerData } from 'node:worker_threads';
import type { OpenQuote } from '../../store/index.ts';
import { readFiles, type CatalogueFiles } from '../catalogue-files.ts';
import { quoteAgain } from './quote-again.ts';

const { catalogue, shop } = readFiles(workerData as CatalogueFiles);

/** A thread of its own: the server answers while quotes are proven here, some at a time. */
parentPort!.on('message', (quotes: readonly OpenQuote[]) => {
  parentPort!.postMessage(quotes.flatMap((quote) => quoteAgain(quote, catalogue, shop) ?? []));
});
