export * from './freight-density.ts';
export * from './freight-classes.data.ts';
export * from './legal-size.ts';
export * from './legal-size.data.ts';
