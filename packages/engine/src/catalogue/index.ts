export * from './port.ts';
export * from './part.ts';
export { catalogueOf, partOf, readCatalogue, type Catalogue, type CatalogueProblem } from './catalogue.ts';
export * from './own-part.ts';
export { frozenPart, withFrozenParts, type FrozenPart } from './frozen-parts.ts';
export * from './adapters.ts';
export * from './shop.ts';
