// The list of calculations a person can run by name: every formula whose inputs can be typed in.

const TYPED = new Set(['number', 'list', 'flag', 'choice']);

/** The entry of one formula, or undefined when an input cannot be typed. */
export function calculation(fn) {
  const params = [];
  for (const arg of fn.args) {
    const own = fn.doc.params.find((p) => p.name === arg.name);
    if (arg.kind !== 'object') {
      const entry = parameter(arg, own);
      if (entry === undefined) return undefined;
      params.push(entry);
      continue;
    }
    for (const field of arg.fields) {
      const documented = fn.doc.params.find((p) => p.name === `${arg.name}.${field.name}`);
      if (documented === undefined && field.optional) continue;
      const entry = parameter({ ...field, optional: field.optional || arg.optional }, documented);
      if (entry === undefined) return undefined;
      params.push({ ...entry, of: arg.name });
    }
  }
  if (new Set(params.map((p) => p.name)).size < params.length) return undefined;
  const results = resultsOf(fn);
  if (results === undefined) return undefined;
  const { purpose, formula, valid, source } = fn.doc;
  return {
    name: fn.name,
    layer: fn.layer,
    file: fn.file,
    purpose,
    formula,
    args: fn.args.map((arg) => ({ name: arg.name, object: arg.kind === 'object' })),
    params,
    results,
    ...(valid === '' ? {} : { valid }),
    source,
  };
}

function parameter(type, doc) {
  // A choice among words may be plain text to the type checker: the function itself refuses the others.
  const typed = TYPED.has(type.kind) || (type.kind === 'text' && doc?.kind === 'choice');
  if (doc === undefined || !TYPED.has(doc.kind) || !typed) return undefined;
  return {
    name: type.name,
    meaning: doc.meaning,
    kind: doc.kind,
    ...(doc.unit === undefined ? {} : { unit: doc.unit }),
    ...(doc.min === undefined ? {} : { min: doc.min }),
    ...(doc.max === undefined ? {} : { max: doc.max }),
    ...(doc.choices === undefined ? {} : { choices: doc.choices }),
    // A choice of numbers, such as a mesh.
    ...(doc.kind === 'choice' && type.kind === 'number' ? { numeric: true } : {}),
    ...(type.optional ? { optional: true } : {}),
  };
}

function resultsOf(fn) {
  const { doc } = fn;
  const entry = ({ name, meaning, kind, unit }) => ({
    name,
    meaning,
    kind,
    ...(unit === undefined ? {} : { unit }),
  });
  if (doc.returns !== undefined) return [entry({ ...doc.returns, name: '' })];
  const readable = doc.results.filter(
    (r) => !r.name.includes('.') && (TYPED.has(r.kind) || r.kind === 'text'),
  );
  return readable.length === 0 ? undefined : readable.map(entry);
}

export function dataFile(calculations) {
  const rows = calculations.map((c) => `  ${JSON.stringify(c)},`).join('\n');
  return [
    '// Made by scripts/methods.mjs from the doc comments of the engine. Do not edit.',
    "import type { Method } from './method.ts';",
    '',
    'export const METHODS: readonly Method[] = [',
    rows,
    '];',
    '',
  ].join('\n');
}
