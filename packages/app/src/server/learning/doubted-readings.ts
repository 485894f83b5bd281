import type { Learned, SheetReading, SheetTest } from '@spraywright/engine/yard';

/** A reading less likely sound than this is told of. */
const DOUBTED = 0.5;

/** A reading that does not fit what all others say. */
export interface DoubtedReading {
  readonly serial: string;
  readonly id: string;
  /** Probability that it was taken as its instrument takes it [-]. */
  readonly sound: number;
  /** What was asked and what was read, SI; absent where the test cannot be found again. */
  readonly row?: SheetReading;
  readonly read?: readonly number[];
}

/** The readings that learning counts for next to nothing, with what each should have been. */
export function doubtedReadings({ copies }: Learned, tests: readonly SheetTest[]): DoubtedReading[] {
  return copies.flatMap(({ serial = '', readings }) =>
    readings
      .filter((r) => r.sound < DOUBTED)
      .map(({ id, sound }): DoubtedReading => {
        const of = tests.filter(
          ({ taken }) => taken.values.has(id) && namesOf(taken.document.serial).includes(serial),
        );
        const row = of.at(-1)?.sheet.readings.find((r) => r.id === id);
        // A machine that was tested twice has two such readings; only one test says which it was.
        const read = of.length === 1 ? of[0]!.taken.values.get(id) : undefined;
        return {
          serial,
          id,
          sound,
          ...(row === undefined ? {} : { row }),
          ...(read === undefined ? {} : { read }),
        };
      }),
  );
}

/** A machine counts under another name before another part was put into it. */
const namesOf = (serial = ''): readonly string[] => [serial, `${serial} before`.slice(0, 40)];
