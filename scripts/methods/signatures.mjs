// Finds the public functions of the engine's layers and reads their comments beside their types.
import { dirname, join, relative } from 'node:path';
import ts from 'typescript';
import { readComment } from './doc-comment.mjs';
import { isKnownUnit } from './units.mjs';

/** Every function that the `index.ts` of a layer exports, in the order of files and lines. */
export function publicFunctions(sourceRoot, layers) {
  const entries = layers.map((layer) => join(sourceRoot, layer, 'index.ts'));
  const program = ts.createProgram(entries, {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ['lib.es2023.d.ts'],
    types: [],
    strict: true,
    exactOptionalPropertyTypes: true,
    allowImportingTsExtensions: true,
    noEmit: true,
  });
  const checker = program.getTypeChecker();
  const found = [];
  layers.forEach((layer, i) => {
    const entry = program.getSourceFile(entries[i]);
    const module = entry && checker.getSymbolAtLocation(entry);
    if (!module) throw new Error(`${relative(process.cwd(), entries[i])} cannot be read or exports nothing`);
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
      const node = symbol.valueDeclaration;
      if (!node || !ts.isFunctionDeclaration(node)) continue;
      const file = relative(sourceRoot, node.getSourceFile().fileName).replaceAll('\\', '/');
      // A layer may pass on what a lower layer exports; it belongs to the lower one.
      if (!file.startsWith(`${layer}/`)) continue;
      found.push(describe(checker, exported.name, node, layer, file));
    }
  });
  return found.sort(
    (a, b) =>
      layers.indexOf(a.layer) - layers.indexOf(b.layer) ||
      folderOf(a.file).localeCompare(folderOf(b.file), 'en') ||
      a.file.localeCompare(b.file, 'en') ||
      a.line - b.line,
  );
}

export const folderOf = (file) => dirname(file);

function describe(checker, name, node, layer, file) {
  const source = node.getSourceFile();
  const comments = ts.getLeadingCommentRanges(source.text, node.pos) ?? [];
  const comment = comments.map((c) => source.text.slice(c.pos, c.end)).findLast((c) => c.startsWith('/**'));
  const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
  const doc = comment === undefined ? undefined : readComment(comment);
  const args = node.parameters.map((parameter) => argument(checker, parameter));
  const returned = checker.getReturnTypeOfSignature(checker.getSignatureFromDeclaration(node));
  return { name, layer, file, line, doc, args, returned: resultType(checker, returned, node) };
}

function argument(checker, parameter) {
  const type = checker.getTypeAtLocation(parameter);
  const optional = parameter.questionToken !== undefined || parameter.initializer !== undefined;
  const name = parameter.name.getText();
  const kind = kindOf(checker, type);
  if (kind.kind !== 'object') return { name, optional, ...kind };
  const fields = checker.getPropertiesOfType(checker.getNonNullableType(type)).map((property) => {
    const fieldType = checker.getTypeOfSymbolAtLocation(property, parameter);
    return {
      name: property.name,
      optional: Boolean(property.flags & ts.SymbolFlags.Optional) || allowsUndefined(fieldType),
      ...kindOf(checker, fieldType),
    };
  });
  return { name, optional, kind: 'object', fields };
}

function resultType(checker, type, node) {
  const kind = kindOf(checker, type);
  if (kind.kind !== 'object') return kind;
  const properties = checker.getPropertiesOfType(checker.getNonNullableType(type));
  return {
    kind: 'object',
    fields: properties.map((p) => ({
      name: p.name,
      ...kindOf(checker, checker.getTypeOfSymbolAtLocation(p, node)),
    })),
  };
}

function allowsUndefined(type) {
  return type.isUnion() && type.types.some((t) => t.flags & ts.TypeFlags.Undefined);
}

/** What a person could give for a type: a number, a flag, a choice of words or numbers, a list of numbers, an object. */
function kindOf(checker, declared) {
  const type = checker.getNonNullableType(declared);
  const flags = ts.TypeFlags;
  if (type.flags & flags.NumberLike) return { kind: 'number' };
  if (type.flags & flags.BooleanLike) return { kind: 'flag' };
  if (type.flags & flags.StringLiteral) return { kind: 'choice', choices: [type.value] };
  if (type.flags & flags.StringLike) return { kind: 'text' };
  if (type.isUnion()) {
    if (type.types.every((t) => t.flags & flags.BooleanLike)) return { kind: 'flag' };
    if (type.types.every((t) => t.flags & flags.StringLiteral))
      return { kind: 'choice', choices: type.types.map((t) => t.value) };
    if (type.types.every((t) => t.flags & flags.NumberLike)) return { kind: 'number' };
    return { kind: 'other' };
  }
  if (checker.isArrayType(type)) {
    const element = checker.getTypeArguments(type)[0];
    return element.flags & flags.NumberLike ? { kind: 'list' } : { kind: 'other' };
  }
  const composed = type.flags & (flags.Object | flags.Intersection) && !checker.isTupleType(type);
  return composed && checker.getPropertiesOfType(type).length > 0 ? { kind: 'object' } : { kind: 'other' };
}

