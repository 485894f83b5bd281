import type { Outlet, Work } from '../catalogue/index.ts';

/** What a duty asks before the customer has said it, as typed: common practice, no source, and marked in the brief as ours. */
export type DutyStart = Readonly<Record<string, unknown>>;

const TANK = { tankLevel: '50 %' };
const spot = (hoseOut: string, distance: string, flow: string, pressure: string): DutyStart => ({
  ...TANK,
  hoseOut,
  outletHeight: '3 ft',
  target: { aim: 'distance', distance },
  flow,
  pressure,
});
const TRANSFER: DutyStart = { ...TANK, outletHeight: '6 ft', flow: '100 gpm', agitate: false };
const BOOM: DutyStart = {
  ...TANK,
  application: { rate: '15 gal/acre', speed: '4 mph', width: '20 ft' },
  pressure: '25 psi',
  boomHeight: '20 in',
};
const BAR: DutyStart = {
  ...TANK,
  application: { rate: '0.25 gal/yd2', speed: '3 mph', width: '12 ft' },
  pressure: '15 psi',
  boomHeight: '18 in',
  agitate: false,
};

/** What a gun is begun with in each kind of work. */
const GUN: Readonly<Record<Work, DutyStart>> = {
  'roof-wash': {
    ...TANK,
    hoseOut: '100 ft',
    outletHeight: '4 ft',
    target: { aim: 'roof', height: '16 ft', distance: '10 ft' },
    flow: '5 gpm',
    agitate: false,
  },
  'tractor-spot-and-boom': spot('100 ft', '20 ft', '1.5 gpm', '40 psi'),
  'spot-and-drench': spot('75 ft', '18 ft', '2 gpm', '40 psi'),
  'tall-trees': {
    ...TANK,
    hoseOut: '150 ft',
    outletHeight: '5 ft',
    target: { aim: 'height', height: '40 ft', standoff: '12 ft' },
    flow: '18 gpm',
    pressure: '250 psi',
  },
  'nurse-and-batch': spot('50 ft', '15 ft', '2 gpm', '40 psi'),
  'road-and-dust': spot('50 ft', '20 ft', '5 gpm', '40 psi'),
  'utility-spot': { ...spot('40 ft', '12 ft', '0.8 gpm', '25 psi'), agitate: false },
};

/** What a duty at an outlet is begun with. */
export function dutyStart(work: Work, outlet: Outlet): DutyStart {
  switch (outlet) {
    case 'gun':
    case 'second-gun':
      return GUN[work];
    case 'boom':
      return BOOM;
    case 'bar':
      return BAR;
    case 'transfer':
      return TRANSFER;
  }
}
