import type { Kind } from '../../catalogue/index.ts';
import type { FaultId } from './faults.data.ts';

/** Something that the person at the rig can look at or try, answered by yes or no. */
export interface Look {
  readonly question: string;
  /** How likely a yes is with each fault, and with any other [-]: judgement. */
  readonly yes: Readonly<Partial<Record<FaultId, number>>>;
  readonly otherwise: number;
  /** Kinds of parts whose names are told with the question. */
  readonly names?: readonly Kind[];
  /** Seen or heard without a tool and without opening anything: asked in the first round. */
  readonly byEye?: true;
}

/** How often a look answers right is judgement, no source. */
export const LOOKS = {
  'other-tip': {
    question: 'Put in a new tip of the size on the list: does everything come right?',
    yes: {
      'worn-tip': 0.95,
      'blocked-tip': 0.95,
      'tip-too-small': 0.95,
      'tip-too-large': 0.95,
    },
    names: ['tip', 'nozzle'],
    otherwise: 0.03,
  },
  'tip-mark': {
    question: 'Pressure off: is the size on the tip another one than on the list?',
    yes: { 'tip-too-small': 0.95, 'tip-too-large': 0.95 },
    names: ['tip', 'nozzle'],
    otherwise: 0.02,
    byEye: true,
  },
  'dirt-in-tip': {
    question: 'Pressure off and tip out: is anything stuck in it?',
    yes: { 'blocked-tip': 0.93 },
    otherwise: 0.05,
  },
  'dirty-screen': {
    question: 'Tank valve shut and strainer open: is the screen covered?',
    yes: { 'clogged-strainer': 0.96 },
    otherwise: 0.08,
  },
  bubbles: {
    question: 'Does the needle tremble, or are there bubbles in the return or in front of the pump?',
    yes: { 'air-in-suction': 0.92, 'clogged-strainer': 0.2, 'collapsed-suction': 0.2, 'worn-pump': 0.15 },
    otherwise: 0.05,
    byEye: true,
  },
  'flat-suction': {
    question: 'Is the suction hose flat, soft or kinked while it runs?',
    yes: { 'collapsed-suction': 0.93 },
    otherwise: 0.03,
    byEye: true,
  },
  handles: {
    question: 'Does any valve handle stand where it should not?',
    yes: { 'valve-half-shut': 0.96, 'agitation-left-open': 0.96 },
    otherwise: 0.03,
    byEye: true,
  },
  'hose-kink': {
    question: 'Walk along the hose, never feel for leaks by hand: is it kinked, crushed or flat anywhere?',
    yes: { 'kinked-hose': 0.93 },
    otherwise: 0.05,
    byEye: true,
  },
  'set-screw': {
    question: 'Turn the set screw half a turn and back: does the gauge fail to follow and return?',
    yes: { 'held-low': 0.75, 'held-high': 0.75 },
    otherwise: 0.08,
  },
  'slack-belt': {
    question: 'Engine off: is the belt slack or glazed, or did it squeal?',
    yes: { 'slipping-belt': 0.92 },
    otherwise: 0.06,
  },
  'low-voltage': {
    question: 'Is the voltage at the leads of the pump under 11.5 V while it runs?',
    yes: { 'flat-battery': 0.95 },
    otherwise: 0.04,
  },
  'second-gauge': {
    question: 'Pressure off, another gauge in its place: does it show something else?',
    yes: { 'wrong-gauge': 0.96 },
    otherwise: 0.03,
  },
  'pump-valves': {
    question: 'Pump apart, everything shut off and pressure off: are valves, seats or seals worn?',
    yes: { 'worn-pump': 0.93 },
    otherwise: 0.07,
  },
  'loose-jet': {
    question: 'Is the bore of the jet larger than it was, or out of round?',
    yes: { 'worn-jet': 0.9 },
    otherwise: 0.05,
  },
  'gun-apart': {
    question: 'Pressure off, gun apart: is its screen covered, or does its valve not open fully?',
    yes: { 'clogged-gun': 0.93 },
    otherwise: 0.05,
  },
} as const satisfies Record<string, Look>;

export type LookId = keyof typeof LOOKS;

export const lookOf = (id: LookId): Look => LOOKS[id];

/** Probability of a yes when a fault is the cause; with nothing wrong, or something else, that of any other. */
export function yesWith(id: LookId, fault: FaultId | undefined): number {
  const look = lookOf(id);
  return (fault === undefined ? undefined : look.yes[fault]) ?? look.otherwise;
}
