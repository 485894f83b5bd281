import { doseFromFlow } from '../../physics/index.ts';
import { groundDose, treatedShare } from '../application.ts';
import type { Duty } from '../brief.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { STARTS } from '../start-values.data.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { orUnknown } from './out-of-range.ts';
import { pressureForFlow, sprayersOf, workPressure, type Sprayer } from './sprayer.ts';

/** Dose that a flow lays down, counted on the area that its rate is told for [m3/m2]. */
function doseOf(a: Application, flow: number): number {
  const ground = doseFromFlow(Math.min(1, flow), a.speed, a.width);
  return a.basis === 'treated' ? ground / treatedShare(a) : ground;
}

/** What a duty's sprayers lay down at full pressure, and with the pressure turned down as far as they allow. */
export function dosesOf(
  a: Application,
  sprayers: readonly Sprayer[],
): { flow: number; leastFlow: number; needed: number; full: number; least: number } {
  const flow = sprayers.reduce((sum, s) => sum + s.outlet.flow, 0);
  // Pressure is turned down until the rate is right; below the least pressure of the tip the pattern fails.
  const leastFlow = sprayers.reduce(
    (sum, s) =>
      sum + s.outlet.flow * Math.sqrt(Math.min(1, s.end.minPressure / Math.max(1, s.outlet.tipPressure))),
    0,
  );
  const needed = groundDose(a) * a.speed * a.width;
  return { flow, leastFlow, needed, full: doseOf(a, flow), least: doseOf(a, leastFlow) };
}

/** Pressures at which a nozzle keeps a rate at the slowest and the fastest of its speeds [Pa]. */
export function pressuresAtSpeeds(
  a: Application,
  sprayer: Sprayer,
  flow: number,
): { low: number; high: number } {
  const { slowest, fastest } = speedsOf(a);
  const share = sprayer.outlet.flow / flow;
  const at = (speed: number) => pressureForFlow(sprayer, share * groundDose(a) * speed * a.width);
  return { low: at(slowest), high: at(fastest) };
}

const DOSE_METHOD = 'dose from flow, speed and width';
const DOSE_SOURCE = 'definition; GPA = 5940 gpm / (mph in), Univ. of Missouri Extension G1270a';

type Application = NonNullable<Duty['application']>;

/** Each rate over ground is laid down, at its speeds and in its width, and not exceeded. */
export function dosePromises(context: ProofContext): RigPromise[] {
  return context.duties.flatMap((proven) => {
    const { application } = proven.duty;
    return application === undefined ? [] : promisesOf(context, proven, application);
  });
}

function promisesOf(context: ProofContext, proven: ProvenDuty, a: Application): RigPromise[] {
  const { duty, open } = proven;
  const sprayers = sprayersOf(context, proven);
  const flow = sprayers.reduce((sum, s) => sum + s.outlet.flow, 0);
  const told = {
    id: `pattern:dose:${duty.id}`,
    kind: 'pattern' as const,
    duty: duty.id,
    sentence: `Lays down ${say(context, a.rate, 'dose')} at ${say(context, a.speed, 'speed')}, counted on ${areaWords(a)}`,
    method: DOSE_METHOD,
    source: DOSE_SOURCE,
  };
  const asked = { value: a.rate, dimension: 'dose' as const };
  if (sprayers.length === 0 || !(flow > 0))
    return [
      unknown({ ...told, cause: open.reason ?? 'no nozzle or tip is open that could lay it down' }, asked),
    ];
  return [
    orUnknown(told, () => dosePromise(context, told, a, sprayers, flow), asked),
    ...sprayers.flatMap((s) => speedPromises(context, proven, a, s, flow)),
  ];
}

