export * from './wire.ts';
export * from './wire-sizes.data.ts';
export * from './fuse.ts';
export * from './battery.ts';
export * from './battery.data.ts';
export * from './reel-duty.ts';
export * from './charge-budget.ts';
export * from './cranking.ts';
