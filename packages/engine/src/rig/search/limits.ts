import { jointFinder, mates, type Part } from '../../catalogue/index.ts';
import { engineContinuousPower, siteDerate } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { contactsOf } from '../contacts.ts';
import { lineHose } from '../design/line-options.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { packDiameter } from '../reel-drum.ts';
import { stands } from '../suited.ts';
import type { Limit } from './limit.ts';
import { lineNeeds, type LineNeeds } from './line-needs.ts';
import { pumpSpeed } from './pump-flow.ts';
import { canBegin, lineOf } from './settings.ts';
import { wholeLimits } from './whole-limits.ts';
import { hasKnownFamily, type PartAt, type SearchSlot, type SearchSpace } from './space.ts';

const REFUSED = -1;
const FREE = Infinity;
const G = 9.80665;

const holds = (condition: boolean): number => (condition ? FREE : REFUSED);

/** All conditions of a space, each with the argument why it is necessary beside it. */
export function limitsOf(space: SearchSpace): readonly Limit[] {
  const has = new Set(space.slots.map((s) => s.id));
  return [
    ...materialLimits(space),
    ...jointLimits(space),
    ...shaftLimits(),
    ...settingLimits(space),
    ...companionLimits(space),
    ...adjustmentLimits(space),
    ...pumpLimits(space),
    ...reelLimits(space),
    ...carrierLimits(space),
    ...(hasKnownFamily(space) ? wholeLimits(space) : []).map((l) => ({ ...l, costly: true as const })),
  ].filter((l) => l.slots.every((s) => has.has(s)));
}

/** The promise on materials judges every part of a line and the tank; one destroyed material breaks it. */
function materialLimits({ brief, contexts, layout }: SearchSpace): Limit[] {
  const { unsuited } = contactsOf(brief, contexts[0]!.site);
  return ['tank', ...layout.lines.flatMap((l) => l.run)].map((slot) => ({
    slots: [slot],
    margin: (partAt) => {
      const part = partAt(slot);
      return holds(part === undefined || stands(part, unsuited));
    },
    why: 'materials: a liquid of the brief destroys what it touches',
  }));
}

/**
 * A joint that no chain of fittings makes without any pressure is a gap at every pressure, since a pressure only takes
 * fittings away; a gap breaks the promise on plumbing. Left out: joints where the plumbing puts something of its own
 * between, which are the drain behind the tank's valve and the bulkhead of an agitator.
 */
function jointLimits({ brief, catalogue, contexts, layout }: SearchSpace): Limit[] {
  const { unsuited } = contactsOf(brief, contexts[0]!.site);
  const join = jointFinder(catalogue, (piece) => stands(piece, unsuited));
  return layout.lines.flatMap((line) =>
    line.run.flatMap((a, i) =>
      line.run.slice(i + 1).flatMap((b, k): Limit[] => {
        const between = line.run.slice(i + 1, i + 1 + k);
        const alone = between.every((id) => layout.slots.find((s) => s.id === id)?.optional === true);
        if (!alone || (line.from === 'tank' && i === 0)) return [];
        return [
          {
            slots: [a, ...between, b],
            margin: (partAt) => {
              const [one, other] = [partAt(a), partAt(b)];
              if (one === undefined || other === undefined || between.some((id) => partAt(id) !== undefined))
                return FREE;
              if (other.kind === 'agitator' && line.to === 'tank') return FREE;
              const out = one.ports.find((p) => p.id === outOf(one, line.to));
              const into = other.ports.find((p) => p.id === 'in');
              return holds(
                out !== undefined && into !== undefined && (mates(out, into) || join(out, into, 0).ok),
              );
            },
            why: `plumbing: nothing in the catalogue joins ${a} to ${b}`,
          },
        ];
      }),
    ),
  );
}

function outOf(part: Part, to: string): string {
  return part.kind === 'regulator' && to === 'tank' ? 'bypass' : 'out';
}

/** Shafts fit by themselves or not at all: a gap otherwise. */
function shaftLimits(): Limit[] {
  const fit = (a: string, portA: string, b: string, portB: string): Limit => ({
    slots: [a, b],
    margin: (partAt) => {
      const from = partAt(a)?.ports.find((p) => p.id === portA);
      const to = partAt(b)?.ports.find((p) => p.id === portB);
      return holds(from !== undefined && to !== undefined && mates(from, to));
    },
    why: `plumbing: the shafts of ${a} and ${b} do not fit`,
  });
  return [
    fit('reduction', 'out', 'pump', 'shaft'),
    fit('engine', 'shaft', 'reduction', 'in'),
    fit('pto', 'out', 'pump', 'shaft'),
  ];
}

