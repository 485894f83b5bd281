import type { WholeDayInput } from './day-input.ts';

/** What is going on between two moments. */
export type DayPhase =
  | 'prepare'
  | 'fill'
  | 'mix'
  | 'drive'
  | 'set-out'
  | 'work'
  | 'take-up'
  | 'move'
  | 'refuel'
  | 'flush'
  | 'close';

/** What a phase does to the stores of the rig, for each second of it. */
export interface PhaseRates {
  /** Liquid into the tank; negative when sprayed [m3/s]. */
  readonly liquid?: number;
  readonly engine?: boolean;
  /** Driving speed [m/s]. */
  readonly speed?: number;
  /** Current drawn [A]. */
  readonly current?: number;
}

/** A moment too short to count: rounding may leave less than this between two times [s]. */
export const MOMENT = 1e-7;

/** More steps than any real day has: a sign of units or hoses far too small. */
const MOST_STEPS = 20000;

/** Time, tank, fuel and battery of the rig as the day goes on, with the record of it. */
export class DayClock {
  time = 0;
  tank: number;
  fuel: number;
  charge: number;
  fuelBurnt = 0;
  distance = 0;
  filled: number;
  sprayed = 0;
  flat = false;
  /** Out of fuel with too little time left to fetch more. */
  dry = false;
  readonly times: number[] = [];
  readonly phases: DayPhase[] = [];
  readonly tanks: number[] = [];
  readonly masses: number[] = [];
  readonly charges: number[] = [];
  leastCharge = Infinity;
  greatestMass = 0;
  readonly p: WholeDayInput;
  private steps = 0;

  constructor(p: WholeDayInput) {
    this.p = p;
    this.tank = p.startsFull ? p.tank : 0;
    this.filled = this.tank;
    this.fuel = p.fuelTank;
    this.charge = p.battery;
    this.note('prepare');
  }

  private note(phase: DayPhase): void {
    if (this.steps++ > MOST_STEPS)
      throw new RangeError(
        `the day has more than ${MOST_STEPS} steps; unitVolume ${this.p.unitVolume} m3, hoseLength ${this.p.hoseLength} m or tank ${this.p.tank} m3 must be larger`,
      );
    const mass = this.p.emptyMass + this.tank * this.p.density + this.fuel * this.p.fuelDensity;
    this.greatestMass = Math.max(this.greatestMass, mass);
    this.leastCharge = Math.min(this.leastCharge, this.charge);
    if (!this.p.moments) return;
    this.times.push(this.time);
    this.phases.push(phase);
    this.tanks.push(this.tank);
    this.masses.push(mass);
    this.charges.push(this.charge);
  }

  private netDrain(rates: PhaseRates): number {
    return (rates.current ?? 0) - (rates.engine === true ? this.p.chargeCurrent : 0);
  }

  private burn(rates: PhaseRates): number {
    return (rates.engine === true ? this.p.fuelRate : 0) + (rates.speed ?? 0) * this.p.fuelPerDistance;
  }

  /** Fills the fuel tank up. */
  refuel(): void {
    this.time += this.p.refuelTime;
    this.fuel = this.p.fuelTank;
    this.note('refuel');
  }

  /**
   * Lets a phase run. Runs dry of fuel: fills up and goes on, while `until` allows. Battery flat, or dry with
   * no time to fill up: stops at that moment.
   */
  run(phase: DayPhase, duration: number, rates: PhaseRates, until = Infinity): void {
    let left = duration;
    while (left > MOMENT && !this.flat && !this.dry) {
      const room = until - this.time;
      if (room <= MOMENT) return;
      const burn = this.burn(rates);
      const drain = this.netDrain(rates);
      const fuelLasts = burn > 0 ? this.fuel / burn : Infinity;
      const chargeLasts = this.p.battery > 0 && drain > 0 ? this.charge / drain : Infinity;
      const step = Math.min(left, room, fuelLasts, chargeLasts);
      this.step(phase, step, rates, burn, drain);
      left -= step;
      if (step === chargeLasts && left > MOMENT) this.flat = true;
      else if (step === fuelLasts && left > MOMENT && until - this.time > this.p.refuelTime) this.refuel();
      else if (step === fuelLasts && left > MOMENT) {
        this.dry = true;
        return;
      }
    }
  }

  private step(phase: DayPhase, step: number, rates: PhaseRates, burn: number, drain: number): void {
    const liquid = (rates.liquid ?? 0) * step;
    this.time += step;
    this.tank = Math.max(0, this.tank + liquid);
    if (liquid > 0) this.filled += liquid;
    else this.sprayed -= liquid;
    this.fuel = Math.max(0, this.fuel - burn * step);
    this.fuelBurnt += burn * step;
    this.distance += (rates.speed ?? 0) * step;
    this.charge = Math.min(this.p.battery, Math.max(0, this.charge - drain * step));
    if (step > 0) this.note(phase);
  }
}
