import { displayParts, fromSi, parseQuantity, unitOf, type UnitSystem } from '@spraywright/engine/quantity';
import type { SheetReading } from '@spraywright/engine/yard';

/** Unit in which a row is read: of a clock seconds, else the one in which its window is shown. */
export function unitOfRow({ dimension, expected }: SheetReading, units: UnitSystem): string {
  return dimension === 'time' ? 's' : displayParts(expected, dimension, units).unit;
}

/** A typed reading with its unit, ready to be written down; or why it is none. */
export function typedReading(
  text: string,
  row: SheetReading,
  units: UnitSystem,
): { readonly ok: true; readonly value: string } | { readonly ok: false; readonly why: string } {
  const plain = text.trim().replace('−', '-');
  const clock = row.dimension === 'time' ? /^(\d{1,3}):([0-5]?\d(?:\.\d+)?)$/.exec(plain) : null;
  const unit = unitOfRow(row, units);
  const value =
    clock !== null
      ? `${Number((Number(clock[1]) * 60 + Number(clock[2])).toFixed(2))} s`
      : /[a-z"'°%]/i.test(plain)
        ? plain
        : `${plain} ${unit}`;
  const read = parseQuantity(value, row.dimension);
  if (!read.ok) return { ok: false, why: read.message };
  if (row.instrument !== 'suction-gauge' && !(read.value > 0))
    return { ok: false, why: `${value} cannot be: it must be more than 0 ${unit}` };
  return { ok: true, value };
}

/** The figure of a kept reading in the unit of its row, as it is typed again; the text itself where it cannot be read. */
export function figureOf(kept: string, row: SheetReading, units: UnitSystem): string {
  const read = parseQuantity(kept, row.dimension);
  const unit = unitOf(unitOfRow(row, units), row.dimension);
  if (!read.ok || unit === undefined) return kept;
  return String(Number(fromSi(read.value, unit).toPrecision(6)));
}

/** The step of the two big buttons: about a tenth of the window, as 1, 2 or 5 of a digit. */
function stepOf(row: SheetReading, units: UnitSystem): number {
  const unit = unitOf(unitOfRow(row, units), row.dimension)!;
  const tenth = Math.abs(fromSi(row.high, unit) - fromSi(row.low, unit)) / 10;
  const power = 10 ** Math.floor(Math.log10(Math.max(tenth, 1e-6)));
  return (tenth / power >= 5 ? 5 : tenth / power >= 2 ? 2 : 1) * power;
}

/** The figure one step on; where nothing is typed yet it begins at what the row should show. */
export function stepped(text: string, by: number, row: SheetReading, units: UnitSystem): string {
  const unit = unitOf(unitOfRow(row, units), row.dimension)!;
  const step = stepOf(row, units);
  const typed = typedReading(text, row, units);
  const read = typed.ok ? parseQuantity(typed.value, row.dimension) : undefined;
  const from = read?.ok === true ? read.value : row.expected;
  const on = read?.ok === true ? fromSi(from, unit) + by * step : fromSi(from, unit);
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  return (Math.round(on / step) * step).toFixed(decimals);
}
