import type { Kind, Part } from '../../catalogue/index.ts';

/** When in its life a rig is cared for. */
export const CARE_TIMES = ['set-up', 'start-up', 'daily', 'shut-down', 'winter'] as const;
export type CareTime = (typeof CARE_TIMES)[number];

/** One thing to do, asked by the parts that a rig has. */
export interface CareRule {
  readonly at: CareTime;
  /** Asked when the rig has a part of one of these kinds; always when absent. */
  readonly kinds?: readonly Kind[];
  /** Narrows the parts: an electric start, a lead-acid battery. */
  readonly only?: (part: Part) => boolean;
  /** The one item of this slot, not all of the kind. */
  readonly slot?: string;
  readonly text: string;
  readonly source: string;
}

const HABIT = 'common practice, no source';

/** Steps in the order of the work; figures of one rig are filled in where {braces} stand. */
export const CARE_RULES: readonly CareRule[] = [
  { at: 'set-up', kinds: ['carrier'], text: 'Stand the rig level on firm ground, wheels chocked or the frame resting on its feet.', source: HABIT },
  { at: 'set-up', kinds: ['pto-drive'], text: 'Check that the shields of tractor, shaft and pump are in place and that the shaft neither binds nor parts when the hitch is lifted.', source: HABIT },
  { at: 'set-up', kinds: ['tank'], text: 'Look at the straps or bolts of the tank: tight, none frayed or rusted through.', source: HABIT },
  { at: 'set-up', kinds: ['battery'], text: 'Battery held down, its terminals clean, tight and covered, the fuse in its holder.', source: HABIT },
  { at: 'set-up', kinds: ['motor-pump'], text: "Clamp the leads to the vehicle's supply: red to plus, black to minus, the fuse nearest the battery.", source: HABIT },
  { at: 'set-up', kinds: ['reel'], text: 'Pull out the hose that the work needs; what stays on the reel costs pressure, and the tables below are for the length they name.', source: HABIT },
  { at: 'start-up', kinds: ['engine'], text: "Oil and fuel of the engine at their marks, as the engine maker's sheet says.", source: HABIT },
  { at: 'start-up', kinds: ['strainer'], text: 'Screen of the strainer clean and in place, its bowl tight.', source: HABIT },
  { at: 'start-up', kinds: ['tank'], text: 'Clean water in the tank for the first start, at least to the top of the outlet, and the lid shut.', source: HABIT },
  { at: 'start-up', kinds: ['valve'],
    slot: 'tank-valve', text: 'Open the tank valve: a pump that runs dry is damaged in minutes.', source: HABIT },
  { at: 'start-up', kinds: ['regulator'], text: 'Turn the regulator back to its lowest setting before the pump turns.', source: HABIT },
  { at: 'start-up', kinds: ['engine', 'pto-drive'], text: 'Start it, let it run up to {speed}, and wait until the return runs without air.', source: HABIT },
  { at: 'start-up', kinds: ['motor-pump'], text: 'Switch the pump on and hold the trigger open until no air comes.', source: HABIT },
  { at: 'start-up', kinds: ['regulator'], text: 'Open the outlet, then turn the regulator until the gauge at the pump shows {settings}.', source: 'the proof of this rig' },
  { at: 'start-up', kinds: ['gun'], text: 'Let the trigger go: the gauge must settle, at or under {shut}, and nothing may drip.', source: 'the proof of this rig' },
  { at: 'daily', kinds: ['hose'], text: 'Look over every hose with gloves on: no cut, bulge, kink or wet clamp. A damaged hose is changed before the pump turns.', source: HABIT },
  { at: 'daily', kinds: ['gauge'], text: 'The gauge rests at zero with the pump stopped; one that does not is changed.', source: HABIT },
  { at: 'daily', kinds: ['strainer'], text: 'Empty and brush the screen of the strainer; more often in dirty water.', source: HABIT },
  { at: 'daily', kinds: ['tip', 'nozzle'], text: 'Catch the flow as the tables below say. A tip that gives 10 % more than when new is worn: change it.', source: 'US extension guidance, 10 % over the mean, as in the yard test' },
  { at: 'daily', kinds: ['engine'], text: 'Oil of the engine before the first start; its cooling air free of leaves.', source: HABIT },
  { at: 'daily', kinds: ['reduction'], only: (p) => p.kind === 'reduction' && p.type === 'belt', text: 'Belt neither cracked nor loose, its guard on. How far it may give: unknown to us, see the sheet of its maker.', source: HABIT },
  { at: 'daily', kinds: ['pump'], only: (p) => p.kind === 'pump' && p.law.action === 'displacement' && p.law.mechanism === 'diaphragm', text: 'Oil of the pump at its mark and clear: milky oil means a torn diaphragm; stop and change it.', source: HABIT },
  { at: 'daily', kinds: ['carrier'], only: (p) => p.kind === 'carrier' && p.axles.length > 0, text: 'Tyres, wheel nuts, coupler and chains before it leaves the yard. Pressure and torque: on the tyre and the sheet of its maker.', source: HABIT },
  { at: 'daily', kinds: ['battery'], text: 'Charge of the battery before work, and again after it.', source: HABIT },
  { at: 'shut-down', kinds: ['engine', 'pto-drive', 'motor-pump'], text: 'Stop the drive. Take the key, the plug cap or the fuse.', source: HABIT },
  { at: 'shut-down', kinds: ['gun', 'boom'], text: 'Open the outlet until the gauge reads zero, then lock the trigger: pressure stays in the hose after the pump stops.', source: HABIT },
  { at: 'shut-down', kinds: ['valve'],
    slot: 'tank-valve', text: 'Shut the tank valve.', source: HABIT },
  { at: 'winter', kinds: ['tank'], text: 'Rinse the rig as above, then drain the tank by its drain until it only drips.', source: HABIT },
  { at: 'winter', kinds: ['strainer'], text: 'Open the bowl of the strainer and leave it off until the pump has been emptied.', source: HABIT },
  { at: 'winter', kinds: ['regulator'], text: 'Turn the regulator to its lowest setting, so that nothing stands behind its seat.', source: HABIT },
  { at: 'winter', kinds: ['gun', 'boom'], text: 'Open every outlet and let hose, reel and gun run empty; hold the gun low.', source: HABIT },
  { at: 'winter', kinds: ['gauge'], text: 'Take the gauge indoors: its tube bursts before the pump does.', source: HABIT },
  { at: 'winter', kinds: ['battery'], text: 'Take the battery indoors and keep it charged.', source: HABIT },
  { at: 'winter', kinds: ['engine'], text: "Fuel and engine as the engine maker's sheet says for storage.", source: HABIT },
];