/** What is wrong with the comment of a formula, each as one sentence; empty when nothing is. */
export function commentProblems(fn) {
  const { doc } = fn;
  if (doc === undefined) return [`${fn.name} has no doc comment`];
  const out = [];
  const say = (what) => out.push(`${fn.name} ${what}`);
  if (doc.purpose === '') say('has no sentence of purpose');
  if (doc.formula === '') say('has no @formula');
  if (doc.source === '') say('has no @source');
  const wanted = new Map();
  for (const arg of fn.args) {
    wanted.set(arg.name, arg);
    for (const field of arg.fields ?? []) wanted.set(`${arg.name}.${field.name}`, field);
  }
  for (const param of doc.params) {
    const type = wanted.get(param.name);
    if (type === undefined && !isDeep(param.name, wanted))
      say(`documents '${param.name}', which it does not take`);
    valueProblems(say, `@param ${param.name}`, param, type, true);
  }
  const documented = doc.params.map((p) => p.name);
  for (const arg of fn.args) {
    const inside = documented.some((name) => name === arg.name || name.startsWith(`${arg.name}.`));
    if (!inside) say(`does not document '${arg.name}'`);
    if (arg.kind !== 'object' || documented.includes(arg.name)) continue;
    // An optional field of a shared type that this function has no use for may go unmentioned; it is not offered then.
    for (const field of arg.fields.filter((f) => !f.optional))
      if (
        !documented.some(
          (n) => n === `${arg.name}.${field.name}` || n.startsWith(`${arg.name}.${field.name}.`),
        )
      )
        say(`does not document '${arg.name}.${field.name}'`);
  }
  if (doc.returns === undefined && doc.results.length === 0) say('has neither @returns nor @result');
  if (doc.returns !== undefined) valueProblems(say, '@returns', doc.returns, fn.returned, false);
  const given = new Map((fn.returned.fields ?? []).map((f) => [f.name, f]));
  for (const result of doc.results) {
    if (fn.returned.kind === 'object' && !given.has(result.name) && !isDeep(result.name, given))
      say(`documents a result '${result.name}', which it does not return`);
    valueProblems(say, `@result ${result.name}`, result, given.get(result.name), false);
  }
  return out;
}

const isDeep = (name, known) =>
  name.split('.').some((_, i, steps) => i > 0 && known.has(steps.slice(0, i).join('.')));

function valueProblems(say, where, value, type, input) {
  if (value.kind === undefined) return say(`has no unit at ${where}`);
  if (value.trailing !== undefined)
    say(`has '${value.trailing}' behind the unit at ${where}; a range is written min..max`);
  if (value.min !== undefined && value.max !== undefined && value.min > value.max)
    say(`has an empty range at ${where}`);
  const measured = value.kind === 'number' || value.kind === 'list';
  const plain = type === undefined || ['number', 'list', 'flag', 'choice'].includes(type.kind);
  if (measured && plain && !isKnownUnit(value.unit)) say(`has the unknown unit '${value.unit}' at ${where}`);
  if (input && measured && plain && !value.ranged) say(`has no range at ${where}`);
  if (type === undefined || !plain) return;
  const words = type.kind === 'choice' && value.kind === 'choice';
  const numbers =
    type.kind === 'number' && value.kind === 'choice' && value.choices.every((c) => c !== '' && !isNaN(c));
  const word = value.kind === 'text' && type.kind === 'choice' && !input;
  if (type.kind !== value.kind && !numbers && !word)
    say(`calls ${where} a ${value.kind}, but its type is a ${type.kind}`);
  if (words && input && [...type.choices].sort().join() !== [...value.choices].sort().join())
    say(
      `lists the choices ${value.choices.join(', ')} at ${where}, but its type has ${type.choices.join(', ')}`,
    );
}
