import { dosesOf, pressuresAtSpeeds } from '../proof/pattern-dose.ts';
import { highestCoarse } from '../proof/pattern-evenness.ts';
import { gulpError, openFlow, saltByLength, timeAtTree } from '../proof/pattern-units.ts';
import { flowOf, sprayersOf, workPressure, type Sprayer } from '../proof/sprayer.ts';
import type { ProofContext, ProvenDuty } from '../proof/context.ts';
import type { Contender, DrawnPromise, DrawSheet } from './draw-sheet.ts';

/** What lands where the spray goes: dose over ground, on trees, pots and lanes, and how fine it is. */
export function workPromises(sheet: DrawSheet): DrawnPromise[] {
  return sheet.context.duties.flatMap((proven) => [
    ...groundPromises(sheet, proven),
    ...unitPromises(sheet, proven),
    ...dropletPromises(sheet, proven),
  ]);
}

type Figure = (duty: ProvenDuty, context: ProofContext) => number;

/** One figure of a duty in each draw, by the proof's own function. */
function figureOf(sheet: DrawSheet, proven: ProvenDuty, figure: Figure): Contender[] {
  const drawn = sheet.contexts.duty(proven);
  if (drawn === undefined) return [];
  return [
    {
      readings: drawn.readings,
      value: (draw) => figure(drawn.at(draw), sheet.contexts.at(draw)),
    },
  ];
}

/** The same sprayers with what comes out of them in one draw: their parts are those of every draw. */
function inDraw(sprayers: readonly Sprayer[], { open }: ProvenDuty): Sprayer[] {
  return sprayers.map((s) => ({ ...s, outlet: open.outlets.find((o) => o.line === s.outlet.line)! }));
}

/** Rate over ground, and the pressures at which nozzles keep it from the slowest to the fastest speed. */
function groundPromises(sheet: DrawSheet, proven: ProvenDuty): DrawnPromise[] {
  const { context } = sheet;
  const { application } = proven.duty;
  if (application === undefined) return [];
  const sprayers = sprayersOf(context, proven);
  const { leastFlow, needed } = dosesOf(application, sprayers);
  const tooMuch = leastFlow > needed;
  return [
    {
      id: `pattern:dose:${proven.duty.id}`,
      as: 'share',
      // More than the rate at the least pressure of the nozzle is no better than less than it at the most.
      contenders: figureOf(sheet, proven, (duty) => {
        const { rate } = duty.duty.application!;
        const doses = dosesOf(duty.duty.application!, inDraw(sprayers, duty));
        const share = doses.leastFlow > doses.needed ? rate / doses.least : doses.full / rate;
        return tooMuch ? 1 / share : share;
      }),
    },
    ...sprayers.map((_, i) => speedPromise(sheet, proven, sprayers, i)),
  ];
}

/** The nozzle must work at both ends of the speeds: whichever is nearer to its limit decides. */
function speedPromise(
  sheet: DrawSheet,
  proven: ProvenDuty,
  sprayers: readonly Sprayer[],
  place: number,
): DrawnPromise {
  const { end, outlet } = sprayers[place]!;
  const shares = (duty: ProvenDuty) => {
    const now = inDraw(sprayers, duty);
    const { low, high } = pressuresAtSpeeds(duty.duty.application!, now[place]!, flowOf(now));
    return [low / end.minPressure, end.maxPressure / high] as const;
  };
  const [low, high] = shares(proven);
  const slow = low < high;
  return {
    id: `pattern:speeds:${proven.duty.id}:${outlet.line}`,
    as: 'share',
    contenders: figureOf(sheet, proven, (duty) => {
      const share = Math.min(...shares(duty));
      return slow ? share : 1 / share;
    }),
  };
}

/** Trees, pots and lanes. */
function unitPromises(sheet: DrawSheet, proven: ProvenDuty): DrawnPromise[] {
  const { id, trees, drench, lane } = proven.duty;
  const { drySalt } = proven.liquid;
  const out: DrawnPromise[] = [];
  if (trees?.time !== undefined)
    out.push({
      id: `pattern:tree:${id}`,
      as: 'figure',
      askedFactor: sheet.factor('unit-volume', 'rig'),
      contenders: figureOf(sheet, proven, (duty, at) => openFlow(duty) * timeAtTree(at, trees.time!)),
    });
  if (drench !== undefined)
    out.push({
      id: `pattern:drench:${id}`,
      as: 'figure',
      contenders: figureOf(sheet, proven, (duty, at) => gulpError(at, drench.dose, openFlow(duty))),
    });
  if (lane !== undefined && drySalt !== undefined)
    out.push({
      id: `pattern:lane:${id}`,
      as: 'figure',
      contenders: figureOf(sheet, proven, (duty) => saltByLength(duty.duty.lane!, openFlow(duty), drySalt)),
    });
  return out;
}

/** A droplet class is kept up to a pressure: that is what can be drawn. */
function dropletPromises(sheet: DrawSheet, proven: ProvenDuty): DrawnPromise[] {
  const sprayers = sprayersOf(sheet.context, proven);
  return sprayers.flatMap((sprayer, i): DrawnPromise[] => {
    const limit = highestCoarse(sheet.context, proven.duty, sprayer);
    if (limit === undefined) return [];
    return [
      {
        id: `pattern:droplets:${proven.duty.id}:${sprayer.outlet.line}`,
        as: 'figure',
        stands: { asked: { value: limit, dimension: 'pressure' }, sense: 'at-most' },
        contenders: figureOf(sheet, proven, (duty) => {
          const now = inDraw(sprayers, duty);
          return workPressure(duty.duty, now[i]!, flowOf(now));
        }),
      },
    ];
  });
}
