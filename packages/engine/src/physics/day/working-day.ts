import { DayClock, MOMENT, type DayPhase } from './day-clock.ts';
import { wholeDay, type DayInput } from './day-input.ts';
import { dayPlan } from './day-plan.ts';
import { nextLoad } from './next-load.ts';

/** Below this volume, a millilitre, a load or a rest counts as nothing; sprayed at any flow it still lasts a MOMENT [m3]. */
const NOTHING = 1e-6;

/** What a day yields, and how the rig stood at each moment of it. */
export interface DayResult {
  readonly units: number;
  readonly area: number;
  readonly sprayed: number;
  readonly filled: number;
  readonly left: number;
  readonly fills: number;
  readonly stops: number;
  readonly product: number;
  readonly flushWater: number;
  readonly fuel: number;
  readonly distance: number;
  readonly workTime: number;
  readonly triggerTime: number;
  readonly fillTime: number;
  readonly leastCharge: number;
  readonly greatestMass: number;
  readonly limitedBy: 'time' | 'work' | 'battery';
  readonly times: readonly number[];
  readonly phases: readonly DayPhase[];
  readonly tanks: readonly number[];
  readonly masses: readonly number[];
  readonly charges: readonly number[];
}

/**
 * A working day of a rig, step by step: fill, mix, drive, set out the hose, spray, take up, move, refill, flush.
 *
 * @formula the sum of its steps; a refill only as large as can still be sprayed before the work must end
 * @param p.dayLength whole working day [s] 0..86400
 * @param p.tank volume of the tank [m3] 0.001..100
 * @param p.flow flow with the trigger open, or of the whole boom [m3/s] 1e-6..1
 * @param p.unitVolume mix that one unit takes: a tree, a roof, an acre [m3] 1e-5..100
 * @param p.unitArea ground that one unit stands for [m2] 0.01..1e6
 * @param p.fillFlow flow the tank is filled with [m3/s] 1e-6..1
 * @param p.unusable liquid the pump cannot draw, default 0 [m3] 0..100
 * @param p.startsFull the tank is full and mixed in the morning, default no [yes/no]
 * @param p.moments the record of each moment is kept, default yes; without it the lists below are empty [yes/no]
 * @param p.wantedUnits units there are to do, default without end [-] 0..
 * @param p.preparation checks and clothing in the morning, default 0 [s] 0..86400
 * @param p.closing putting away at the end, default 0 [s] 0..86400
 * @param p.flushTime rinsing at the end, default 0 [s] 0..86400
 * @param p.flushVolume water for it, default 0 [m3] 0..100
 * @param p.fillDistance way from the work to the water, default 0: water at the work [m] 0..200000
 * @param p.roadSpeed speed on that way, default 8 [m/s] 0.1..40
 * @param p.connectTime coupling up and off at the water, default 0 [s] 0..36000
 * @param p.mixTime mixing each load, default 0 [s] 0..36000
 * @param p.pauseTime walking, aiming or turning for each unit, default 0 [s] 0..36000
 * @param p.workSpeed speed over ground while spraying, for fuel and distance, default 0: stands [m/s] 0..30
 * @param p.hoseLength hose walked out at each place of the rig, default 0: sprays while it drives [m] 0..500
 * @param p.hoseShare share of the circle round the rig that the hose can serve, default 0.5 [-] 0.01..1
 * @param p.hoseSpeed speed of walking it out and of reeling it in, default 0.8 [m/s] 0.05..5
 * @param p.stopTime parking and making ready at each place, default 0 [s] 0..36000
 * @param p.moveSpeed speed from place to place, default 2 [m/s] 0.1..40
 * @param p.productShare product by volume in the mix, default 0 [-] 0..1
 * @param p.emptyMass mass of the rig without liquid and fuel, default 0 [kg] 0..50000
 * @param p.density density of the mix, default 1000 [kg/m3] 500..2500
 * @param p.fuelTank fuel carried, default 0: no engine [m3] 0..2
 * @param p.fuelDensity density of the fuel, default 745 [kg/m3] 500..1000
 * @param p.fuelRate fuel while the pump runs, default 0 [m3/s] 0..1e-4
 * @param p.fuelPerDistance fuel for driving, default 0 [m2] 0..1e-5
 * @param p.refuelTime time to fill it up, default 300 [s] 0..36000
 * @param p.battery charge that may be used, default 0: no battery [A.s] 0..1e8
 * @param p.sprayCurrent current with the trigger open, default 0 [A] 0..500
 * @param p.reelCurrent current while reeling in, default 0 [A] 0..500
 * @param p.chargeCurrent current that the running engine gives back, default 0 [A] 0..500
 * @result units units done [-]
 * @result area ground done [m2]
 * @result sprayed mix sprayed [m3]
 * @result filled mix put into the tank, the morning's load taken in [m3]
 * @result left mix left in the tank before the flush [m3]
 * @result fills fills during the day [-]
 * @result stops places the hose was set out at, again after each trip for water [-]
 * @result product product used, in what was filled [m3]
 * @result flushWater water for the flush [m3]
 * @result fuel fuel burnt [m3]
 * @result distance distance driven [m]
 * @result workTime time at work, pauses taken in [s]
 * @result triggerTime time with the trigger open [s]
 * @result fillTime time for water: driving to it, coupling, filling, mixing [s]
 * @result leastCharge lowest charge of the battery [A.s]
 * @result greatestMass greatest mass of the rig [kg]
 * @result limitedBy what ended the work [one of time, work, battery]
 * @result times end of each step [list of s]
 * @result phases what each step was [list of text]
 * @result tanks liquid in the tank at the end of each step [list of m3]
 * @result masses mass of the rig at the end of each step [list of kg]
 * @result charges charge at the end of each step [list of A.s]
 * @valid The yard is where the water is. Refills and turns are steps of their own: never take a field efficiency off besides. A flat battery ends the work.
 * @throws RangeError when a field is outside its range, or the steps are too small to be a real day
 * @source Balance of time and liquid; refill, move and hose times are the user's own (common practice, no source).
 */
