import type { LayoutLine, Slot } from './layout.ts';

const slot = (id: string, name: string, kinds: Slot['kinds'], more: Partial<Slot> = {}): Slot => ({
  id,
  name,
  kinds,
  ...more,
});

const SUCTION_HOSE = slot('suction-hose', 'Suction hose', ['hose'], { only: { use: ['suction', 'either'] } });
const STRAINER = slot('strainer', 'Suction strainer', ['strainer']);
const TANK = slot('tank', 'Tank', ['tank']);
const TANK_VALVE = slot('tank-valve', 'Tank valve', ['valve'], {
  only: { form: ['ball-full-port', 'ball-standard-port'] },
});
const CARRIER = slot('carrier', 'Carrier', ['carrier']);
const REGULATOR = slot('regulator', 'Unloader or regulator', ['regulator'], {
  only: { action: ['unloader', 'bypass', 'relief'] },
});
const RETURN_HOSE = slot('return-hose', 'Return hose', ['hose'], { only: { use: ['delivery', 'either'] } });
const AGITATION_VALVE = slot('agitation-valve', 'Agitation valve', ['valve'], {
  only: { form: ['ball-full-port', 'ball-standard-port'] },
  optional: true,
});
const AGITATOR = slot('agitator', 'Agitator', ['agitator'], { optional: true });
const GAUGE = slot('gauge', 'Gauge', ['gauge'], { optional: true });
const BATTERY = slot('battery', 'Battery', ['battery'], { optional: true });
const ENGINE = slot('engine', 'Engine', ['engine']);
const REDUCTION = slot('reduction', 'Belt or gear', ['reduction']);
const PTO = slot('pto', 'PTO drive', ['pto-drive']);
const displacementPump = slot('pump', 'Pump', ['pump'], { only: { 'law.action': ['displacement'] } });
const centrifugalPump = slot('pump', 'Pump', ['pump'], { only: { 'law.action': ['centrifugal'] } });

const GUN_SLOTS: readonly Slot[] = [
  slot('reel', 'Reel', ['reel'], { optional: true }),
  slot('hose', 'Delivery hose', ['hose'], { only: { use: ['delivery', 'either'] } }),
  slot('gun', 'Gun', ['gun']),
  slot('tip', 'Tip', ['tip']),
];

const SUCTION: LayoutLine = {
  id: 'suction',
  name: 'Tank to pump',
  from: 'tank',
  to: 'pump-in',
  run: ['tank-valve', 'suction-hose', 'strainer'],
  elbows: 1,
  opens: 'always',
};
const PUMP: LayoutLine = {
  id: 'pump',
  name: 'Pump',
  from: 'pump-in',
  to: 'manifold',
  run: ['pump'],
  opens: 'always',
};
const BYPASS: LayoutLine = {
  id: 'bypass',
  name: 'Unloader to tank',
  from: 'manifold',
  to: 'tank',
  run: ['regulator', 'return-hose'],
  elbows: 2,
  opens: 'always',
};
const AGITATION: LayoutLine = {
  id: 'agitation',
  name: 'Agitation',
  from: 'manifold',
  to: 'tank',
  run: ['agitation-valve', 'agitator'],
  elbows: 2,
  teesBranch: 1,
  opens: 'agitation',
};
const GUN: LayoutLine = {
  id: 'gun',
  name: 'Gun line',
  from: 'manifold',
  to: 'air',
  run: ['reel', 'hose', 'gun', 'tip'],
  elbows: 1,
  teesBranch: 1,
  opens: 'gun',
};
const BOOM_SLOTS: readonly Slot[] = [
  slot('boom-valve', 'Boom valve', ['valve'], {
    only: { form: ['ball-full-port', 'ball-standard-port', 'solenoid'] },
  }),
  slot('boom-hose', 'Boom hose', ['hose'], { only: { use: ['delivery', 'either'] } }),
  slot('boom', 'Boom', ['boom']),
  slot('nozzle', 'Nozzles', ['nozzle']),
];
const boomLine = (opens: 'boom' | 'bar'): LayoutLine => ({
  id: opens,
  name: opens === 'boom' ? 'Boom line' : 'Spray bar',
  from: 'manifold',
  to: 'air',
  run: ['boom-valve', 'boom-hose', 'boom', 'nozzle'],
  elbows: 2,
  teesBranch: 1,
  opens,
});
const NODES = { 'pump-in': '0.2 m', manifold: '0.35 m' };
const PD_BASE = [CARRIER, TANK, TANK_VALVE, SUCTION_HOSE, STRAINER, displacementPump];
const AROUND = [REGULATOR, RETURN_HOSE, AGITATION_VALVE, AGITATOR, GAUGE, BATTERY];

