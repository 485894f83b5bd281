import {
  deltaT,
  deltaTState,
  DELTA_T_RULE,
  INVERSION_HOURS,
  WIND_RULES,
  windAgainstRule,
  type WindVerdict,
} from '../../physics/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import { compared, unknown, type RigPromise } from '../promise.ts';
import { STARTS } from '../start-values.data.ts';
import { say, type ProofContext } from './context.ts';
import { orUnknown } from './out-of-range.ts';
import { driftMatters } from './pattern-drift.ts';
import { sprayersOf } from './sprayer.ts';

/** Wind and air of the site allow spraying what would harm a neighbour. */
export function weatherPromises(context: ProofContext): RigPromise[] {
  const duties = context.duties.filter((d) => driftMatters(context, d) && sprayersOf(context, d).length > 0);
  return duties.length === 0
    ? []
    : [
        windPromise(
          context,
          duties.map((d) => d.duty.wind),
        ),
        airPromise(context),
      ];
}

function windPromise(context: ProofContext, winds: readonly (number | undefined)[]): RigPromise {
  const { site } = context.rig.brief;
  const rule = WIND_RULES.find((r) => r.id === site.windRule)!;
  const height = site.windHeight ?? STARTS.windHeight.value;
  const told = {
    id: 'pattern:wind',
    kind: 'pattern' as const,
    sentence: `The wind allows spraying, measured ${say(context, height, 'length')} up`,
    method: 'wind brought to the height of the rule',
    source: `${rule.origin.source}, ${rule.origin.place}${site.windHeight === undefined ? `; ${STARTS.windHeight.source}` : ''}`,
  };
  const most = { value: rule.most, dimension: 'speed' as const };
  const stated = winds.map((w) => w ?? site.wind);
  if (stated.some((w) => w === undefined))
    return unknown(
      { ...told, cause: 'say what wind the site has, and how high it was measured' },
      most,
      'at-most',
    );
  const wind = stated.reduce<number>((a, b) => Math.max(a, b!), 0);
  return orUnknown(
    told,
    () => {
      const verdict = windAgainstRule(rule.id, wind, height);
      const promise = compared(
        {
          ...told,
          cause: `${say(context, verdict.wind, 'speed')} ${rule.height === null ? 'as measured' : `${say(context, rule.height, 'length')} up`}: ${windWords(verdict, rule.least)}`,
          working: [
            { text: 'wind as it was measured', figure: { value: wind, dimension: 'speed' } },
            { text: `height of the rule: ${rule.heightNote}` },
            {
              text: 'least wind, below it the air may be layered',
              figure: { value: rule.least, dimension: 'speed' },
            },
            { text: `expect still, layered air ${INVERSION_HOURS.text} (${INVERSION_HOURS.origin.source})` },
            { text: 'label and local law come before any of these' },
          ],
        },
        most,
        { value: verdict.wind, dimension: 'speed' },
        'at-most',
      );
      return { ...promise, state: stateOf(verdict, promise.state, rule.stop === null) };
    },
    most,
    'at-most',
  );
}

/** A rule without a stop above its best winds asks for care there; one with a stop is broken. */
function stateOf(verdict: WindVerdict, judged: RigPromise['state'], noStop: boolean): RigPromise['state'] {
  if (verdict.state !== 'care') return verdict.state === 'stop' ? 'broken' : judged;
  return judged === 'broken' && !noStop ? 'broken' : 'thin';
}

function windWords({ state, wind }: WindVerdict, least: number): string {
  if (state === 'good') return 'within the rule';
  if (state === 'stop') return 'too windy to spray';
  return wind < least ? 'so still that the air may be layered' : 'more than the rule likes';
}

function airPromise(context: ProofContext): RigPromise {
  const { humidity, temperature } = context.rig.brief.site;
  const told = {
    id: 'pattern:delta-t',
    kind: 'pattern' as const,
    sentence: 'Droplets do not dry up on the way',
    method: 'dry less wet bulb temperature',
    source: `wet bulb after Stull 2011; ${DELTA_T_RULE.origin.source}`,
  };
  const most = { value: DELTA_T_RULE.stop, dimension: 'temperatureDifference' as const };
  if (humidity === undefined || temperature === undefined)
    return unknown({ ...told, cause: 'say how warm and how humid the air is' }, most, 'at-most');
  return orUnknown(
    told,
    () => {
      const difference = deltaT(temperature - 273.15, humidity) * looseFactor(context.rig, 'drying');
      const promise = compared(
        {
          ...told,
          cause: `at ${say(context, temperature, 'temperature')} and ${Math.round(humidity * 100)} % humidity; good from ${DELTA_T_RULE.least} to ${DELTA_T_RULE.good} °C, with care to ${DELTA_T_RULE.stop}`,
          working: [
            { text: 'dry less wet bulb', figure: { value: difference, dimension: 'temperatureDifference' } },
          ],
        },
        most,
        { value: difference, dimension: 'temperatureDifference' },
        'at-most',
      );
      return deltaTState(difference) === 'care' && promise.state === 'kept'
        ? { ...promise, state: 'thin' }
        : promise;
    },
    most,
    'at-most',
  );
}