function dosePromise(
  context: ProofContext,
  told: Omit<Parameters<typeof unknown>[0], 'cause'>,
  a: Application,
  sprayers: readonly Sprayer[],
  flow: number,
): RigPromise {
  const { leastFlow, needed, full, least } = dosesOf(a, sprayers);
  const dose = (text: string, ofFlow: number, lays: number) =>
    worked(text, is(lays, 'dose'), '{flow} / ({speed} × {width} × {share treated})', {
      flow: is(Math.min(1, ofFlow), 'flow'),
      speed: is(a.speed, 'speed'),
      width: is(a.width, 'length'),
      'share treated': is(a.basis === 'treated' ? treatedShare(a) : 1, 'ratio'),
    });
  const tooMuch = leastFlow > needed;
  const at = sprayers[0]!;
  const setTo = workPressure({ application: a }, at, flow);
  const working: Step[] = [
    { text: 'flow of all that is open', figure: { value: flow, dimension: 'flow' } },
    { text: 'speed', figure: { value: a.speed, dimension: 'speed' } },
    { text: 'width', figure: { value: a.width, dimension: 'length' } },
    ...(a.band === undefined || a.row === undefined
      ? []
      : [
          { text: 'width of a band', figure: { value: a.band, dimension: 'length' as const } },
          { text: 'spacing of the rows', figure: { value: a.row, dimension: 'length' as const } },
          { text: 'dose over the whole field', figure: { value: groundDose(a), dimension: 'dose' as const } },
        ]),
    dose('dose at full pressure', flow, full),
    dose('dose at the least pressure of the nozzle', leastFlow, least),
    worked('flow for the rate asked', is(needed, 'flow'), '{rate over the ground} × {speed} × {width}', {
      'rate over the ground': is(groundDose(a), 'dose'),
      speed: is(a.speed, 'speed'),
      width: is(a.width, 'length'),
    }),
    worked(
      'pressure in front of the nozzle for the rate asked',
      is(setTo, 'pressure'),
      '{full pressure} × min(1, {flow asked} / {flow at full pressure}) ^ 2',
      {
        'full pressure': is(at.outlet.tipPressure, 'pressure'),
        'flow asked': is(needed, 'flow'),
        'flow at full pressure': is(flow, 'flow'),
      },
    ),
    { text: 'check it by catching one nozzle, as the handbook says: within 5 % of the label' },
  ];
  return compared(
    {
      ...told,
      cause: tooMuch
        ? 'even at the least pressure of the nozzle more comes out: drive faster or take a smaller nozzle'
        : `set ${say(context, setTo, 'pressure')} in front of the nozzle; full pressure gives ${say(context, full, 'dose')}`,
      items: sprayers.map((s) => s.item),
      working,
    },
    { value: a.rate, dimension: 'dose' },
    { value: tooMuch ? least : full, dimension: 'dose' },
    tooMuch ? 'at-most' : 'at-least',
  );
}

/** Speeds between which a rate must hold; a fifth slower and faster where the duty does not say. */
export function speedsOf(a: Application): { slowest: number; fastest: number } {
  return {
    slowest: a.slowest ?? STARTS.slower.value * a.speed,
    fastest: a.fastest ?? STARTS.faster.value * a.speed,
  };
}

/** At one dose pressure goes with the square of speed: the nozzle must work at the slowest and the fastest. */
function speedPromises(
  context: ProofContext,
  { duty }: ProvenDuty,
  a: Application,
  sprayer: Sprayer,
  flow: number,
): RigPromise[] {
  const { end, outlet, item } = sprayer;
  if (end.kind !== 'nozzle') return [];
  const { slowest, fastest } = speedsOf(a);
  const { low, high } = pressuresAtSpeeds(a, sprayer, flow);
  const speedStep = (text: string, speed: number, pressure: number) =>
    worked(text, is(pressure, 'pressure'), '{pressure now} × ({rate} × {speed} × {width} / {flow now}) ^ 2', {
      'pressure now': is(outlet.tipPressure, 'pressure'),
      rate: is(groundDose(a), 'dose'),
      speed: is(speed, 'speed'),
      width: is(a.width, 'length'),
      'flow now': is(flow, 'flow'),
    });
  const slow = low / end.minPressure < end.maxPressure / high;
  const stated = a.slowest !== undefined || a.fastest !== undefined;
  return [
    compared(
      {
        id: `pattern:speeds:${duty.id}:${outlet.line}`,
        kind: 'pattern',
        duty: duty.id,
        sentence: `Keeps its rate from ${say(context, slowest, 'speed')} to ${say(context, fastest, 'speed')}`,
        cause: `${end.name} works from ${say(context, end.minPressure, 'pressure')} to ${say(context, end.maxPressure, 'pressure')}; ${slow ? 'slowest' : 'fastest'} speed decides`,
        items: [item],
        method: 'pressure with the square of speed at one dose',
        source: `orifice law at constant dose, UNL CropWatch 2016${stated ? '' : `; a fifth slower and faster is a ${STARTS.faster.source}`}`,
        working: [
          speedStep('pressure at the slowest', slowest, low),
          speedStep('pressure at the fastest', fastest, high),
          {
            text: 'the pump must give the pressure at the fastest too; without a rate controller the driver holds the speed',
          },
        ],
      },
      { value: slow ? end.minPressure : end.maxPressure, dimension: 'pressure' },
      { value: slow ? low : high, dimension: 'pressure' },
      slow ? 'at-least' : 'at-most',
    ),
  ];
}

function areaWords(a: Application): string {
  if (a.band === undefined) return 'the treated area';
  return a.basis === 'treated' ? 'the treated bands' : 'the whole field';
}
