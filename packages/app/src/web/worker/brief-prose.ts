import type { Work } from '@spraywright/engine/catalogue';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Brief, Duty, Rig, Site } from '@spraywright/engine/rig';
import type { Given, Prose } from '../protocol.ts';
import { Givens } from './given.ts';
import { OUTLET_WORDS } from './outlet-words.ts';

/** What is aimed at, as the customer of each kind of work says it. */
const AIMED_AT: Readonly<Record<Work, string>> = {
  'roof-wash': 'the wall',
  'tractor-spot-and-boom': 'the brush',
  'spot-and-drench': 'the leaves',
  'tall-trees': 'the leaves',
  'nurse-and-batch': 'the load',
  'road-and-dust': 'the road',
  'utility-spot': 'the leaves',
};

const CARRIED: Readonly<Record<Brief['carrier']['form'], string>> = {
  skid: 'On a skid in the bed',
  'three-point': 'On the three-point hitch',
  cart: 'On a cart behind their vehicle',
  wagon: 'On a wagon behind their vehicle',
  'tandem-trailer': 'On a tandem-axle trailer',
  'utility-bed': 'In the bed of a utility vehicle',
};

/** The brief as prose, one sentence a line, with every given value in a box of its own. The duty in hand comes first. */
export function briefProse(raw: unknown, rig: Rig, duty: Duty, site: Site, units: UnitSystem): Prose[] {
  const g = new Givens(raw, units);
  const { brief } = rig;
  const at = `brief.duties.${brief.duties.findIndex((d) => d.id === duty.id)}`;
  return [
    callerLine(g),
    ...targetLine(g, at, brief, duty),
    ...outletLine(g, at, duty),
    standLine(g, at, duty),
    liquidLine(g, at, brief, duty),
    carrierLine(g, brief),
    siteLine(g, site),
    ...limitLine(g, brief),
  ];
}

/** Who calls and what the job is called. */
function callerLine(g: Givens): Prose {
  return [
    g.text('brief.customer', 'Customer'),
    ' asks for: ',
    g.text('title', 'What the job is called', 'brief.title'),
  ];
}

function targetLine(g: Givens, at: string, brief: Brief, duty: Duty): Prose[] {
  const { target } = duty;
  if (target === undefined) return [];
  const verb = g.choice(
    `${at}.reach`,
    'What the stream must do there',
    [
      ['wetted', 'Wet'],
      ['touched', 'Touch'],
    ],
    'wetted',
  );
  const up = (path: string, label: string) => g.quantity(`${at}.target.${path}`, 'length', label);
  switch (target.aim) {
    case 'height':
      return [
        [
          verb,
          ` ${AIMED_AT[brief.work]} at `,
          up('height', 'Height of the target'),
          ', standing ',
          up('standoff', 'Distance from the target'),
          ' off',
        ],
      ];
    case 'roof':
      return [
        [
          verb,
          ' the roof at ',
          up('height', 'Height of the target'),
          ', ',
          up('distance', 'Distance of the target'),
          ' away',
        ],
      ];
    case 'distance':
      return [[verb, ' the ground ', up('distance', 'Distance of the target'), ' away']];
  }
}

function outletLine(g: Givens, at: string, duty: Duty): Prose[] {
  const lines: Prose[] = [];
  const where = duty.open.map((o) => OUTLET_WORDS[o]).join(' and ');
  if (duty.flow !== undefined || duty.pressure !== undefined) {
    const line: (string | Given)[] = ['At least '];
    if (duty.flow !== undefined) line.push(g.quantity(`${at}.flow`, 'flow', `Least flow at the ${where}`));
    if (duty.pressure !== undefined)
      line.push(
        duty.flow === undefined ? '' : ' at ',
        g.quantity(`${at}.pressure`, 'pressure', `Least pressure at the ${where}`),
      );
    lines.push([...line, ` at the ${where}`]);
  }
  if (duty.application !== undefined)
    lines.push([
      'Lay ',
      g.quantity(`${at}.application.rate`, 'dose', 'Rate over ground'),
      ' in a lane ',
      g.quantity(`${at}.application.width`, 'length', 'Width of the lane'),
      ' wide at ',
      g.quantity(`${at}.application.speed`, 'speed', 'Speed over ground'),
    ]);
  return lines;
}

function standLine(g: Givens, at: string, duty: Duty): Prose {
  const line: (string | Given)[] = [
    'Tank ',
    g.quantity(`${at}.tankLevel`, 'ratio', 'How full the tank is'),
    ' full',
  ];
  if (duty.hoseOut !== undefined)
    line.push(', ', g.quantity(`${at}.hoseOut`, 'length', 'Hose out'), ' of hose out');
  if (duty.outletHeight !== undefined)
    line.push(', outlet ', g.quantity(`${at}.outletHeight`, 'length', 'Height of the outlet'), ' up');
  return line;
}

function liquidLine(g: Givens, at: string, brief: Brief, duty: Duty): Prose {
  const i = brief.liquids.findIndex((l) => l.id === duty.liquid);
  const liquid = brief.liquids[i];
  const sprayed = brief.liquids.map((l): readonly [string, string] => [l.id, l.name]);
  const line: (string | Given)[] = [
    'Sprays ',
    g.choice(`${at}.liquid`, 'Liquid sprayed', sprayed, duty.liquid),
  ];
  if (liquid?.strength !== undefined)
    line.push(' at ', g.number(`brief.liquids.${i}.strength`, 'Strength'), ` ${liquid.strengthUnit ?? ''}`);
  line.push(
    ', ',
    g.choice(
      `${at}.agitate`,
      'Agitation while spraying',
      [
        ['true', 'stirred'],
        ['false', 'not stirred'],
      ],
      'true',
    ),
  );
  return line;
}

function carrierLine(g: Givens, brief: Brief): Prose {
  const line: (string | Given)[] = [CARRIED[brief.carrier.form]];
  const add = (
    path: string,
    before: string,
    dimension: 'mass' | 'rotation' | 'power' | 'current',
    label: string,
    after: string,
  ) => {
    if (g.has(`brief.carrier.${path}`))
      line.push(before, g.quantity(`brief.carrier.${path}`, dimension, label), after);
  };
  add('massLimit', ', which takes ', 'mass', 'Most the vehicle takes', '');
  add('ptoSpeed', ', PTO ', 'rotation', 'Speed of the power take-off', '');
  add('ptoPower', ', ', 'power', 'Power of the power take-off', '');
  add('supplyCurrent', ', ', 'current', 'Current of the 12 V socket', ' from its 12 V socket');
  return line;
}

function siteLine(g: Givens, site: Site): Prose {
  return [
    'Site at ',
    g.quantity('brief.site.altitude', 'length', 'Height above the sea', site.altitude),
    ', ',
    g.quantity('brief.site.temperature', 'temperature', 'Temperature', site.temperature),
    ', wind ',
    g.quantity('brief.site.wind', 'speed', 'Wind', site.wind),
  ];
}

function limitLine(g: Givens, brief: Brief): Prose[] {
  const { budgetCents, readyInDays } = brief.limits;
  const line: (string | Given)[] = [];
  if (budgetCents !== undefined) line.push('Costs at most ', g.money('brief.limits.budgetCents', 'Budget'));
  if (readyInDays !== undefined)
    line.push(
      line.length > 0 ? ', ready in ' : 'Ready in ',
      g.number('brief.limits.readyInDays', 'Working days until it is wanted'),
      ' working days',
    );
  return line.length > 0 ? [line] : [];
}
