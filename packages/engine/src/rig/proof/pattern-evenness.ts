import type { PartOf } from '../../catalogue/index.ts';
import {
  boomFanWidth,
  boomUniformity,
  dropletClassAt,
  fanOverlap,
  isAsCoarseAs,
  driftableShare,
  swathUniformity,
  widestEvenSwath,
  type PatternShape,
} from '../../physics/index.ts';
import type { Duty } from '../brief.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import type { Rig } from '../rig-document.ts';
import { STARTS, WORK_STARTS } from '../start-values.data.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { orUnknown } from './out-of-range.ts';
import { flowOf, sprayersOf, workPressure, type Sprayer } from './sprayer.ts';

/** A boom wets evenly, and droplets are no finer than asked. */
export function evennessPromises(context: ProofContext): RigPromise[] {
  return context.duties.flatMap((proven) => {
    const sprayers = sprayersOf(context, proven);
    const flow = flowOf(sprayers);
    return sprayers.flatMap((s) => [
      ...evenPromises(context, proven, s),
      ...dropletPromises(context, proven, s, workPressure(proven.duty, s, flow)),
    ]);
  });
}

function evenPromises(context: ProofContext, { duty }: ProvenDuty, s: Sprayer): RigPromise[] {
  const { end, boom } = s;
  if (end.kind !== 'nozzle' || end.pattern === 'solid-stream') return [];
  const told = {
    id: `pattern:even:${duty.id}:${s.outlet.line}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: 'Wets the ground evenly across the boom',
    items: [s.item],
    method: 'sum of the nozzles’ patterns along the boom',
    source: `superposition of ideal patterns; limit: ${STARTS.boomVariation.source}`,
  };
  const asked = { value: STARTS.boomVariation.value, dimension: 'ratio' as const };
  if (duty.cups !== undefined) return [measuredPromise(context, duty, duty.cups, told, asked)];
  if (boom === undefined || end.pattern === 'boomless')
    return [
      unknown(
        {
          ...told,
          cause: 'a boomless nozzle has no ideal pattern: catch one pass in cups and enter it in the duty',
        },
        asked,
        'at-most',
      ),
    ];
  const given = duty.patternShape;
  if (given === undefined && end.pattern !== 'flat-fan')
    return [
      unknown(
        {
          ...told,
          cause: `the catalogue has no pattern for a ${end.pattern} nozzle: ask the maker for its test report`,
        },
        asked,
        'at-most',
      ),
    ];
  const height = duty.boomHeight ?? STARTS.boomHeight.value;
  const shape = given ?? STARTS.patternShape.value;
  return [
    orUnknown(
      told,
      () => {
        const width = boomFanWidth(end.angle, height);
        const even = evennessOf(boom, shape, width);
        return compared(
          {
            ...told,
            cause: `${say(context, height, 'length')} above the target each fan is ${say(context, width, 'length')} wide, nozzles ${say(context, boom.spacing, 'length')} apart`,
            working: [
              worked(
                'overlap as the trade counts it',
                is(fanOverlap(width, boom.spacing), 'ratio'),
                '{width of a fan} / {spacing} − 1',
                { 'width of a fan': is(width, 'length'), spacing: is(boom.spacing, 'length') },
              ),
              {
                text: `pattern of one nozzle: ${shape}${given === undefined ? `; ${STARTS.patternShape.source}` : ''}`,
              },
              { text: 'variation without grooves', figure: { value: even.continuous, dimension: 'ratio' } },
              { text: 'variation in grooves of 100 mm', figure: { value: even.grooves, dimension: 'ratio' } },
              { text: 'fullest groove over the mean', figure: { value: even.most, dimension: 'ratio' } },
              { text: 'emptiest groove over the mean', figure: { value: even.least, dimension: 'ratio' } },
              ...(duty.boomHeight === undefined
                ? [{ text: `height of the boom: ${STARTS.boomHeight.source}` }]
                : []),
              { text: 'ideal nozzles, all alike: a real boom is worse' },
            ],
          },
          asked,
          { value: even.grooves, dimension: 'ratio' },
          'at-most',
        );
      },
      asked,
      'at-most',
    ),
  ];
}

/** Passes laid side by side as far apart as the duty drives them, from the cups of one. */
function measuredPromise(
  context: ProofContext,
  duty: Duty,
  { pitch, catches, manner }: NonNullable<Duty['cups']>,
  told: Omit<Parameters<typeof unknown>[0], 'cause'>,
  asked: { readonly value: number; readonly dimension: 'ratio' },
): RigPromise {
  const measured = {
    ...told,
    sentence: 'Wets the ground evenly from pass to pass',
    method: 'passes with the measured pattern, laid side by side',
    source: `superposition of passes: common practice, no source; limit: ${STARTS.boomVariation.source}`,
  };
  const width = duty.application?.width;
  if (width === undefined)
    return unknown(
      { ...measured, cause: 'the cups are known, but not how far apart the passes lie: give the width' },
      asked,
      'at-most',
    );
  return orUnknown(
    measured,
    () => {
      const widest = widestEvenSwath(catches, pitch, manner, asked.value);
      const passes = manner === 'there-and-back' ? 'there and back' : 'round and round';
      return compared(
        {
          ...measured,
          cause: `${catches.length} cups ${say(context, pitch, 'length')} apart caught one pass; passes lie ${say(context, width, 'length')} apart, driven ${passes}`,
          working: [
            widest === null
              ? { text: 'no distance of the passes is even enough' }
              : {
                  text: 'widest distance that is even enough',
                  figure: { value: widest, dimension: 'length' },
                },
          ],
        },
        asked,
        { value: swathUniformity(catches, pitch, width, manner), dimension: 'ratio' },
        'at-most',
      );
    },
    asked,
    'at-most',
  );
}

type Evenness = ReturnType<typeof boomUniformity>;
const known = new WeakMap<PartOf<'boom'>, Map<string, Evenness>>();

/** Remembered for each boom, since every duty and every rig with it asks the same. */
function evennessOf(boom: PartOf<'boom'>, shape: PatternShape, width: number): Evenness {
  let found = known.get(boom);
  if (found === undefined) known.set(boom, (found = new Map<string, Evenness>()));
  const key = `${shape} ${width}`;
  let even = found.get(key);
  if (even === undefined) found.set(key, (even = boomUniformity(shape, width, boom.spacing)));
  return even;
}

/** Droplet classes are defined by and tested on boom nozzles (ASABE S572, ISO 25358): a jet from a gun has none. */
export const NO_GUN_CLASS = 'no published class covers this gun';

function dropletPromises(
  context: ProofContext,
  { duty }: ProvenDuty,
  s: Sprayer,
  pressure: number,
): RigPromise[] {
  const start = WORK_STARTS[context.rig.brief.work].droplets;
  const asked = coarseEnough(context.rig, duty, s.end);
  if (asked === undefined) return [];
  const words = asked.replaceAll('-', ' ');
  const told = {
    id: `pattern:droplets:${duty.id}:${s.outlet.line}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: `Droplets are ${words} or coarser`,
    items: [s.item],
    method: 'droplet class of the tip at its pressure',
    source: `test data of the tip (ASABE S572, ISO 25358)${duty.droplets === undefined ? `; ${start.source}` : ''}`,
  };
  const data = s.end.kind === 'nozzle' ? [...s.end.droplets].sort((a, b) => a.pressure - b.pressure) : [];
  const at = say(context, pressure, 'pressure');
  const has = classOf(data, pressure);
  if (has === 'unknown')
    return [
      unknown({
        ...told,
        cause:
          s.end.kind === 'tip'
            ? `${NO_GUN_CLASS}: ask the maker of ${s.end.name} for a test, or ask for no class`
            : data.length === 0
              ? `the catalogue has no droplet class for ${s.end.name}: ask the maker`
              : `the class of ${s.end.name} is not known at ${at}: its data end at ${say(context, data[data.length - 1]!.pressure, 'pressure')}`,
      }),
    ];
  const share = driftableShare(has);
  return [
    {
      ...told,
      state: isAsCoarseAs(has, asked) ? 'kept' : 'broken',
      sense: 'at-least',
      cause: `${has.replaceAll('-', ' ')} at ${at}; ${isAsCoarseAs(has, asked) ? 'more pressure makes them finer' : 'less pressure or a larger tip makes them coarser'}`,
      working: [
        ...data.map((d) => ({
          text: `${d.class.replaceAll('-', ' ')} at`,
          figure: { value: d.pressure, dimension: 'pressure' as const },
        })),
        ...(share === null
          ? []
          : [
              {
                text: 'most of the volume in drops under 150 µm (GRDC 2025)',
                figure: { value: share, dimension: 'ratio' as const },
              },
            ]),
      ],
    },
  ];
}

