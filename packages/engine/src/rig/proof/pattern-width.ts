import { drivenWidth } from '../application.ts';
import { compared, unknown, type RigPromise } from '../promise.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { sprayersOf } from './sprayer.ts';

/** A boom or boomless nozzle covers the width that is driven. */
export function widthPromises(context: ProofContext): RigPromise[] {
  return context.duties.flatMap((proven) =>
    proven.duty.application === undefined && proven.duty.lane === undefined
      ? []
      : widthPromise(context, proven),
  );
}

function widthPromise(context: ProofContext, proven: ProvenDuty): RigPromise[] {
  const { duty } = proven;
  const moving = sprayersOf(context, proven).filter((s) => s.end.kind === 'nozzle');
  if (moving.length === 0) return [];
  const told = {
    id: `pattern:width:${duty.id}`,
    kind: 'pattern' as const,
    duty: duty.id,
    method: 'effective swath',
    source:
      'nozzles times spacing; boomless 80 % of the wetted width (Univ. of Kentucky ENTFACT-805, LSU AgCenter 2020)',
    items: moving.map((s) => s.item),
  };
  const width = drivenWidth(duty);
  if (width === undefined)
    return [
      unknown({
        ...told,
        sentence: 'Covers the lanes in one pass',
        cause: 'say how wide a lane is: 10, 11 and 12 ft are all in use',
      }),
    ];
  const sentence = `Covers ${say(context, width, 'length')} in one pass`;
  const asked = { value: width, dimension: 'length' as const };
  const unmeasured = moving.find((s) => s.swath === undefined);
  if (unmeasured !== undefined)
    return [
      unknown({ ...told, sentence, cause: `the catalogue has no width for ${unmeasured.end.name}` }, asked),
    ];
  const has = moving.reduce((sum, s) => sum + s.swath!, 0);
  const boomless = moving.some((s) => s.end.pattern === 'boomless');
  const promise = compared(
    {
      ...told,
      sentence,
      cause: boomless
        ? '80 % of the wetted width counts, the edges are too thin'
        : `${moving[0]!.count} nozzles, ${say(context, moving[0]!.boom!.spacing, 'length')} apart`,
    },
    asked,
    { value: has, dimension: 'length' },
    'at-least',
  );
  // A boom just as wide as the pass needs no spare: nothing wears it narrower.
  return [promise.state === 'thin' ? { ...promise, state: 'kept' } : promise];
}
