import type { DayInput, DayPhase, workingDay } from '../../physics/index.ts';
import { is, worked, type Figure, type Step } from '../promise.ts';
import { STARTS } from '../start-values.data.ts';

/** A day as it was simulated. */
interface DayFigures {
  readonly unit: string;
  readonly byArea: boolean;
  readonly input: DayInput;
  readonly result: ReturnType<typeof workingDay>;
}

/** What a phase is called when its hours are added up. */
const PHASE_WORDS: Readonly<Record<DayPhase, string>> = {
  prepare: 'making ready',
  fill: 'coupling and filling',
  mix: 'mixing',
  drive: 'driving to water and back',
  'set-out': 'parking and walking the hose out',
  work: 'at work, pauses counted',
  'take-up': 'taking the hose up',
  move: 'moving to the next place',
  refuel: 'refuelling',
  flush: 'flushing',
  close: 'putting away',
};

/** The day added up: where the hours go, and what the spraying in them comes to. */
export function daySteps(day: DayFigures): Step[] {
  const { result, input } = day;
  const figure = (text: string, value: number, dimension: Figure['dimension']): Step => ({
    text,
    figure: is(value, dimension),
  });
  const [flow, open, sprayed] = [
    is(input.flow, 'flow'),
    is(result.triggerTime, 'time'),
    is(result.sprayed, 'volume'),
  ];
  const one = is(input.unitVolume, 'volume');
  return [
    figure(`mix for one ${day.unit}`, input.unitVolume, 'volume'),
    figure('flow at work', input.flow, 'flow'),
    hoursStep(day),
    worked('mix sprayed', sprayed, '{flow at work} × {trigger open}', {
      'flow at work': flow,
      'trigger open': open,
    }),
    day.byArea
      ? worked(
          'done in the day',
          is(result.area, 'area'),
          '{mix sprayed} / {mix for one} × {ground of one}',
          {
            'mix sprayed': sprayed,
            'mix for one': one,
            'ground of one': is(input.unitArea, 'area'),
          },
        )
      : worked(
          'done in the day',
          { value: result.units, dimension: 'number' },
          '{mix sprayed} / {mix for one}',
          {
            'mix sprayed': sprayed,
            'mix for one': one,
          },
        ),
    figure('fills', result.fills, 'count'),
    figure('left in the tank', result.left, 'volume'),
    worked('mix filled', is(result.filled, 'volume'), '{mix sprayed} + {left}', {
      'mix sprayed': sprayed,
      left: is(result.left, 'volume'),
    }),
    ...(result.product > 0
      ? [
          worked('product used', is(result.product, 'volume'), '{mix filled} × {share of product}', {
            'mix filled': is(result.filled, 'volume'),
            'share of product': is(input.productShare ?? 0, 'ratio'),
          }),
        ]
      : []),
    ...(result.stops > 0 ? [figure('places the hose was set out at', result.stops, 'count')] : []),
    figure('for water and mixing', result.fillTime, 'time'),
    ...(result.distance > 0 ? [{ text: 'driven', figure: is(result.distance, 'length', 'way') }] : []),
    ...((input.fuelTank ?? 0) > 0
      ? [figure(`fuel burnt (${STARTS.petrolConsumption.source})`, result.fuel, 'volume')]
      : []),
    ...((input.battery ?? 0) > 0
      ? [figure('least charge left of what may be used', result.leastCharge, 'charge')]
      : []),
    figure('heaviest in the day', result.greatestMass, 'mass'),
  ];
}

/** Hours of the day by what they went into. */
function hoursStep({ result }: DayFigures): Step {
  const terms: Record<string, Figure> = {};
  let total = 0;
  const { times, phases } = result;
  for (let i = 1; i < times.length; i++) {
    const name = PHASE_WORDS[phases[i]!];
    const spent = times[i]! - times[i - 1]!;
    terms[name] = is((terms[name]?.value ?? 0) + spent, 'time');
    total += spent;
  }
  for (const [name, { value }] of Object.entries(terms)) if (value === 0) delete terms[name];
  const names = Object.keys(terms);
  return names.length === 0
    ? { text: 'the whole day', figure: is(0, 'time') }
    : worked('the whole day', is(total, 'time'), names.map((n) => `{${n}}`).join(' + '), terms);
}
