import type { Kind } from '@spraywright/engine/catalogue';

/** What the parts of each kind are for, in the words that a part is looked for by. */
export const DOES: Readonly<Record<Kind, string>> = {
  tank: 'holds, carries and stores the liquid; volume, gallons',
  pump: 'moves the liquid and makes flow and pressure',
  engine: 'drives the pump; power, fuel, motor',
  reduction: 'slows or speeds the pump; couples, belt, gear, drive',
  'pto-drive': 'drives the pump from the tractor; power take-off, shaft',
  'motor-pump': 'moves the liquid and makes flow and pressure; electric, 12 V, motor',
  strainer: 'keeps dirt out; filters, screens, mesh',
  valve: 'opens, shuts, turns on and off, diverts or stops the liquid from flowing back; drains, relieves',
  regulator: 'holds the pressure; unloads, bypasses, returns to the tank',
  hose: 'leads the liquid; reach on foot, length, suction, delivery',
  reel: 'winds and carries the hose; rewinds, drum',
  gun: 'throws the stream; held in the hand, trigger, spray, wand',
  tip: 'shapes the stream and meters the flow; orifice, nozzle',
  nozzle: 'shapes the spray and meters the flow; pattern, droplets, fan',
  boom: 'carries the nozzles across the swath; bar, width',
  agitator: 'stirs and mixes the tank; jet, agitation',
  eductor: 'draws concentrate in and mixes it; induction, dose, proportion',
  fitting: 'joins parts; adapter, elbow, tee, coupling, plug',
  carrier: 'carries the rig; frame, skid, cart, trailer, hitch, wheels, axle',
  battery: 'feeds motors and reels with current; 12 V, charge',
  gauge: 'shows and measures pressure; reads, meter',
  hardware: 'fastens, secures, wires and labels; clamps, straps, cable, fuse',
};
