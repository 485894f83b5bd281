import {
  shopShape,
  KINDS,
  readCatalogue,
  withMoved,
  type Catalogue,
  type Kind,
  type Shop,
} from '@spraywright/engine/catalogue';
import { formatPath, read } from '@spraywright/engine/quantity';
import {
  catalogueFiles,
  readCatalogueFolder,
  readJsonFile,
  readShopFile,
} from '../documents/catalogue-folder.ts';
import type { LocatedProblem } from '../documents/json-source.ts';
import type { RawPart } from '../documents/part-cells.ts';
import type { KeptCatalogue } from '../store/index.ts';

/** A catalogue as files have it: a head with name, version and retired ids, and one file for each kind of part. */
export interface CatalogueFiles {
  readonly head: { readonly name: string; readonly version: number; readonly retired: readonly string[] };
  readonly files: readonly { readonly file: string; readonly raw: unknown }[];
  readonly layouts: readonly { readonly file: string; readonly raw: unknown }[];
  readonly shop: unknown;
  /** What moved of each part since its stock was laid in; nothing where only the catalogue itself is asked for. */
  readonly moved?: Readonly<Record<string, number>>;
}

interface RawFile {
  readonly kind: Kind;
  readonly about?: string;
  readonly supplier?: string;
  readonly parts: readonly RawPart[];
}

/** Reads a folder and a shop file, checked, into what the records keep. */
export function catalogueFromFolder(
  folder: string,
  shopFile: string,
): { ok: true; kept: KeptCatalogue } | { ok: false; problems: LocatedProblem[] } {
  const checked = readCatalogueFolder(folder);
  const shop = readShopFile(shopFile);
  if (!checked.ok || !shop.ok)
    return {
      ok: false,
      problems: [...(checked.ok ? [] : checked.problems), ...(shop.ok ? [] : shop.problems)],
    };
  const files = catalogueFiles(folder);
  const rawShop = readJsonFile(shopFile);
  if (!files.ok) return files;
  if (!rawShop.ok) return rawShop;
  const { name, version, retired } = checked.catalogue;
  const raws = files.files.map(({ raw }) => raw as RawFile);
  return {
    ok: true,
    kept: {
      name,
      edition: version,
      shop: rawShop.source.raw,
      about: Object.fromEntries(
        raws.flatMap(({ kind, about }) => (about === undefined ? [] : [[kind, about]])),
      ),
      layouts: files.layouts.map(({ raw }) => raw),
      parts: raws.flatMap(({ kind, supplier, parts }) =>
        parts.map((part) => ({
          id: part.id as string,
          kind,
          // What the file says of all its parts goes into each: from now on they change one by one.
          document: supplier === undefined || part.supplier !== undefined ? part : { ...part, supplier },
          retired: retired.has(part.id as string),
        })),
      ),
    },
  };
}

/** What the records keep, as files. */
export function filesOfCatalogue({
  name,
  edition,
  shop,
  about,
  parts,
  layouts,
}: KeptCatalogue): CatalogueFiles {
  const files = KINDS.flatMap((kind) => {
    const own = parts.filter((part) => part.kind === kind);
    if (own.length === 0) return [];
    const told = about[kind] === undefined ? {} : { about: about[kind] };
    return [{ file: `${kind}.json`, raw: { kind, ...told, parts: own.map(({ document }) => document) } }];
  });
  const retired = parts.filter((part) => part.retired).map(({ id }) => id);
  return { head: { name, version: edition, retired }, files, layouts: layouts.map(layoutFile), shop };
}

function layoutFile(raw: unknown): { file: string; raw: unknown } {
  return { file: `layouts/${(raw as { id: string }).id}.json`, raw };
}

/**
 * Reads files with the engine; the stock of its parts is what is on hand.
 *
 * @throws Error naming the first field that cannot be read
 */
export function readFiles({ head, files, layouts, shop: raw, moved = {} }: CatalogueFiles): {
  catalogue: Catalogue;
  shop: Shop;
} {
  const catalogue = readCatalogue({ file: 'catalogue.json', raw: head }, files, layouts);
  const shop = read(shopShape, raw);
  if (!catalogue.ok) {
    const { file, path, message } = catalogue.problems[0]!;
    throw new Error(`the catalogue in the records cannot be read: ${file}: ${formatPath(path)}: ${message}`);
  }
  if (!shop.ok)
    throw new Error(`the shop's settings in the records cannot be read: ${shop.problems[0]!.message}`);
  return { catalogue: withMoved(catalogue.catalogue, moved), shop: shop.value };
}
