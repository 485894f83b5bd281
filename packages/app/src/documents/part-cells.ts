/** A part of a catalogue file as one row of cells, and back: `ports.0.size` is the size of its first port. */

/** A part as its file has it. */
export type RawPart = Readonly<Record<string, unknown>>;
type Plain = string | number | boolean;

/** Cells of a part by column, in the order of its fields. */
export function cellsOf(part: RawPart): Map<string, Plain> {
  const cells = new Map<string, Plain>();
  const walk = (value: unknown, path: string) => {
    if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) walk(inner, path === '' ? key : `${path}.${key}`);
    else if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean')
      cells.set(path, value);
  };
  walk(part, '');
  return cells;
}

/** Every column that some part fills; a column stands behind the one before it in the first part that has it. */
export function columnsOf(parts: readonly RawPart[]): string[] {
  const columns: string[] = [];
  for (const part of parts) {
    let at = 0;
    for (const column of cellsOf(part).keys()) {
      const known = columns.indexOf(column);
      if (known < 0) columns.splice(at, 0, column);
      at = (known < 0 ? at : known) + 1;
    }
  }
  return columns;
}

/** The part with one cell filled; lists and objects on the way are made. */
export function withCell(part: RawPart, column: string, value: Plain): RawPart {
  return put(part, stepsOf(column), value) as RawPart;
}

/** `ports.0.size` as steps; whole numbers are places in a list. */
export function stepsOf(column: string): (string | number)[] {
  return column.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

function put(into: unknown, [step, ...rest]: readonly (string | number)[], value: Plain): unknown {
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list: unknown[] = Array.isArray(into) ? [...(into as unknown[])] : [];
    list[step] = put(list[step], rest, value);
    return list;
  }
  const fields = typeof into === 'object' && into !== null && !Array.isArray(into) ? into : {};
  return { ...fields, [step]: put((fields as Record<string, unknown>)[step], rest, value) };
}
