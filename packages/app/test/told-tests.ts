import type { BuiltRig, SheetReading } from '@spraywright/engine/yard';

const SI = { time: 's', pressure: 'Pa', length: 'm', rotation: 'rad/s', current: 'A', mass: 'kg' } as const;

interface Told {
  readonly operation: string;
  readonly kind: string;
  readonly document: Record<string, unknown>;
}

interface Telling {
  /** Factors on single readings, by row [-]. */
  readonly by?: Readonly<Record<string, number>>;
  /** Whether somebody has pressed Finish; yes when absent. */
  readonly finished?: boolean;
  readonly taken?: string;
}

let count = 0;

/** The one test of a synthetic machine as a tablet sends it: entries of the records, values in SI. */
export function toldTest(
  { tests }: BuiltRig,
  sheet: readonly SheetReading[],
  { by = {}, finished = true, taken = '2026-03-03T10:00:00Z' }: Telling = {},
): Told[] {
  const head = { test: `test-${++count}`, taken };
  const one = (kind: string, document: object): Told => ({
    operation: `operation-${++count}`,
    kind,
    document: { ...head, ...document },
  });
  const unit = new Map(sheet.map((r) => [r.id, SI[r.dimension as keyof typeof SI]]));
  return [
    one('yard-conditions', { wind: '2 mph' }),
    ...[...tests[0]!.values].map(([row, list]) => {
      const typed = list.map((value) => `${value * (by[row] ?? 1)} ${unit.get(row)}`);
      return one('yard-reading', { row, value: typed.length === 1 ? typed[0]! : typed });
    }),
    ...(finished ? [one('yard-finished', { state: 'pass' })] : []),
  ];
}
