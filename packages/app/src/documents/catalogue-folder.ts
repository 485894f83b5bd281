import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCatalogue, shopShape, type Catalogue, type Shop } from '@spraywright/engine/catalogue';
import { formatPath, read } from '@spraywright/engine/quantity';
import { located, parseJsonSource, type JsonSource, type LocatedProblem } from './json-source.ts';

const HEAD = 'catalogue.json';

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

/** Reads a catalogue folder: `catalogue.json` with name and version, and one file for each kind of part. */
export function readCatalogueFolder(
  folder: string,
): { ok: true; catalogue: Catalogue } | { ok: false; problems: LocatedProblem[] } {
  let names: string[];
  try {
    names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  } catch {
    return {
      ok: false,
      problems: [
        {
          file: folder,
          line: 1,
          column: 1,
          field: '',
          code: 'unreadable',
          message: 'there is no such folder',
        },
      ],
    };
  }
  const problems: LocatedProblem[] = [];
  const sources = new Map<string, JsonSource>();
  for (const name of names.sort()) {
    const result = readJsonFile(join(folder, name));
    if (result.ok) sources.set(name, result.source);
    else problems.push(...result.problems);
  }
  const head = sources.get(HEAD);
  if (head === undefined && problems.length === 0)
    problems.push({
      file: join(folder, HEAD),
      line: 1,
      column: 1,
      field: '',
      code: 'missing',
      message: 'a catalogue folder has a catalogue.json with its name and version',
    });
  if (problems.length > 0 || head === undefined) return { ok: false, problems };
  const files = [...sources]
    .filter(([name]) => name !== HEAD)
    .map(([name, source]) => ({ file: name, raw: source.raw }));
  const result = readCatalogue({ file: HEAD, raw: head.raw }, files);
  if (result.ok) return result;
  return {
    ok: false,
    problems: result.problems.map((p) => {
      const source = sources.get(p.file)!;
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
