import {
  crownVolume,
  drenchError,
  drenchTime,
  TREE_ROW_FACTOR,
  treeRowDose,
  treeRowVolume,
  volumePerCrown,
} from '../../physics/index.ts';
import { display } from '../../quantity/index.ts';
import type { Duty } from '../brief.ts';
import { looseFactor } from '../loose-inputs.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { STARTS } from '../start-values.data.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { orUnknown } from './out-of-range.ts';

/** Trees, pots and lanes get what each of them takes. */
export function unitDosePromises(context: ProofContext): RigPromise[] {
  return context.duties.flatMap((proven) => {
    const { trees, drench, lane } = proven.duty;
    return [
      ...(trees === undefined ? [] : [treePromise(context, proven, trees)]),
      ...(drench === undefined ? [] : [drenchPromise(context, proven, drench)]),
      ...(lane === undefined ? [] : [lanePromise(context, proven, lane)]),
    ];
  });
}

export const openFlow = ({ open }: ProvenDuty) => open.outlets.reduce((sum, o) => sum + o.flow, 0);

/** Time that the trigger is open at one tree [s]. */
export function timeAtTree({ rig }: ProofContext, time: number): number {
  return time * looseFactor(rig, 'trigger-time');
}

/** Part by which a gulp is off that a hand times [-]. */
export function gulpError({ rig }: ProofContext, dose: number, flow: number): number {
  return drenchError(dose, flow, STARTS.handTiming.value * looseFactor(rig, 'hand-timing'));
}

/** Dry salt that a flow lays on a length of lane [kg/m]. */
export function saltByLength(lane: NonNullable<Duty['lane']>, flow: number, drySalt: number): number {
  return (flow * drySalt) / (lane.lanes * lane.speed);
}

/** Mix that one crown takes, from its volume [m3]. */
export function mixPerCrown(trees: NonNullable<Duty['trees']>): number {
  return volumePerCrown(
    crownVolume(trees.crownWidth, trees.crownHeight, trees.shape),
    TREE_ROW_FACTOR[trees.canopy],
  );
}