/** A line that cannot be set is no rig: the space is made of rigs with their settings. */
function settingLimits(space: SearchSpace): Limit[] {
  return usedOutlets(space.layout, space.brief).flatMap((line) => {
    const why = `${line.name}: these parts do not do what the duties ask`;
    const own = space.slots.filter((s) => line.run.includes(s.id));
    const isReel = (s: SearchSlot) => s.options.some((p) => p?.kind === 'reel');
    // What ends a line tells most of it: a tip that throws too short does so behind any hose and from any reel.
    const inOrder = [...own.filter((s) => !isReel(s)), ...own.filter(isReel)].map((s) => s.id);
    const begun = inOrder.slice(2).map((_, i): Limit => {
      const slots = inOrder.slice(0, i + 2);
      return { slots, margin: (partAt) => holds(canBegin(space, line, slots, partAt)), why };
    });
    return [
      ...begun,
      { slots: line.run, margin: (partAt) => holds(lineOf(space, line, partAt) !== undefined), why },
    ];
  });
}

/** Things that come together: the space leaves out a valve before nothing and an electric start without a battery. */
function companionLimits({ brief, contexts, slots }: SearchSpace): Limit[] {
  const liquids = contexts[0]!.liquids;
  const stirs = brief.duties.some((d) => d.agitate && liquids.get(d.liquid)!.agitationShare > 0);
  const offered = (id: string) => slots.find((s) => s.id === id)?.options.some((p) => p !== undefined);
  const pair = (a: string, b: string): Limit => ({
    slots: [a, b],
    margin: (partAt) => holds((partAt(a) === undefined) === (partAt(b) === undefined)),
    why: `${a} and ${b} come together`,
  });
  const electric = (partAt: PartAt, slot: string) => {
    const part = partAt(slot);
    return (
      (part?.kind === 'engine' && part.start === 'electric') ||
      (part?.kind === 'reel' && part.rewind === 'electric')
    );
  };
  const powered = ['engine', 'reel'].filter((id) => slots.some((s) => s.id === id));
  const rules: Limit[] = [
    pair('agitation-valve', 'agitator'),
    pair('eductor-valve', 'eductor'),
    {
      slots: ['agitator'],
      margin: (partAt) => holds(stirs || partAt('agitator') === undefined),
      why: 'no duty asks for agitation',
    },
    {
      slots: ['eductor'],
      margin: (partAt) => holds(partAt('eductor') !== undefined || offered('eductor') !== true),
      why: 'a batch rig has its eductor',
    },
    ...(powered.length === 0 || offered('battery') !== true
      ? []
      : [
          {
            slots: [...powered, 'battery'],
            margin: (partAt: PartAt) =>
              holds(powered.some((id) => electric(partAt, id)) === (partAt('battery') !== undefined)),
            why: 'a battery comes with an electric start or rewind, and not without',
          },
        ]),
  ];
  return rules.map((l) => ({ ...l, rule: true as const }));
}

/** Share by which the scale of a gauge goes beyond the pressure asked: common practice, no source. */
const GAUGE_ROOM = 1.3;

/** What is set and read: the space leaves out a regulator that cannot be set to its pressure, and a gauge that does not show it. */
function adjustmentLimits(space: SearchSpace): Limit[] {
  const outlets = usedOutlets(space.layout, space.brief).flatMap((l) => l.run);
  const rule = (slot: string, why: string, fits: (part: Part, needs: LineNeeds) => boolean): Limit => ({
    slots: [...outlets, slot],
    margin: (partAt) => {
      const part = partAt(slot);
      const needs = part === undefined ? undefined : lineNeeds(space, partAt);
      return holds(part === undefined || needs === undefined || fits(part, needs));
    },
    why,
    rule: true,
  });
  return [
    rule(
      'regulator',
      'regulator: it cannot be set to the pressure',
      (r, { set, lowest }) => r.kind !== 'regulator' || (r.setMax >= set && r.setMin <= lowest),
    ),
    rule(
      'gauge',
      'gauge: the pressure is beyond its scale',
      (g, { pressure }) => g.kind !== 'gauge' || g.range >= pressure * GAUGE_ROOM,
    ),
  ];
}

/**
 * Speed is what the proof computes, from the same parts. A displacement pump gives at most its displacement at that
 * speed, and all that leaves the outlets has gone through it. The shaft carries at least the power of the liquid that
 * leaves the outlets at the pressure asked there, less what tank head and height can give.
 */
