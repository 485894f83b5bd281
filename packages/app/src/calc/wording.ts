import { display, fromSi, toSi, unitOf, type UnitSystem } from '@spraywright/engine/quantity';
import type { MethodParam, MethodResult } from './method.ts';
import type { CalculationResult, Working } from './registry.ts';
import { dimensionOfParam } from './typed-input.ts';

/** Members of a list that are shown before the rest is only counted. */
const SHOWN_OF_LIST = 12;

/** ` = 7.57e-4 m3/s`: an input as the formula took it, or nothing where that is what was typed. */
export function taken(input: Working['inputs'][number]): string {
  const { value, unit } = input;
  const figure = Array.isArray(value) ? listText(value) : figureText(value as number | boolean | string);
  const text = unit === undefined || unit === '-' ? figure : `${figure} ${unit}`;
  return text === input.typed.trim() ? '' : ` = ${text}`;
}

/** One result: what it is, its figure in the formula's unit and as the trade reads it. */
export function resultText(result: CalculationResult, units: UnitSystem): string {
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
function asRead(
  value: number,
  result: Pick<MethodResult, 'name' | 'meaning' | 'unit'>,
  units: UnitSystem,
): string | undefined {
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

/** `[m3/s, 0 to 10]`: what an input takes. */
export function takes(param: MethodParam): string {
  const unit = param.unit === undefined || param.unit === '-' ? 'a plain number' : param.unit;
  return `[${taking(param, unit, String)}]`;
}

/** `0 to 158,503 gpm`: what an input takes, in units that people of the trade read where it has such. */
export function takesAsRead(param: MethodParam, units: UnitSystem): string {
  const unit = param.unit === undefined || param.unit === '-' ? '' : param.unit;
  const read = (limit: number) => asRead(limit, param, units);
  const limits = [param.min, param.max].filter((limit) => limit !== undefined);
  if (param.kind !== 'number' || limits.length === 0 || limits.some((limit) => read(limit) === undefined))
    return taking(param, unit === '' ? 'a plain number' : unit, String);
  return taking(param, '', (limit) => (limit === 0 && unit !== 'degC' ? '0' : read(limit)!));
}

function taking(param: MethodParam, unit: string, limitText: (limit: number) => string): string {
  const { kind, min, max, choices = [] } = param;
  const optional = param.optional === true ? ', may be left out' : '';
  if (kind === 'flag') return `yes or no${optional}`;
  if (kind === 'choice') return `one of ${choices.join(', ')}${optional}`;
  const least = min === undefined ? undefined : limitText(min);
  const most = max === undefined ? undefined : limitText(max);
  const range =
    least !== undefined && most !== undefined
      ? `${least} to ${most}`
      : least !== undefined
        ? `from ${least}`
        : most !== undefined
          ? `up to ${most}`
          : '';
  const what = `${kind === 'list' ? 'list of ' : ''}${unit}`;
  return `${[what, range].filter((text) => text !== '').join(', ')}${optional}`;
}

/** What a result is, with its unit. */
export function gives(result: MethodResult): string {
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
