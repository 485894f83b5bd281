export * from './port.ts';
export * from './part.ts';
export * from './catalogue.ts';
export * from './adapters.ts';
export * from './shop.ts';
