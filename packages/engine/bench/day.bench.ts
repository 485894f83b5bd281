// Time of one simulated working day and of a curve of twelve tanks: node --conditions=source --import tsx packages/engine/bench/day.bench.ts
import { outputByTank, workingDay, type DayInput } from '../src/physics/day/index.ts';

const trees: DayInput = {
  dayLength: 8 * 3600,
  preparation: 1200,
  closing: 900,
  flushTime: 600,
  tank: 1.2,
  flow: 20 * 6.309e-5,
  unitVolume: 0.045,
  unitArea: 80,
  pauseTime: 40,
  fillFlow: 1 / 300,
  fillDistance: 3000,
  connectTime: 120,
  mixTime: 240,
  hoseLength: 60,
  stopTime: 90,
  fuelTank: 0.02,
  fuelRate: 1.5e-6,
  battery: 60 * 3600,
  reelCurrent: 40,
  chargeCurrent: 10,
};
const tanks = Array.from({ length: 12 }, (_, i) => 0.2 + 0.4 * i);

function time(name: string, runs: number, run: () => unknown): void {
  for (let i = 0; i < runs; i++) run();
  const began = performance.now();
  for (let i = 0; i < runs; i++) run();
  console.log(`${name}: ${(((performance.now() - began) / runs) * 1000).toFixed(1)} us`);
}

time('working day', 2000, () => workingDay(trees));
time('curve of twelve tanks', 200, () => outputByTank({ day: trees, tanks }));
console.log(`steps of the day: ${workingDay(trees).times.length}`);
