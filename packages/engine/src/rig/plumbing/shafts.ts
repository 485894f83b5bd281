import { mates, portName } from '../../catalogue/index.ts';
import { first } from '../rig-document.ts';
import type { RigJoint } from './plan.ts';
import type { Rig } from '../rig-document.ts';

/** Shafts from engine or tractor to the pump: they fit by themselves or not at all. */
export function shaftJoints(rig: Rig): RigJoint[] {
  const pump = first(rig, 'pump');
  if (pump === undefined) return [];
  const engine = first(rig, 'engine');
  const between = first(rig, 'reduction') ?? first(rig, 'pto-drive');
  type End = { readonly of: string; readonly port: string; readonly part: typeof pump.part | Driver };
  type Driver = NonNullable<typeof engine | typeof between>['part'];
  const pairs: [End, End][] = [];
  const onPump: End = { of: pump.item.id, port: 'shaft', part: pump.part };
  const onEngine: End | undefined =
    engine === undefined ? undefined : { of: engine.item.id, port: 'shaft', part: engine.part };
  if (between !== undefined) {
    if (onEngine !== undefined)
      pairs.push([onEngine, { of: between.item.id, port: 'in', part: between.part }]);
    pairs.push([{ of: between.item.id, port: 'out', part: between.part }, onPump]);
  } else if (onEngine !== undefined) pairs.push([onEngine, onPump]);
  return pairs.map(([a, b]): RigJoint => {
    const [from, to] = [a, b].map((end) => end.part.ports.find((p) => p.id === end.port));
    const words = [`${a.of} shaft`, `${b.of} shaft`] as const;
    const gap =
      from === undefined || to === undefined
        ? `${from === undefined ? words[0] : words[1]}: the part lists no such port`
        : mates(from, to)
          ? undefined
          : `${words[0]} (${portName(from)}) does not fit ${words[1]} (${portName(to)})`;
    return {
      between: words,
      ends: [
        { of: a.of, port: a.port },
        { of: b.of, port: b.port },
      ],
      line: 'drive',
      times: 1,
      pressure: 0,
      pieces: [],
      ...(gap === undefined ? {} : { gap }),
    };
  });
}
