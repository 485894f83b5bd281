import { display, fromSi, toSi, unitOf, type UnitSystem } from '@spraywright/engine/quantity';
import type { Calculation, CalculationResult, Working } from '../calc/registry.ts';
import type { Method, MethodParam, MethodResult } from '../calc/method.ts';
import { dimensionOfParam } from '../calc/typed-input.ts';

/** Members of a list that are shown before the rest is only counted. */
const SHOWN_OF_LIST = 12;

/** The named calculations, each with its inputs, results and source. */
export function methodListText(methods: readonly Method[]): string {
  let folder = '';
  return methods
    .flatMap((m) => {
      const place = m.file.slice(0, m.file.lastIndexOf('/'));
      const head = place === folder ? [] : [`${folder === '' ? '' : '\n'}${place}`];
      folder = place;
      return [
        ...head,
        `  ${m.name}  ${m.purpose}`,
        ...m.params.map((p) => `      ${p.name} ${takes(p)}`),
        `      gives ${m.results.map(gives).join('; ')}`,
        `      source: ${m.source}`,
      ];
    })
    .join('\n');
}

/** One calculation as a person needs it to run it. */
export function methodText(method: Method): string {
  return [
    `${method.name}: ${method.purpose}`,
    `  ${method.formula}`,
    '',
    'Inputs',
    ...method.params.map((p) => `  ${p.name.padEnd(widest(method.params))}  ${p.meaning} ${takes(p)}`),
    '',
    'Gives',
    ...method.results.map((r) => `  ${gives(r)}`),
    ...(method.valid === undefined ? [] : ['', `Holds: ${method.valid}`]),
    `Source: ${method.source}`,
  ].join('\n');
}

/** A calculation carried out, step by step: what was typed, what the formula took, what came out. */
export function workingText(
  name: string,
  done: Extract<Calculation, { ok: true }>,
  units: UnitSystem,
): string {
  const { working } = done;
  const width = widest(working.inputs);
  return [
    `${name}: ${working.purpose}`,
    ...(working.inputs.length === 0 ? [] : ['', 'Given']),
    ...working.inputs.map((i) => `  ${i.name.padEnd(width)}  ${i.typed}${taken(i)}   ${i.meaning}`),
    '',
    'Formula',
    `  ${working.formula}`,
    '',
    'Result',
    ...done.results.map((r) => `  ${resultText(r, units)}`),
    '',
    ...(working.valid === undefined ? [] : [`Holds: ${working.valid}`]),
    `Source: ${working.source}`,
  ].join('\n');
}

function taken(input: Working['inputs'][number]): string {
  const { value, unit } = input;
  const figure = Array.isArray(value) ? listText(value) : figureText(value as number | boolean | string);
  const text = unit === undefined || unit === '-' ? figure : `${figure} ${unit}`;
  return text === input.typed.trim() ? '' : ` = ${text}`;
}

function resultText(result: CalculationResult, units: UnitSystem): string {
  const { value, unit = '-', meaning } = result;
  const label = result.name === '' ? meaning : `${result.name}, ${meaning}`;
  if (value === null) return `${label}: unknown`;
  if (typeof value !== 'number')
    return `${label}: ${typeof value === 'object' ? `${listText(value)}${unit === '-' || unit === 'text' ? '' : ` ${unit}`}` : figureText(value)}`;
  const own = unit === '-' ? figureText(value) : `${figureText(value)} ${unit}`;
  const read = asRead(value, result, units);
  return `${label}: ${own}${read === undefined ? '' : ` (${read})`}`;
}

/** The value as people of the trade read it, where its unit has a dimension of theirs. */
function asRead(value: number, result: MethodResult, units: UnitSystem): string | undefined {
  const dimension = dimensionOfParam({ name: `${result.name} ${result.meaning}`, unit: result.unit ?? '-' });
  if (dimension === undefined || dimension === 'ratio') return undefined;
  const own = unitOf(result.unit ?? '', dimension);
  if (own === undefined) return undefined;
  const text = display(toSi(value, own), dimension, units);
  // A figure that the rounding of the trade turns to nothing is told by its SI value alone.
  return value !== 0 && Number(text.replace(/[^\d.]/g, '')) === 0 && fromSi(value, own) !== 0
    ? undefined
    : text;
}

function takes(param: MethodParam): string {
  const optional = param.optional === true ? ', may be left out' : '';
  if (param.kind === 'flag') return `[yes or no${optional}]`;
  if (param.kind === 'choice') return `[one of ${(param.choices ?? []).join(', ')}${optional}]`;
  const unit = param.unit === undefined || param.unit === '-' ? 'a plain number' : param.unit;
  const { min, max } = param;
  const range =
    min !== undefined && max !== undefined
      ? `, ${min} to ${max}`
      : min !== undefined
        ? `, from ${min}`
        : max !== undefined
          ? `, up to ${max}`
          : '';
  return `[${param.kind === 'list' ? 'list of ' : ''}${unit}${range}${optional}]`;
}

function gives(result: MethodResult): string {
  const unit = result.unit === undefined || result.unit === '-' ? '' : ` [${result.unit}]`;
  return `${result.name === '' ? '' : `${result.name}: `}${result.meaning}${unit}`;
}

function figureText(value: number | boolean | string): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'string' ? value : String(Number(value.toPrecision(7)));
}

function listText(values: readonly (number | string)[]): string {
  const shown = values.slice(0, SHOWN_OF_LIST).map(figureText).join('; ');
  return values.length > SHOWN_OF_LIST ? `${shown}; and ${values.length - SHOWN_OF_LIST} more` : shown;
}

const widest = (named: readonly { readonly name: string }[]) =>
  Math.max(0, ...named.map(({ name }) => name.length));