/** Highest pressure up to which a nozzle's droplets are as coarse as asked [Pa]; undefined when nothing is asked or known. */
export function highestCoarse({ rig }: ProofContext, duty: Duty, { end }: Sprayer): number | undefined {
  const asked = coarseEnough(rig, duty, end);
  if (asked === undefined || end.kind !== 'nozzle') return undefined;
  const data = [...end.droplets].sort((a, b) => a.pressure - b.pressure);
  const finer = data.findIndex((d) => !isAsCoarseAs(d.class, asked));
  return data[finer === -1 ? data.length - 1 : Math.max(0, finer - 1)]?.pressure;
}

/** Class that a duty asks, or that its kind of work starts from. */
function coarseEnough(rig: Rig, duty: Duty, end: Sprayer['end']) {
  return duty.droplets ?? (end.kind === 'nozzle' ? WORK_STARTS[rig.brief.work].droplets.value : undefined);
}

/** Droplet class of nozzle data at a pressure; unknown outside the data. */
export function classOf(
  data: readonly { readonly pressure: number; readonly class: Parameters<typeof isAsCoarseAs>[0] }[],
  pressure: number,
) {
  if (!(pressure >= 0 && pressure <= 1e8)) return 'unknown';
  return dropletClassAt(
    data.map((d) => d.pressure),
    data.map((d) => d.class),
    pressure,
  );
}
