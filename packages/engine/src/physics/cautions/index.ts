export * from './cautions.ts';
export * from './cautions.data.ts';