function pumpLimits(space: SearchSpace): Limit[] {
  const { brief, contexts, layout } = space;
  const { liquids, site } = contexts[0]!;
  const asked = brief.duties.map((duty) => {
    const liquid = liquids.get(duty.liquid)!;
    const outlets = duty.open.filter((o) => layout.lines.some((l) => l.opens === o));
    const flow = (askedFlow(duty, liquid) ?? 0) * outlets.length;
    const free = liquid.density * G * (4 + Math.max(0, 2 - (duty.outletHeight ?? 0)));
    const pressure = outlets.length === 0 ? 0 : Math.max(0, (duty.pressure ?? 0) - free);
    return { flow, pressure, gun: outlets.includes('gun') };
  });
  const flow = Math.max(...asked.map((a) => a.flow));
  const power = Math.max(...asked.map((a) => a.flow * a.pressure));
  const rated = Math.max(...asked.map((a) => a.pressure));
  const ratedGun = Math.max(0, ...asked.flatMap((a) => (a.gun ? [a.pressure] : [])));
  const driven = (partAt: PartAt): number => {
    const pump = partAt('pump');
    if (pump?.kind !== 'pump') return FREE;
    const speed = pumpSpeed(space, pump, partAt);
    if (speed < pump.minSpeed * (1 - 1e-6)) return REFUSED;
    const gives =
      pump.law.action === 'displacement' && flow > 0
        ? (pump.law.displacement * speed * 1.001 - flow) / flow
        : FREE;
    return Math.min((pump.maxSpeed - speed) / pump.maxSpeed + 1e-6, gives);
  };
  const factor = Math.min(
    1,
    siteDerate(site.derating, site.altitude, site.temperature - 273.15, site.humidity).factor,
  );
  const drive = layout.slots.some((s) => s.id === 'pto') ? ['pto'] : ['reduction', 'engine'];
  return [
    { slots: ['pump', ...drive], margin: driven, why: 'pump: its speed or its flow is out of what is asked' },
    {
      slots: ['pump', 'reduction', 'engine'],
      margin: (partAt) => {
        const [pump, engine] = [partAt('pump'), partAt('engine')];
        if (pump?.kind !== 'pump' || engine?.kind !== 'engine') return FREE;
        return holds(power / pump.law.efficiency <= engineContinuousPower(engine.power, factor) * 1.001);
      },
      why: 'power: the engine gives less than the liquid takes out with it',
    },
    ...['pump', 'hose', 'gun'].map((slot): Limit => ({
      slots: [slot],
      margin: (partAt) => {
        const part = partAt(slot);
        if (part === undefined || !('maxPressure' in part)) return FREE;
        return 1 - (slot === 'pump' ? rated : ratedGun) / part.maxPressure;
      },
      why: `rating: the ${slot} does not stand the pressure asked behind it`,
    })),
  ];
}

/** The promise that the hose goes on the reel is this very figure. */
function reelLimits({ brief, layout }: SearchSpace): Limit[] {
  const line = usedOutlets(layout, brief).find((l) => l.run.includes('reel'));
  if (line === undefined) return [];
  const duties = brief.duties.filter((d) => (d.open as readonly string[]).includes(line.opens));
  const length = lineHose(brief, line, duties);
  return [
    {
      slots: ['hose', 'reel'],
      margin: (partAt) => {
        const [hose, reel] = [partAt('hose'), partAt('reel')];
        if (hose?.kind !== 'hose' || reel?.kind !== 'reel') return FREE;
        return (reel.flangeDiameter - packDiameter(reel, hose, length)) / reel.flangeDiameter;
      },
      why: 'reel: the hose does not go on it',
    },
  ];
}

/**
 * A deck takes 5 % more than its size, and what stands on it is judged as at least the deck's own length: no rig on a
 * carrier has more margin than 0.05 / 1.05. The tank lies along the deck and is never turned. The rated load is at
 * least the carrier, the tank and the tank full of the heaviest liquid.
 */
function carrierLimits({ brief, contexts }: SearchSpace): Limit[] {
  const density = Math.max(...brief.duties.map((d) => contexts[0]!.liquids.get(d.liquid)!.density));
  return [
    {
      slots: ['tank', 'carrier'],
      margin: (partAt) => {
        const [tank, carrier] = [partAt('tank'), partAt('carrier')];
        if (tank?.kind !== 'tank' || carrier?.kind !== 'carrier') return FREE;
        const full = carrier.mass + tank.mass + tank.volume * density;
        const share = (has: number, most: number) => (most - has) / most;
        return Math.min(
          share(Math.max(carrier.deckLength, tank.size.length), carrier.deckLength * 1.05),
          share(tank.size.width, carrier.deckWidth * 1.05),
          share(full, carrier.grossRating),
          brief.carrier.massLimit === undefined ? FREE : share(full, brief.carrier.massLimit),
        );
      },
      why: 'carrier: the tank does not fit on it, or is too heavy when full',
    },
  ];
}
