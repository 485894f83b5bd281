import {
  identifier,
  list,
  object,
  oneOf,
  optional,
  quantity,
  read,
  text,
  type Infer,
  type Problem,
  type Shape,
} from '../quantity/index.ts';
import { LOOKS, type LookId } from './diagnosis/looks.data.ts';
import type { SheetReading } from './sheet-reading.ts';
import { valuesTaken } from './repeats.ts';

/** A value is read once its reading is known. */
const typed: Shape<unknown> = {
  read: (raw) => raw ?? null,
  describe: {
    type: 'value',
    expected: 'a reading with its unit, or a list of them, one for each tip or time',
  },
};

const readingsShape = object({
  format: oneOf('spraywright-readings'),
  rig: identifier(),
  /** Which built machine; a plain test of the first one has none. */
  serial: optional(text({ min: 1, max: 40 })),
  taken: optional(text({ min: 4, max: 40 })),
  by: optional(text({ min: 1, max: 60 })),
  /** At gun height, while the tape was read. */
  wind: optional(quantity('speed', { min: '0 mph', max: '60 mph' })),
  waterTemperature: optional(quantity('temperature', { min: '33 F', max: '120 F' })),
  readings: list(object({ id: text({ min: 1, max: 200 }), value: typed }), { max: 200 }),
  /** What was looked at on a rig with a fault. */
  looks: optional(
    list(object({ id: oneOf(...(Object.keys(LOOKS) as LookId[])), answer: oneOf('yes', 'no') }), { max: 40 }),
  ),
});

/** What was read in the yard, as it is stored: values as people typed them. */
export type ReadingsDocument = Infer<typeof readingsShape>;

/** A day's readings of one rig in SI; several tips or readings of one row are a list. */
export interface TakenReadings {
  readonly document: ReadingsDocument;
  readonly values: ReadonlyMap<string, readonly number[]>;
}

/** The head of a readings file, before its rows can be matched with a sheet: the water's temperature changes the sheet. */
export function readReadings(
  raw: unknown,
): { ok: true; document: ReadingsDocument } | { ok: false; problems: Problem[] } {
  const result = read(readingsShape, raw);
  return result.ok ? { ok: true, document: result.value } : result;
}

/** Matches readings with the sheet they were taken by; a row that the sheet does not have is a problem, never dropped. */
export function matchReadings(
  document: ReadingsDocument,
  rig: string,
  sheet: readonly SheetReading[],
): { ok: true; taken: TakenReadings } | { ok: false; problems: Problem[] } {
  const problems: Problem[] = [];
  if (document.rig !== rig)
    problems.push({
      path: ['rig'],
      code: 'contradiction',
      message: `rig is '${document.rig}'; the sheet is of '${rig}'`,
    });
  const values = new Map<string, readonly number[]>();
  document.readings.forEach(({ id, value }, i) => {
    const row = sheet.find((r) => r.id === id);
    const path = ['readings', i];
    if (row === undefined)
      return void problems.push({
        path: [...path, 'id'],
        code: 'unknown-reference',
        message: `id '${id}' is not on the sheet: ${sheet.map((r) => r.id).join(', ')}`,
      });
    if (values.has(id))
      return void problems.push({
        path: [...path, 'id'],
        code: 'duplicate',
        message: `id '${id}' is read twice; keep the reading that counts`,
      });
    const one = quantity(row.dimension);
    const many = Array.isArray(value) ? (value as unknown[]) : [value];
    const found: number[] = [];
    if (many.length > valuesTaken(row))
      problems.push({
        path: [...path, 'value'],
        code: 'out-of-range',
        message: `value has ${many.length} readings; '${id}' has ${valuesTaken(row)} to read`,
      });
    many.forEach((v, k) => {
      const at = Array.isArray(value) ? [...path, 'value', k] : [...path, 'value'];
      const si = one.read(v, at, problems);
      if (si === undefined) return;
      if (row.instrument !== 'suction-gauge' && !(si > 0))
        problems.push({
          path: at,
          code: 'out-of-range',
          message: `value is '${String(v)}'; it must be more than 0`,
        });
      else found.push(si);
    });
    if (found.length > 0) values.set(id, found);
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, taken: { document, values } };
}
