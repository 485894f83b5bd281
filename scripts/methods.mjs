// Reads the doc comments of the engine's public functions, refuses incomplete ones, and writes METHODS.md and the list
// of calculations of the app. With --check it writes nothing and fails when either file is not up to date.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { calculation, dataFile } from './methods/calculations.mjs';
import { NOT_FORMULAS } from './methods/not-formulas.mjs';
import { methodsPage } from './methods/page.mjs';
import { commentProblems, publicFunctions } from './methods/signatures.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const SOURCE = 'packages/engine/src';
const LAYERS = ['physics', 'liquids', 'hydraulics'];
const check = process.argv.includes('--check');

const functions = publicFunctions(join(root, SOURCE), LAYERS);
const isFormula = (fn) => !Object.hasOwn(NOT_FORMULAS, fn.name);
const formulas = functions.filter(isFormula);
const others = functions.filter((fn) => !isFormula(fn));

const problems = formulas.flatMap((fn) =>
  commentProblems(fn).map((problem) => `${SOURCE}/${fn.file}:${fn.line} ${problem}`),
);
for (const fn of others)
  if (!fn.doc?.purpose)
    problems.push(`${SOURCE}/${fn.file}:${fn.line} ${fn.name} has no sentence of purpose`);
for (const name of Object.keys(NOT_FORMULAS))
  if (!others.some((fn) => fn.name === name))
    problems.push(`scripts/methods/not-formulas.mjs names ${name}, which no layer exports`);
const twice = formulas.filter((fn, i) => formulas.findIndex((other) => other.name === fn.name) < i);
for (const fn of twice)
  problems.push(`${SOURCE}/${fn.file}:${fn.line} ${fn.name} is the name of two functions`);
if (problems.length > 0) {
  console.error(problems.join('\n'));
  console.error(`\n${problems.length} doc comments to mend; the convention is in CONTRIBUTING.md.`);
  process.exit(1);
}

const calculations = formulas.map(calculation).filter((c) => c !== undefined);
const shown = others.filter((fn) => NOT_FORMULAS[fn.name] !== 'guard');
const outputs = {
  'METHODS.md': methodsPage(formulas, shown, calculations.length),
  'packages/app/src/calc/methods.data.ts': dataFile(calculations),
};
for (const [path, text] of Object.entries(outputs)) {
  const full = join(root, path);
  if (existsSync(full) && readFileSync(full, 'utf8') === text) continue;
  if (check) {
    console.error(`${path} is not up to date; run: node scripts/methods.mjs`);
    process.exitCode = 1;
  } else {
    writeFileSync(full, text);
    console.log(`${path} written`);
  }
}
console.log(`${formulas.length} formulas, ${calculations.length} of them can be run by name.`);
