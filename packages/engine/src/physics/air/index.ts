export * from './standard-atmosphere.ts';
export * from './air-density.ts';
export * from './air-viscosity.ts';
export * from './humidity.ts';
export * from './wind-profile.ts';
