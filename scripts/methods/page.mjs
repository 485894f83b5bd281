// METHODS.md: every formula of the engine as its doc comment tells it.
import { folderOf } from './signatures.mjs';

export function methodsPage(formulas, others, runnable) {
  const names = [...new Set(formulas.map((fn) => folderOf(fn.file)))];
  const folders = names.map((folder) => [folder, formulas.filter((fn) => folderOf(fn.file) === folder)]);
  return [
    '# Methods',
    '',
    'Every formula the engine computes with: what it is for, its symbols, units and valid range, and where it was published.',
    'A value outside the range is refused with the limit, never extrapolated. Pressures are gauge unless a name says absolute.',
    `Made from the doc comments by \`node scripts/methods.mjs\`; ${formulas.length} formulas, ${runnable} of which can be run by name with typed values.`,
    '',
    '| Folder | Formulas |',
    '|---|---|',
    ...folders.map(([folder, list]) => `| [${folder}](#${anchor(folder)}) | ${list.length} |`),
    ...(others.length === 0
      ? []
      : ['| [Decisions and look-ups](#decisions-and-look-ups) | ' + others.length + ' |']),
    '',
    ...folders.flatMap(([folder, list]) => [`## ${folder}`, '', ...list.flatMap(formula)]),
    ...decisions(others),
  ]
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()
    .concat('\n');
}

function formula(fn) {
  const { doc } = fn;
  return [
    `### ${fn.name}`,
    '',
    [doc.purpose, ...doc.more].map(escape).join('\n\n'),
    '',
    `\`${doc.formula.replaceAll('`', "'")}\``,
    '',
    ...(doc.params.length === 0
      ? ['No parameters.', '']
      : [
          '| parameter | meaning | unit | range |',
          '|---|---|---|---|',
          ...doc.params.map((p) => row([`\`${p.name}\``, p.meaning, unitOf(p), rangeOf(p)])),
          '',
        ]),
    ...(doc.returns === undefined
      ? []
      : [`Gives ${escape(doc.returns.meaning)}${bracketed(doc.returns)}.`, '']),
    ...(doc.results.length === 0
      ? []
      : [
          '| result | meaning | unit |',
          '|---|---|---|',
          ...doc.results.map((r) => row([`\`${r.name}\``, r.meaning, unitOf(r)])),
          '',
        ]),
    ...(doc.valid === '' ? [] : [`Valid: ${escape(doc.valid)}.`.replace(/\.\.$/, '.'), '']),
    `Source: ${escape(doc.source)}.`.replace(/\.\.$/, '.'),
    '',
    `<sub>${fn.file}</sub>`,
    '',
  ];
}

function decisions(others) {
  if (others.length === 0) return [];
  return [
    '## Decisions and look-ups',
    '',
    'These compute no formula of their own: they look up, decide from tables whose rows carry their sources, or put formulas together.',
    '',
    '| function | what it does | where |',
    '|---|---|---|',
    ...others.map((fn) => row([`\`${fn.name}\``, fn.doc?.purpose ?? '', fn.file])),
    '',
  ];
}

function unitOf(value) {
  if (value.kind === 'flag') return 'yes/no';
  if (value.kind === 'choice') return `one of ${value.choices.join(', ')}`;
  if (value.kind === 'list') return `list of ${value.unit}`;
  return value.unit ?? value.kind ?? '';
}

const bracketed = (value) => (value.kind === 'text' || unitOf(value) === '-' ? '' : ` [${unitOf(value)}]`);

function rangeOf({ min, max }) {
  if (min === undefined && max === undefined) return '';
  if (max === undefined) return `at least ${min}`;
  return min === undefined ? `at most ${max}` : `${min} to ${max}`;
}

const row = (cells) =>
  `| ${cells.map((cell) => (cell.startsWith('`') ? cell : escape(cell)).replaceAll('|', '\\|')).join(' | ')} |`;
const escape = (text) => text.replaceAll(/[<>*_]/g, '\\$&');
const anchor = (folder) =>
  folder
    .toLowerCase()
    .replaceAll(/[^a-z0-9 -]/g, '')
    .replaceAll(' ', '-');
