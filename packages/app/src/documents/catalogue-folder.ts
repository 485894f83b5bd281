import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCatalogue, shopShape, type Catalogue, type Shop } from '@spraywright/engine/catalogue';
import { formatPath, read } from '@spraywright/engine/quantity';
import { located, parseJsonSource, type JsonSource, type LocatedProblem } from './json-source.ts';

const HEAD = 'catalogue.json';
/** Folder of a catalogue folder with the layouts of the shop's own. */
const LAYOUTS = 'layouts';

/** Reads one JSON file; a file that cannot be opened is a problem like any other. */
export function readJsonFile(
  path: string,
): { ok: true; source: JsonSource } | { ok: false; problems: LocatedProblem[] } {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unreadable';
    const why =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'this is a folder; a file was expected'
          : `it cannot be read (${code})`;
    return {
      ok: false,
      problems: [{ file: path, line: 1, column: 1, field: '', code: 'unreadable', message: why }],
    };
  }
  return parseJsonSource(path, text);
}

interface CatalogueFile {
  readonly name: string;
  readonly kind: string;
  readonly raw: unknown;
  readonly source: JsonSource;
}

/** The files of a catalogue folder: its head, one for each kind of part, and layouts of the shop's own. */
interface CatalogueFiles {
  readonly head: CatalogueFile;
  readonly files: readonly CatalogueFile[];
  readonly layouts: readonly CatalogueFile[];
}

/** Names of the JSON files of a catalogue folder: parts and layouts; undefined when there is no such folder. */
function catalogueFileNames(folder: string): { parts: string[]; layouts: string[] } | undefined {
  const jsonIn = (path: string) =>
    readdirSync(path)
      .filter((name) => name.endsWith('.json'))
      .sort();
  let parts: string[];
  try {
    parts = jsonIn(folder).filter((name) => name !== HEAD);
  } catch {
    return undefined;
  }
  const own = join(folder, LAYOUTS);
  return { parts, layouts: existsSync(own) ? jsonIn(own).map((name) => `${LAYOUTS}/${name}`) : [] };
}

/**
 * The files of a catalogue folder as JSON: `catalogue.json` with name and version, one for each kind of part, and in the
 * folder `layouts` one for each rig family of the shop's own.
 */
export function catalogueFiles(
  folder: string,
): ({ ok: true } & CatalogueFiles) | { ok: false; problems: LocatedProblem[] } {
  const fail = (file: string, code: string, message: string) => ({
    ok: false as const,
    problems: [{ file, line: 1, column: 1, field: '', code, message }],
  });
  const names = catalogueFileNames(folder);
  if (names === undefined) return fail(folder, 'unreadable', 'there is no such folder');
  const problems: LocatedProblem[] = [];
  const files: CatalogueFile[] = [];
  for (const name of [HEAD, ...names.parts, ...names.layouts]) {
    if (name === HEAD && !existsSync(join(folder, HEAD))) continue;
    const result = readJsonFile(join(folder, name));
    if (!result.ok) problems.push(...result.problems);
    else {
      const { source } = result;
      const kind = (source.raw as { kind?: unknown } | null)?.kind;
      files.push({ name, kind: typeof kind === 'string' ? kind : '', raw: source.raw, source });
    }
  }
  if (problems.length > 0) return { ok: false, problems };
  const head = files.find((f) => f.name === HEAD);
  if (head === undefined)
    return fail(
      join(folder, HEAD),
      'missing',
      'a catalogue folder has a catalogue.json with its name and version',
    );
  const isLayout = (f: CatalogueFile) => names.layouts.includes(f.name);
  return {
    ok: true,
    head,
    files: files.filter((f) => f !== head && !isLayout(f)),
    layouts: files.filter(isLayout),
  };
}

/** Reads a catalogue folder; every problem of every file comes with its line. */
export function readCatalogueFolder(
  folder: string,
): { ok: true; catalogue: Catalogue } | { ok: false; problems: LocatedProblem[] } {
  const found = catalogueFiles(folder);
  if (!found.ok) return found;
  const { head, files, layouts } = found;
  const raws = (list: readonly CatalogueFile[]) => list.map(({ name, raw }) => ({ file: name, raw }));
  const result = readCatalogue({ file: HEAD, raw: head.raw }, raws(files), raws(layouts));
  if (result.ok) return result;
  return {
    ok: false,
    problems: result.problems.map((p) => {
      const { source } = [head, ...files, ...layouts].find((f) => f.name === p.file)!;
      return {
        file: source.file,
        ...source.locate(p.path),
        field: formatPath(p.path),
        code: p.code,
        message: p.message,
      };
    }),
  };
}

export function readShopFile(
  path: string,
): { ok: true; shop: Shop } | { ok: false; problems: LocatedProblem[] } {
  const file = readJsonFile(path);
  if (!file.ok) return file;
  const result = read(shopShape, file.source.raw);
  return result.ok
    ? { ok: true, shop: result.value }
    : { ok: false, problems: located(file.source, result.problems) };
}
