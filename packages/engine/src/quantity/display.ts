import { DIMENSIONS, type Dimension } from './dimension.ts';
import { STYLES, type DisplayPurpose, type Step } from './display.data.ts';
import { unitOf } from './unit-text.ts';
import { fromSi, type Unit } from './units.ts';

export type UnitSystem = 'us' | 'metric';

export interface DisplayOptions {
  /** What the value is of, where the trade reads it in a way of its own: a hose bore as a fraction of an inch. */
  readonly as?: DisplayPurpose;
  /** This unit instead of the usual one. */
  readonly unit?: string;
  /** This many digits behind the point instead of the usual number. */
  readonly decimals?: number;
}

/** A figure and its unit, to be set apart in a table or drawing. */
export interface DisplayParts {
  readonly figure: string;
  readonly unit: string;
}

/** Bores nearer than this [m] to a sixteenth of an inch, or to a whole millimetre, are called by it. */
const NEAR_SIXTEENTH = 1e-4;
const NEAR_MILLIMETRE = 6e-5;
/** Nearly all figures are shown with at most this many digits behind the point. */
const FEW_DECIMALS = 3;

/** A value as people of the trade read it: `display(7.571e-4, 'flow', 'us')` is "12.0 gpm". */
export function display(
  value: number,
  dimension: Dimension,
  system: UnitSystem,
  options: DisplayOptions = {},
): string {
  const { figure, unit } = displayParts(value, dimension, system, options);
  if (unit === '') return figure;
  return unit === '%' || unit === '°' ? `${figure}${unit}` : `${figure} ${unit}`;
}

/**
 * The figure and the unit of `display` apart.
 *
 * @throws RangeError for a value that is not finite: what is unknown must be said in words
 */
export function displayParts(
  value: number,
  dimension: Dimension,
  system: UnitSystem,
  options: DisplayOptions = {},
): DisplayParts {
  if (!Number.isFinite(value))
    throw new RangeError(`${DIMENSIONS[dimension].phrase} to display is ${value}; it must be finite`);
  if (options.as === 'bore' && options.unit === undefined) {
    const nominal = system === 'us' ? inSixteenths(value) : inMillimetres(value);
    if (nominal !== undefined) return nominal;
  }
  const step = stepFor(value, dimension, system, options);
  const unit = knownUnit(step.unit, dimension);
  const about = fromSi(value, unit);
  const figure = fewDecimals(step, options) && clearOfRounding(about) ? about : figureIn(unit, value);
  const decimals = options.decimals ?? decimalsFor(figure, step);
  const comma = system === 'us' && unit.system !== 'metric';
  return { figure: grouped(figure.toFixed(decimals), comma), unit: step.label ?? unit.symbol };
}

/** The unit that `display` shows a value in: large values get large units. */
export function displayUnit(
  value: number,
  dimension: Dimension,
  system: UnitSystem,
  options: Pick<DisplayOptions, 'as'> = {},
): string {
  return stepFor(value, dimension, system, options).unit;
}

/** The unit a value is shown in, and how. */
function stepFor(value: number, dimension: Dimension, system: UnitSystem, options: DisplayOptions): Step {
  if (options.unit !== undefined) return { unit: options.unit, significant: 4 };
  const style = (options.as === undefined ? undefined : STYLES[options.as]) ?? STYLES[dimension];
  const steps = style[system];
  // By index, not `find`: a proof has hundreds of figures, and each would make a function or an iterator.
  let i = 0;
  while (i < steps.length - 1 && !isBelow(value, steps[i]!, dimension)) i++;
  return steps[i]!;
}

/** Judged on the figure as it will be rounded, so that 59.97 s is 1.0 min and never 60 s. */
function isBelow(value: number, step: Step, dimension: Dimension): boolean {
  const unit = knownUnit(step.unit, dimension);
  const { below = Infinity } = step;
  const about = fromSi(Math.abs(value), unit);
  if (clearOf(about, below)) return about < below;
  const figure = figureIn(unit, Math.abs(value));
  return Number(figure.toFixed(decimalsFor(figure, step))) < below;
}

/** So far from a limit that no rounding, to whole numbers at the coarsest, moves a figure across it: most are. */
function clearOf(figure: number, limit: number): boolean {
  return Math.abs(figure - limit) > 0.51;
}

/** More digits for small figures: `fine` lists the size below which a figure gets that many decimals. */
function decimalsFor(figure: number, step: Step): number {
  const size = Math.abs(figure);
  if (size === 0) return 0;
  if (step.significant !== undefined) {
    const magnitude = Math.floor(Math.log10(Number(size.toPrecision(step.significant))));
    return Math.min(12, Math.max(0, step.significant - 1 - magnitude));
  }
  const fine = step.fine ?? [];
  for (let decimals = fine.length; decimals > 0; decimals--) {
    const limit = fine[decimals - 1] ?? 0;
    if (clearOf(size, limit) ? size < limit : Number(size.toFixed(decimals)) < limit) return decimals;
  }
  return 0;
}

/** Whether a figure is shown with at most so many digits behind the point. */
function fewDecimals({ fine, significant }: Step, { decimals }: DisplayOptions): boolean {
  return decimals === undefined
    ? significant === undefined && (fine === undefined || fine.length <= FEW_DECIMALS)
    : decimals <= FEW_DECIMALS;
}

/** So far from where few decimals round up or down that the last digits of a double change nothing: most figures are. */
function clearOfRounding(figure: number): boolean {
  const halves = Math.abs(figure) * 2 * 10 ** FEW_DECIMALS;
  return halves < 1e9 && Math.abs(halves - Math.round(halves)) > 1e-3;
}

/** Without the last two digits of a double, so that 4.25 gal, which went through m3 and back, rounds like 4.25. */
function figureIn(unit: Unit, value: number): number {
  return Number(fromSi(value, unit).toPrecision(14));
}

/** Thousands: a comma in US writing; else, from five digits on, a space that does not break. */
function grouped(figure: string, comma: boolean): string {
  const negative = figure.startsWith('-');
  const unsigned = negative ? figure.slice(1) : figure;
  const point = unsigned.indexOf('.');
  const whole = point < 0 ? unsigned : unsigned.slice(0, point);
  const apart =
    whole.length > (comma ? 3 : 4)
      ? whole.replaceAll(/\B(?=(\d{3})+$)/g, comma ? ',' : '\u00A0') + unsigned.slice(whole.length)
      : unsigned;
  return negative && /[1-9]/.test(apart) ? `\u2212${apart}` : apart;
}

function inSixteenths(value: number): DisplayParts | undefined {
  const sixteenths = Math.round((value / 0.0254) * 16);
  if (sixteenths <= 0 || Math.abs(value - (sixteenths / 16) * 0.0254) > NEAR_SIXTEENTH) return undefined;
  let [above, below] = [sixteenths % 16, 16];
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  const whole = Math.floor(sixteenths / 16);
  const words = [whole > 0 ? String(whole) : '', above > 0 ? `${above}/${below}` : ''];
  return { figure: words.filter((w) => w !== '').join(' '), unit: 'in' };
}

function inMillimetres(value: number): DisplayParts | undefined {
  const whole = Math.round(value * 1000);
  if (whole <= 0 || Math.abs(value - whole / 1000) > NEAR_MILLIMETRE) return undefined;
  return { figure: String(whole), unit: 'mm' };
}

function knownUnit(text: string, dimension: Dimension): Unit {
  const unit = unitOf(text, dimension);
  if (unit === undefined) throw new RangeError(`'${text}' is not a unit of ${DIMENSIONS[dimension].phrase}`);
  return unit;
}
