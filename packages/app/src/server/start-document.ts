import { join } from 'node:path';
import { catalogueFileNames, readJsonFile } from '../documents/catalogue-folder.ts';

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
  const names = catalogueFileNames(catalogueFolder) ?? { parts: [], layouts: [] };
  const files = (list: readonly string[]) =>
    list.map((file) => ({ file, raw: raw(join(catalogueFolder, file)) }));
  return {
    head: raw(join(catalogueFolder, 'catalogue.json')),
    files: files(names.parts),
    layouts: files(names.layouts),
    shop: raw(shopFile),
    briefs,
  };
}
