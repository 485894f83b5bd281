import type { Part, PartOf } from '../../catalogue/index.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import type { Point } from './points.ts';
import type { Group } from './core-types.ts';
import type { GroupFronts } from './group-fronts.ts';
import { marginStep } from './figures.ts';
import { ratedOf } from './rated.ts';
import { lineNeeds } from './line-needs.ts';
import { MainCheck, SharedByMains, spareWith, type Spare } from './main-check.ts';
import { drivePower } from './main-pressure.ts';
import type { AnyOf } from './main-ways.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import { askedFlows, pumpFlow, type PumpFlow } from './pump-flow.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Groups that a main holds its pressure with. */
export const OF_MAIN: ReadonlySet<Group['id']> = new Set<Group['id']>(['return', 'agitation']);

/** Mains kept: a search asks for the same one only while few of its slots change. */
export const MOST_MAINS = 400;

/** A regulator with an agitator or none, and the least that they add with any return hose and valve. */
interface Pair extends Adds {
  readonly regulator: PartOf<'regulator'>;
  readonly agitator: Part | undefined;
}

/** A main of some outlets and a pump, with what its pairs let it spare as far as they have been asked for. */
interface Main {
  readonly check: MainCheck;
  readonly pairs: readonly Pair[];
  readonly spares: Map<Pair, Spare>;
}

/**
 * What a displacement pump and the outlets ask of regulator and jet, and so what these add at least: the cheapest regulator
 * seldom holds the pressure within every rating, nor does the smallest jet stir the tank. Known before tank and carrier
 * are, for the one that is easiest to serve.
 */
export class MainFronts {
  readonly #space: SearchSpace;
  readonly #pairs: readonly Pair[];
  readonly #mains = new Map<string, Main | undefined>();
  readonly #shared: SharedByMains;
  readonly #outlets: readonly string[];

  constructor(space: SearchSpace, groups: readonly Group[], fronts: GroupFronts) {
    this.#space = space;
    this.#shared = new SharedByMains(space);
    const back = groups.find((g) => g.id === 'return');
    const jet = groups.find((g) => g.id === 'agitation');
    const none = new Map<Part | undefined, Adds>([[undefined, NOTHING]]);
    const agitators = jet === undefined ? none : fronts.leastBy(jet, jet.slots.indexOf('agitator'));
    const regulators = back === undefined ? [] : fronts.leastBy(back, back.slots.indexOf('regulator'));
    this.#pairs = [...regulators]
      .flatMap(([regulator, least]) =>
        regulator?.kind === 'regulator'
          ? [...agitators].map(([agitator, more]): Pair => ({ regulator, agitator, ...plus(least, more) }))
          : [],
      )
      .sort((a, b) => a.cents - b.cents || a.mass - b.mass || a.late - b.late);
    this.#outlets = usedOutlets(space.layout, space.brief).flatMap((l) => l.run);
  }

  /**
   * The front of what regulator and jet add to decided outlets and a pump, with its drive or any, and with a tank or any;
   * empty when none hold. Undefined where nothing is known of them.
   *
   * @param cap spare beyond which more is of no use [steps]
   * @param isOpen whether something that such a point leads to is still to be looked at: with the first one of which that is
   * so nothing more is asked, and what is closed with all the spare that it may have is told without reckoning its own
   */
  of(
    partAt: PartAt,
    driven: boolean,
    tank: Part | undefined,
    cap: number,
    isOpen?: (point: Point) => boolean,
  ): readonly Point[] | undefined {
    const pump = partAt('pump');
    if (this.#pairs.length === 0 || pump?.kind !== 'pump' || pump.law.action !== 'displacement')
      return undefined;
    const flow = driven ? pumpFlow(this.#space, partAt) : this.#anyFlow(pump);
    const outlets = this.#outlets.map((slot) => partAt(slot)?.id ?? '-').join(' ');
    const key = `${outlets} ${pump.id} ${flow.most} ${driven} ${tank?.id}`;
    const main =
      this.#mains.get(key) ?? remember(this.#mains, key, this.#main(partAt, pump, flow, tank), MOST_MAINS);
    if (main === undefined) return undefined;
    const { check, pairs, spares } = main;
    const power = driven ? drivePower(this.#space, partAt) : Infinity;
    const points: Point[] = [];
    const isBeaten = (pair: Pair, margin: number) =>
      points.some((p) => p.mass <= pair.mass && p.late <= pair.late && p.margin >= margin);
    for (const pair of pairs) {
      if (isBeaten(pair, cap)) continue;
      const { cents, mass, late } = pair;
      const best: Point = { cents, mass, late, margin: cap };
      if (isOpen?.(best) === false) {
        points.push(best);
        continue;
      }
      let spare = spares.get(pair);
      if (spare === undefined) spares.set(pair, (spare = check.of(this.#trims(pair))));
      const most = Number.isFinite(power) ? spareWith(spare, power) : spare.most;
      const margin = most < 0 ? -1 : Math.min(cap, marginStep(most));
      if (margin < 0 || isBeaten(pair, margin)) continue;
      const point: Point = { ...best, margin };
      if (isOpen?.(point) === true) return [point];
      points.push(point);
    }
    return points;
  }

  #main(partAt: PartAt, pump: PartOf<'pump'>, flow: PumpFlow, tank: Part | undefined): Main | undefined {
    const needs = lineNeeds(this.#space, partAt);
    if (needs === undefined) return undefined;
    const parts = new Map(['pump', ...this.#outlets].map((slot) => [slot, partAt(slot)]));
    const at: PartAt = (slot) => parts.get(slot);
    const tanks = tank === undefined ? this.#options('tank') : [tank];
    const check = new MainCheck(
      this.#space,
      {
        partAt: at,
        pump,
        tanks: tanks.filter((t): t is PartOf<'tank'> => t?.kind === 'tank'),
        carriers: this.#options('carrier'),
        needs,
        flow,
        rated: ratedOf(usedOutlets(this.#space.layout, this.#space.brief), at),
      },
      this.#shared,
    );
    const pairs = this.#pairs.filter(({ regulator: r }) => r.setMax >= needs.set && r.setMin <= needs.lowest);
    return { check, pairs, spares: new Map() };
  }

  #trims({ regulator, agitator }: Pair) {
    const valves = agitator === undefined ? [undefined] : this.#options('agitation-valve');
    const key = `any ${regulator.id} ${agitator?.id}`;
    return { key, regulator, hoses: this.#options('return-hose'), agitator, valves };
  }

  /** A pump moves at least what the outlets must get, and no more than at its highest speed. */
  #anyFlow(pump: PartOf<'pump'>): PumpFlow {
    const least = askedFlows(this.#space);
    const most = pump.law.action === 'displacement' ? pump.law.displacement * pump.maxSpeed : Infinity;
    return { least, most, slowest: Math.min(most, Math.max(0, ...least)) };
  }

  #options(slot: string): AnyOf {
    return this.#space.slots.find((s) => s.id === slot)?.options ?? [undefined];
  }
}
