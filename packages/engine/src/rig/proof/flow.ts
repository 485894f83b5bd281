import { groundDose } from '../application.ts';
import { askedFlow } from '../asked-flow.ts';
import type { Duty } from '../brief.ts';
import type { OutletState } from '../duty-state.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { say, sayGiven, type WorkContext, type ProvenDuty } from './context.ts';
import { tipWorking } from './tip-working.ts';

const METHOD = 'steady state of the pipe network';
const SOURCE = 'Todini and Pilati 1988 (from memory); friction after Colebrook-White';

/** Words for an outlet line. */
const OUTLET_WORDS: Readonly<Record<string, string>> = {
  gun: 'the gun',
  'second-gun': 'the second gun',
  boom: 'the boom',
  bar: 'the spray bar',
  transfer: 'the transfer hose',
};

/** Each outlet gets the flow its duty asks, and each tip works in its range of pressure. */
export function flowPromises(context: WorkContext): RigPromise[] {
  return context.duties.flatMap((proven) => {
    // Several promises of an outlet show the same sum.
    const workings = new Map<OutletState, Step[]>();
    for (const outlet of proven.open.outlets) workings.set(outlet, tipWorking(context, proven, outlet));
    return [...flows(context, proven, workings), ...tipPressures(context, proven, workings)];
  });
}

/** The flow of each outlet's tip put into its law. */
type Workings = ReadonlyMap<OutletState, readonly Step[]>;

function flows(context: WorkContext, proven: ProvenDuty, workings: Workings): RigPromise[] {
  const { duty, liquid, open, dirty } = proven;
  const asked = askedFlow(duty, liquid);
  if (asked === undefined) return [];
  return duty.open.map((line): RigPromise => {
    const outlet = open.outlets.find((o) => o.line === line);
    const told = {
      id: `flow:${duty.id}:${line}`,
      kind: 'flow' as const,
      duty: duty.id,
      sentence: `Gives ${sayGiven(context, asked, 'flow')} at ${OUTLET_WORDS[line] ?? line}${hoseWords(context, duty)}`,
      method: METHOD,
      source: SOURCE,
    };
    const figure = { value: asked, dimension: 'flow' as const };
    if (outlet === undefined)
      return unknown({ ...told, cause: open.reason ?? `the rig has no line that leads to ${line}` }, figure);
    const dirtyFlow = dirty.outlets.find((o) => o.line === line)?.flow;
    return compared(
      {
        ...told,
        cause: `${say(context, outlet.tipPressure, 'pressure')} in front of the outlet passes ${say(context, outlet.flow, 'flow')}`,
        items: context.rig.lines.find((l) => l.id === line)?.run ?? [],
        working: [
          ...askedWorking(duty, asked),
          {
            text: 'pressure in front of the outlet',
            figure: { value: outlet.tipPressure, dimension: 'pressure' },
          },
          ...workings.get(outlet)!,
          ...(dirtyFlow === undefined
            ? []
            : [
                {
                  text: 'flow with the strainer dirty',
                  figure: { value: dirtyFlow, dimension: 'flow' as const },
                },
              ]),
        ],
      },
      figure,
      { value: outlet.flow, dimension: 'flow' },
      'at-least',
    );
  });
}

/** What the flow asked follows from. */
function askedWorking({ flow, application, lane }: Duty, asked: number): RigPromise['working'] {
  if (flow !== undefined) return [];
  if (application !== undefined)
    return [
      { text: 'rate over the ground', figure: { value: application.rate, dimension: 'dose' } },
      { text: 'speed', figure: { value: application.speed, dimension: 'speed' } },
      { text: 'width', figure: { value: application.width, dimension: 'length' } },
      worked('flow asked', is(asked, 'flow'), '{rate over the ground} × {speed} × {width}', {
        'rate over the ground': is(groundDose(application), 'dose'),
        speed: is(application.speed, 'speed'),
        width: is(application.width, 'length'),
      }),
    ];
  if (lane !== undefined)
    return [
      { text: 'dry salt by length of lane', figure: is(lane.drySalt, 'massPerLength', 'lane-salt') },
      { text: `lanes sprayed in one pass: ${lane.lanes}` },
      { text: 'speed', figure: { value: lane.speed, dimension: 'speed' } },
    ];
  return [];
}

function tipPressures(context: WorkContext, proven: ProvenDuty, workings: Workings): RigPromise[] {
  const { duty, open } = proven;
  return open.outlets.flatMap((outlet): RigPromise[] => {
    const run = context.rig.lines.find((l) => l.id === outlet.line)!.run;
    const last = context.rig.items.get(run[run.length - 1] ?? '');
    const tip = last?.part.kind === 'tip' || last?.part.kind === 'nozzle' ? last.part : undefined;
    const asked = duty.pressure;
    const out: RigPromise[] = [];
    const told = (what: string, sentence: string, cause: string) => ({
      id: `tip-pressure:${duty.id}:${outlet.line}:${what}`,
      kind: 'tip-pressure' as const,
      duty: duty.id,
      sentence,
      cause,
      items: last === undefined ? [] : [last.item.id],
      method: METHOD,
      source: SOURCE,
      working:
        tip === undefined
          ? [{ text: 'flow', figure: { value: outlet.flow, dimension: 'flow' as const } }]
          : workings.get(outlet)!,
    });
    const has = { value: outlet.tipPressure, dimension: 'pressure' as const };
    if (asked !== undefined)
      out.push(
        compared(
          told(
            'asked',
            `Has ${sayGiven(context, asked, 'pressure')} at ${OUTLET_WORDS[outlet.line] ?? outlet.line}${hoseWords(context, duty)}`,
            'what hoses and fittings leave of the pump pressure',
          ),
          { value: asked, dimension: 'pressure' },
          has,
          'at-least',
        ),
      );
    if (tip !== undefined) {
      const low = outlet.tipPressure / tip.minPressure < tip.maxPressure / outlet.tipPressure;
      out.push(
        compared(
          told(
            'range',
            low ? 'Tip has enough pressure to make its pattern' : 'Tip stays below its highest pressure',
            `${tip.name} works from ${say(context, tip.minPressure, 'pressure')} to ${say(context, tip.maxPressure, 'pressure')}`,
          ),
          { value: low ? tip.minPressure : tip.maxPressure, dimension: 'pressure' },
          has,
          low ? 'at-least' : 'at-most',
        ),
      );
    }
    return out;
  });
}

export function hoseWords(context: WorkContext, duty: Duty): string {
  return duty.hoseOut === undefined ? '' : ` with ${sayGiven(context, duty.hoseOut, 'length')} of hose out`;
}
