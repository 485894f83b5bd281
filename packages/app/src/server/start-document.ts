import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readJsonFile } from '../documents/catalogue-folder.ts';

/** What the page starts from: the raw files, so that it checks and reads them with the same engine as the server. */
export function startDocument(
  catalogueFolder: string,
  shopFile: string,
  briefs: readonly unknown[],
): unknown {
  const raw = (path: string) => {
    const file = readJsonFile(path);
    return file.ok ? file.source.raw : null;
  };
  const files = readdirSync(catalogueFolder).filter(
    (name) => name.endsWith('.json') && name !== 'catalogue.json',
  );
  return {
    head: raw(join(catalogueFolder, 'catalogue.json')),
    files: files.sort().map((file) => ({ file, raw: raw(join(catalogueFolder, file)) })),
    shop: raw(shopFile),
    briefs,
  };
}
