/** A kind of fault of a rig in service. */
export interface Fault {
  readonly name: string;
  /** How often it occurs, against the others; only their proportion counts. */
  readonly rate: number;
  /** Factors that it brings, from slight to bad; what they multiply is in `fault-cases.ts` [-]. */
  readonly slight: number;
  readonly bad: number;
  /** What goes to the customer; undefined where nothing need be sent. */
  readonly send?: string;
  readonly mend: string;
}

/** Rates, ranges and remedies are judgement: nobody has published how often spray rigs fail in which way. */
export const FAULT_SOURCE = 'judgement, no source: rates and ranges of faults';

export const FAULTS = {
  'worn-tip': {
    name: 'worn tip',
    rate: 16,
    slight: 1.1,
    bad: 1.6,
    send: 'a new one',
    mend: 'change it; catch its flow every season',
  },
  'blocked-tip': {
    name: 'partly blocked tip',
    rate: 10,
    slight: 0.88,
    bad: 0.4,
    mend: 'pressure off, gloves on, clean it with a soft brush; never blow through it by mouth',
  },
  'tip-too-small': {
    name: 'tip of a smaller size than this rig has',
    rate: 3,
    slight: 0.8,
    bad: 0.5,
    send: 'the size on the list',
    mend: 'put in the size on the list',
  },
  'tip-too-large': {
    name: 'tip of a larger size than this rig has',
    rate: 3,
    slight: 1.25,
    bad: 1.9,
    send: 'the size on the list',
    mend: 'put in the size on the list',
  },
  'clogged-strainer': {
    name: 'clogged strainer',
    rate: 16,
    slight: 0.4,
    bad: 0.08,
    mend: 'shut the tank valve, open it, wash the screen; change a torn screen',
  },
  'worn-pump': {
    name: 'pump that slips inside: worn, or valves that do not seat',
    rate: 11,
    slight: 0.92,
    bad: 0.55,
    send: 'its repair kit',
    mend: 'look at its valves first, then put in the kit',
  },
  'air-in-suction': {
    name: 'air drawn in on the suction side',
    rate: 10,
    slight: 0.9,
    bad: 0.5,
    send: 'suction gaskets and clamps',
    mend: 'tighten clamps and strainer bowl, look at the gasket and at the level in the tank',
  },
  'held-low': {
    name: 'regulator that opens too early: set low, dirt on its seat, weak spring',
    rate: 8,
    slight: 0.87,
    bad: 0.4,
    send: 'its seat and spring',
    mend: 'set it again by a checked gauge; clean or change its seat',
  },
  'held-high': {
    name: 'regulator that opens too late: set high, or stuck',
    rate: 4,
    slight: 1.15,
    bad: 1.6,
    send: 'its seat and spring',
    mend: 'stop work until it is set again by a checked gauge: too much pressure bursts hoses',
  },
  'low-speed': {
    name: 'drive that turns too slowly',
    rate: 7,
    slight: 0.93,
    bad: 0.6,
    mend: 'set the throttle or PTO speed by a tachometer under load',
  },
  'slipping-belt': {
    name: 'belt that slips',
    rate: 5,
    slight: 0.93,
    bad: 0.6,
    send: 'a belt',
    mend: 'engine off; tighten or change it, guard back on',
  },
  'kinked-hose': {
    name: 'kinked or crushed hose',
    rate: 4,
    slight: 0.85,
    bad: 0.5,
    send: 'a length of it',
    mend: 'lay it out straight; change it where it was crushed',
  },
  'collapsed-suction': {
    name: 'suction hose sucked flat or kinked',
    rate: 3,
    slight: 0.7,
    bad: 0.4,
    send: 'a length of it',
    mend: 'change it for one that stands the vacuum',
  },
  'valve-half-shut': {
    name: 'tank valve half shut',
    rate: 3,
    slight: 0.4,
    bad: 0.1,
    mend: 'open it fully',
  },
  'agitation-left-open': {
    name: 'agitation left open',
    rate: 5,
    slight: 1,
    bad: 1,
    mend: 'shut it where the duty goes without',
  },
  'worn-jet': {
    name: 'worn jet',
    rate: 2,
    slight: 1.2,
    bad: 2,
    send: 'a jet',
    mend: 'change it',
  },
  'clogged-gun': {
    name: 'gun that does not open fully, or its screen clogged',
    rate: 3,
    slight: 0.5,
    bad: 0.15,
    send: 'its seal kit',
    mend: 'pressure off, trigger locked; clean its screen and valve',
  },
  'flat-battery': {
    name: 'low voltage at the pump: flat battery or a bad lead',
    rate: 10,
    slight: 0.9,
    bad: 0.55,
    mend: 'charge the battery, clean the terminals, then read the voltage at the pump while it runs',
  },
  'wrong-gauge': {
    name: 'gauge that shows wrong',
    rate: 5,
    slight: 0.9,
    bad: 0.6,
    send: 'a gauge',
    mend: 'check it against another one',
  },
} as const satisfies Record<string, Fault>;

export type FaultId = keyof typeof FAULTS;

export const faultOf = (id: FaultId): Fault => FAULTS[id];
