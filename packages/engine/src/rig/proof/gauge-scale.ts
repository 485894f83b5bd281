import { compared, is, type RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import type { WorkContext } from './context.ts';

/**
 * At work a gauge must show the pressure behind the pump, and with the outlets shut it must stand it. The selection keeps
 * room on the scale; whoever takes another gauge by hand is told when it has too little. One that does is told by the list
 * of parts.
 */
export function gaugePromises({ rig, duties }: WorkContext): RigPromise[] {
  const gauge = first(rig, 'gauge');
  if (gauge === undefined) return [];
  const { range, maxPressure } = gauge.part;
  const seen = duties.flatMap(({ duty, open, shut }) => [
    { pressure: open.pump?.outlet ?? 0, limit: range, cause: `in "${duty.name}" it is beyond its scale` },
    {
      pressure: shut.pump?.outlet ?? 0,
      limit: maxPressure,
      cause: `it does not stand the pressure with the outlets shut in "${duty.name}"`,
    },
  ]);
  const worst = seen.reduce((a, b) => (b.pressure / b.limit > a.pressure / a.limit ? b : a));
  if (worst.pressure <= worst.limit) return [];
  return [
    compared(
      {
        id: 'gauge:scale',
        kind: 'rating',
        sentence: 'Gauge shows the pressure of the work and stands it',
        cause: worst.cause,
        items: [gauge.item.id],
        method: 'steady pressure behind the pump over all duties, outlets open and shut',
        source: 'the end of its scale and its rating, in the catalogue',
      },
      is(worst.limit, 'pressure'),
      is(worst.pressure, 'pressure'),
      'at-most',
    ),
  ];
}