export function workingDay(p: DayInput): DayResult {
  const input = wholeDay(p);
  const plan = dayPlan(input);
  const clock = new DayClock(input);
  const reserve = plan.takeUp + plan.travel + input.flushTime + input.closing;
  const workEnd = input.dayLength - reserve;
  const count = { fills: 0, stops: 0, workTime: 0, fillTime: 0 };
  let atStop = 0;
  let hoseOut = false;
  let atWork = false;
  let byHand = false;

  const drive = (until: number) => {
    clock.run('drive', plan.travel, { speed: input.roadSpeed }, until);
  };
  const setOut = () => {
    count.stops++;
    clock.run('set-out', plan.setOut, {}, workEnd);
    hoseOut = plan.setOut > 0;
  };
  const takeUp = (until: number) => {
    if (hoseOut) clock.run('take-up', plan.takeUp, { current: byHand ? 0 : input.reelCurrent }, until);
    hoseOut = false;
  };
  const wanted = () => plan.wantedVolume - clock.sprayed;
  const rest = () => clock.tank - input.unusable;

  /** Goes for water and comes back; false when it is not worth it any more. */
  const refill = (): boolean => {
    const began = clock.time;
    const takesUp = plan.mustTakeUp && hoseOut;
    const stopDone = atStop >= plan.stopVolume - NOTHING;
    const staysOut = hoseOut && !takesUp;
    // From back at work to spraying: on to the next place, or where it stood.
    const ready = stopDone
      ? (staysOut ? plan.takeUp : 0) + plan.move + plan.setOut
      : staysOut
        ? 0
        : plan.setOut;
    // A tank that stands below its unusable rest must be filled through it first.
    const dead = Math.max(0, -rest());
    const fixed =
      (takesUp ? plan.takeUp : 0) +
      (atWork ? plan.travel : 0) +
      input.connectTime +
      dead / input.fillFlow +
      input.mixTime +
      plan.travel +
      ready;
    const most = Math.min(plan.usable - Math.max(0, rest()), wanted());
    const load = nextLoad(plan, workEnd - clock.time - fixed, input.fillFlow, most, stopDone ? 0 : atStop);
    if (load <= NOTHING) return false;
    if (plan.mustTakeUp) takeUp(workEnd);
    if (atWork) drive(workEnd);
    atWork = false;
    clock.run('fill', input.connectTime, {}, workEnd);
    clock.run('fill', (load + dead) / input.fillFlow, { liquid: input.fillFlow, engine: true }, workEnd);
    clock.run('mix', input.mixTime, { engine: true }, workEnd);
    if (input.fuelTank > 0 && clock.fuel < input.fuelTank / 2 && clock.time + input.refuelTime < workEnd)
      clock.refuel();
    drive(workEnd);
    atWork = true;
    count.fills++;
    count.fillTime += clock.time - began;
    return true;
  };

  /** Sprays at this place until it is done, the tank is empty or the time is up. */
  const work = () => {
    const began = clock.time;
    const before = clock.sprayed;
    const volume = Math.min(plan.stopVolume - atStop, rest(), wanted());
    clock.run(
      'work',
      volume / plan.workRate,
      {
        liquid: -plan.workRate,
        engine: true,
        current: input.sprayCurrent * plan.triggerShare,
        speed: input.workSpeed * plan.triggerShare,
      },
      workEnd,
    );
    atStop += clock.sprayed - before;
    count.workTime += clock.time - began;
  };

  clock.run('prepare', input.preparation, {}, workEnd);
  if (input.startsFull && clock.time + plan.travel < workEnd) {
    drive(workEnd);
    atWork = true;
  }
  while (clock.time < workEnd - MOMENT && !clock.flat && !clock.dry && wanted() > NOTHING) {
    if (rest() <= NOTHING && !refill()) break;
    if (atStop >= plan.stopVolume - NOTHING) {
      takeUp(workEnd);
      clock.run('move', plan.move, { speed: input.moveSpeed }, workEnd);
      atStop = 0;
    }
    if (!hoseOut && plan.setOut > 0) setOut();
    work();
  }
  const limitedBy = clock.flat ? 'battery' : wanted() <= NOTHING ? 'work' : 'time';
  // A flat battery ends the spraying: the hose then comes in by hand, and the way home does not hang on it.
  byHand = clock.flat;
  clock.flat = false;
  clock.dry = false;
  const { sprayed, tank: left } = clock;
  if (workEnd > 0) {
    takeUp(Infinity);
    if (atWork) drive(Infinity);
    clock.run('flush', input.flushTime, {});
    clock.run('close', input.closing, {});
  }
  return {
    units: sprayed / input.unitVolume,
    area: (sprayed / input.unitVolume) * input.unitArea,
    sprayed,
    filled: clock.filled,
    left,
    ...count,
    product: clock.filled * input.productShare,
    flushWater: input.flushVolume,
    fuel: clock.fuelBurnt,
    distance: clock.distance,
    triggerTime: sprayed / input.flow,
    leastCharge: clock.leastCharge,
    greatestMass: clock.greatestMass,
    limitedBy,
    times: clock.times,
    phases: clock.phases,
    tanks: clock.tanks,
    masses: clock.masses,
    charges: clock.charges,
  };
}
