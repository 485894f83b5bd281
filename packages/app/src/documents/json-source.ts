import { findNodeAtLocation, parseTree, printParseErrorCode, type Node, type ParseError } from 'jsonc-parser';
import { formatPath, type Path, type Problem } from '@spraywright/engine/quantity';

/** A JSON document that still knows on which line each of its fields stands. */
export interface JsonSource {
  readonly file: string;
  readonly raw: unknown;
  /** Line and column, both from 1, of the field at the path, or of its nearest parent that exists. */
  readonly locate: (path: Path) => { line: number; column: number };
}

/** A problem as a person finds it: file, line, field, and what is wrong. */
export interface LocatedProblem {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly field: string;
  readonly code: string;
  readonly message: string;
}

const LARGEST = 20_000_000;

/** Parses strict JSON; a syntax error is a problem with its place, never an exception. */
export function parseJsonSource(
  file: string,
  text: string,
): { ok: true; source: JsonSource } | { ok: false; problems: LocatedProblem[] } {
  const fail = (offset: number, code: string, message: string) => ({
    ok: false as const,
    problems: [{ file, ...placeOf(text, offset), field: '', code, message }],
  });
  if (text.length > LARGEST)
    return fail(0, 'too-large', `the file has ${text.length} characters; at most ${LARGEST} are read`);
  try {
    const raw: unknown = JSON.parse(text);
    // Where each field stands is looked for when it is asked, which most documents never are.
    let tree: Node | undefined;
    const locate = (path: Path) => placeOf(text, nodeAt((tree ??= treeOf(text).tree!), path).offset);
    return { ok: true, source: { file, raw, locate } };
  } catch {
    const [first] = treeOf(text).errors;
    return first === undefined
      ? fail(0, 'not-json', 'the file is empty; a JSON document was expected')
      : fail(first.offset, 'not-json', `this is not JSON: ${words(printParseErrorCode(first.error))}`);
  }
}

function treeOf(text: string): { tree: Node | undefined; errors: readonly ParseError[] } {
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  return { tree, errors };
}

/** Adds to each problem the line where it stands. */
export function located(source: JsonSource, problems: readonly Problem[]): LocatedProblem[] {
  return problems.map((p) => ({
    file: source.file,
    ...source.locate(p.path),
    field: formatPath(p.path),
    code: p.code,
    message: p.message,
  }));
}

/** One line a problem, as compilers print them; a file that could not be read has no line. */
export function problemText(p: LocatedProblem): string {
  const at = p.code === 'unreadable' ? p.file : `${p.file}:${p.line}:${p.column}`;
  return `${at}: ${p.field === '' ? '' : `${p.field}: `}${p.message}`;
}

function nodeAt(tree: Node, path: Path): Node {
  for (let length = path.length; length > 0; length--) {
    const node = findNodeAtLocation(tree, [...path.slice(0, length)]);
    if (node !== undefined) return node;
  }
  return tree;
}

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  return { line: before.split('\n').length, column: offset - before.lastIndexOf('\n') };
}

/** "CommaExpected" as words. */
function words(code: string): string {
  return code.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}