/** The seven families that come with the program, as documents of the same format as a shop's own. */
export const LAYOUT_DOCUMENTS: readonly { readonly id: string; readonly [field: string]: unknown }[] = [
  {
    format: 'spraywright-layout',
    id: 'roof-skid',
    name: 'Soft-wash skid with engine pump',
    works: ['roof-wash'],
    nodes: NODES,
    slots: [...PD_BASE, ENGINE, REDUCTION, ...AROUND, ...GUN_SLOTS],
    lines: [SUCTION, PUMP, BYPASS, AGITATION, GUN],
  },
  {
    format: 'spraywright-layout',
    id: 'three-point',
    name: 'Three-point rig, PTO pump, reel and boom',
    works: ['tractor-spot-and-boom'],
    nodes: NODES,
    slots: [...PD_BASE, PTO, ...AROUND, ...GUN_SLOTS, ...BOOM_SLOTS],
    lines: [SUCTION, PUMP, BYPASS, AGITATION, GUN, boomLine('boom')],
  },
  {
    format: 'spraywright-layout',
    id: 'light-cart',
    name: 'Light cart with small engine',
    works: ['spot-and-drench'],
    nodes: NODES,
    slots: [...PD_BASE, ENGINE, REDUCTION, ...AROUND, ...GUN_SLOTS],
    lines: [SUCTION, PUMP, BYPASS, AGITATION, GUN],
  },
  {
    format: 'spraywright-layout',
    id: 'heavy-cart',
    name: 'Heavy cart for tall trees',
    works: ['tall-trees'],
    nodes: NODES,
    slots: [...PD_BASE, ENGINE, REDUCTION, ...AROUND, ...GUN_SLOTS],
    lines: [SUCTION, PUMP, BYPASS, AGITATION, GUN],
  },
  {
    format: 'spraywright-layout',
    id: 'nurse-trailer',
    name: 'Nurse and batch trailer with transfer pump',
    works: ['nurse-and-batch'],
    nodes: NODES,
    slots: [
      CARRIER,
      TANK,
      TANK_VALVE,
      SUCTION_HOSE,
      STRAINER,
      centrifugalPump,
      ENGINE,
      REDUCTION,
      AGITATION_VALVE,
      AGITATOR,
      slot('eductor-valve', 'Eductor valve', ['valve'], {
        only: { form: ['ball-full-port', 'ball-standard-port'] },
        optional: true,
      }),
      slot('eductor', 'Induction eductor', ['eductor'], { optional: true }),
      GAUGE,
      BATTERY,
      slot('transfer-valve', 'Transfer valve', ['valve'], {
        only: { form: ['ball-full-port', 'ball-standard-port'] },
      }),
      slot('transfer-hose', 'Transfer hose', ['hose'], { only: { use: ['delivery', 'either'] } }),
    ],
    lines: [
      SUCTION,
      PUMP,
      AGITATION,
      {
        id: 'induction',
        name: 'Induction',
        from: 'manifold',
        to: 'tank',
        run: ['eductor-valve', 'eductor'],
        elbows: 2,
        teesBranch: 1,
        opens: 'agitation',
      },
      {
        id: 'transfer',
        name: 'Transfer line',
        from: 'manifold',
        to: 'air',
        run: ['transfer-valve', 'transfer-hose'],
        elbows: 1,
        teesRun: 1,
        opens: 'transfer',
      },
    ],
  },
  {
    format: 'spraywright-layout',
    id: 'road-trailer',
    name: 'Trailer with spray bar for roads',
    works: ['road-and-dust'],
    nodes: NODES,
    slots: [
      CARRIER,
      TANK,
      TANK_VALVE,
      SUCTION_HOSE,
      STRAINER,
      centrifugalPump,
      ENGINE,
      REDUCTION,
      AGITATION_VALVE,
      AGITATOR,
      GAUGE,
      BATTERY,
      ...BOOM_SLOTS,
    ],
    lines: [SUCTION, PUMP, AGITATION, boomLine('bar')],
  },
  {
    format: 'spraywright-layout',
    id: 'utility-12v',
    name: '12 V rig on a utility vehicle',
    works: ['utility-spot'],
    nodes: NODES,
    slots: [
      CARRIER,
      TANK,
      TANK_VALVE,
      SUCTION_HOSE,
      STRAINER,
      slot('pump', 'Demand pump', ['motor-pump']),
      GAUGE,
      BATTERY,
      ...GUN_SLOTS,
    ],
    lines: [SUCTION, PUMP, { ...GUN, teesBranch: 0 }],
  },
];