function treePromise(
  context: ProofContext,
  proven: ProvenDuty,
  trees: NonNullable<Duty['trees']>,
): RigPromise {
  const { duty } = proven;
  const factor = { text: `spray per volume of foliage, ${trees.canopy} canopy: ${TREE_ROW_FACTOR.source}` };
  if (trees.rowSpacing !== undefined && duty.application !== undefined) {
    const { rate } = duty.application;
    const row = trees.rowSpacing;
    const told = {
      id: `pattern:rows:${duty.id}`,
      kind: 'pattern' as const,
      duty: duty.id,
      sentence: 'The rate is enough for the volume of the rows',
      method: 'tree row volume',
      source: TREE_ROW_FACTOR.source,
    };
    return orUnknown(told, () => {
      const volume = treeRowVolume(trees.crownHeight, trees.crownWidth, row);
      return compared(
        {
          ...told,
          cause: `crowns ${say(context, trees.crownHeight, 'length')} high and ${say(context, trees.crownWidth, 'length')} wide in rows ${say(context, row, 'length')} apart`,
          working: [
            worked('foliage over the ground', is(volume, 'length'), '{height} × {width} / {row}', {
              height: is(trees.crownHeight, 'length'),
              width: is(trees.crownWidth, 'length'),
              row: is(row, 'length'),
            }),
            factor,
          ],
        },
        { value: treeRowDose(volume, TREE_ROW_FACTOR[trees.canopy]), dimension: 'dose' },
        { value: rate, dimension: 'dose' },
        'at-least',
      );
    });
  }
  const told = {
    id: `pattern:tree:${duty.id}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: 'Each tree gets what its crown takes',
    method: 'spray by volume of the crown',
    source: `${TREE_ROW_FACTOR.source}; carried over from orchards, no published figure for shade trees`,
  };
  return orUnknown(told, () => {
    const takes = mixPerCrown(trees) * looseFactor(context.rig, 'unit-volume');
    const flow = openFlow(proven);
    const asked = { value: takes, dimension: 'volume' as const };
    if (!(flow > 0)) return unknown({ ...told, cause: proven.open.reason ?? 'nothing comes out' }, asked);
    if (trees.time === undefined)
      return unknown(
        {
          ...told,
          cause: `say how long the gun stays on one tree: its crown takes ${say(context, takes, 'volume')}, ${say(context, takes / flow, 'time')} of the trigger`,
        },
        asked,
      );
    const time = timeAtTree(context, trees.time);
    return compared(
      {
        ...told,
        cause: `${say(context, flow, 'flow')} for ${say(context, time, 'time')}; the crown is wet after ${say(context, takes / flow, 'time')}`,
        working: [
          { text: 'height of the crown', figure: { value: trees.crownHeight, dimension: 'length' } },
          { text: 'width of the crown', figure: { value: trees.crownWidth, dimension: 'length' } },
          factor,
          worked('mix sprayed on one tree', is(flow * time, 'volume'), '{flow} × {time}', {
            flow: is(flow, 'flow'),
            time: is(time, 'time'),
          }),
          { text: 'an estimate: dilute spray to the point of run-off; the label decides' },
        ],
      },
      asked,
      { value: flow * time, dimension: 'volume' },
      'at-least',
    );
  });
}

function drenchPromise(
  context: ProofContext,
  proven: ProvenDuty,
  drench: NonNullable<Duty['drench']>,
): RigPromise {
  const { duty } = proven;
  const told = {
    id: `pattern:drench:${duty.id}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: `A hand-timed drench of ${say(context, drench.dose, 'volume')} comes out within ${Math.round(drench.within * 100)} %`,
    method: 'drench time against the timing of a hand',
    source: `definition; doses of Runkle, Michigan State Univ.; ${STARTS.handTiming.value} s of a hand is judgement`,
  };
  const asked = { value: drench.within, dimension: 'ratio' as const };
  return orUnknown(
    told,
    () => {
      const flow = openFlow(proven);
      const time = drenchTime(drench.dose, flow);
      const error = gulpError(context, drench.dose, flow);
      return compared(
        {
          ...told,
          cause: `${say(context, flow, 'flow')} gives it in ${say(context, time, 'time')}; a hand is off by ${STARTS.handTiming.value} s`,
          working: [
            { text: 'flow of the gun', figure: { value: flow, dimension: 'flow' } },
            worked('trigger open', is(time, 'time'), '{dose} / {flow}', {
              dose: is(drench.dose, 'volume'),
              flow: is(flow, 'flow'),
            }),
            worked('off by', is(error, 'ratio'), '{timing of a hand} × {flow} / {dose}', {
              'timing of a hand': is(STARTS.handTiming.value, 'time'),
              flow: is(flow, 'flow'),
              dose: is(drench.dose, 'volume'),
            }),
            { text: 'less flow or a timer makes it more exact' },
          ],
        },
        asked,
        { value: error, dimension: 'ratio' },
        'at-most',
      );
    },
    asked,
    'at-most',
  );
}

function lanePromise(context: ProofContext, proven: ProvenDuty, lane: NonNullable<Duty['lane']>): RigPromise {
  const { duty } = proven;
  const told = {
    id: `pattern:lane:${duty.id}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: `Lays ${display(lane.drySalt, 'massPerLength', context.units, { as: 'lane-salt' })} of dry salt on ${lane.lanes === 1 ? 'the lane' : `each of ${lane.lanes} lanes`}`,
    method: 'dry salt in brine by length of lane',
    source: 'FHWA convention of dry salt per lane-mile; definition',
  };
  const asked = is(lane.drySalt, 'massPerLength', 'lane-salt');
  const salt = proven.liquid.drySalt;
  if (salt === undefined)
    return unknown(
      { ...told, cause: 'only a salt brine with its strength in weight % has a dry-salt rate' },
      asked,
    );
  return orUnknown(
    told,
    () => {
      const flow = openFlow(proven);
      const has = is(saltByLength(lane, flow, salt), 'massPerLength', 'lane-salt');
      return compared(
        {
          ...told,
          cause: `${say(context, flow, 'flow')} at ${say(context, lane.speed, 'speed')}, ${say(context, salt, 'density')} of dry salt in the brine`,
          working: [
            { text: 'flow of the bar', figure: { value: flow, dimension: 'flow' } },
            { text: 'speed', figure: { value: lane.speed, dimension: 'speed' } },
            { text: 'dry salt in the brine', figure: { value: salt, dimension: 'density' } },
            worked(
              'dry salt by length of lane',
              has,
              '{flow} × {dry salt} / ({lanes in one pass} × {speed})',
              {
                flow: is(flow, 'flow'),
                'dry salt': is(salt, 'density'),
                'lanes in one pass': is(lane.lanes, 'count'),
                speed: is(lane.speed, 'speed'),
              },
            ),
          ],
        },
        asked,
        has,
        'at-least',
      );
    },
    asked,
  );
}
